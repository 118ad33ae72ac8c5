import { handChoices, type HandChoice } from '@/music/music'
import { fieldsOf } from './stored'

/** From where to where a hard spot lasts, in exact quarters ('3_2' is one and a half), so that it holds at any resolution of the file. */
export interface SpotPlace {
  readonly from: string
  /** Where its last beat ends. */
  readonly to: string
  readonly hand: HandChoice
}

/** What the person says of the hard spots of a piece. */
export interface SpotWords {
  /** Accepted ones stand as passages, found by the analysis or not; rejected ones are folded away. */
  readonly said: readonly (SpotPlace & { readonly word: 'accepted' | 'rejected' })[]
  /** The person's own ranking, the first first; what is not in it stands by its difficulty. */
  readonly order: readonly SpotPlace[]
}

/** The latest word on a place stands. */
export const saySpot = (
  { said, order }: SpotWords,
  places: readonly SpotPlace[],
  word: 'accepted' | 'rejected',
): SpotWords => ({
  said: [
    ...said.filter((each) => !places.some((place) => isSamePlace(each, place))),
    ...places.map((place) => ({ ...place, word })),
  ],
  order,
})

/** One up or one down among those that stand in the list. */
export const moveSpot = (
  { said, order }: SpotWords,
  standing: readonly SpotPlace[],
  place: SpotPlace,
  by: 1 | -1,
): SpotWords => {
  const at = standing.indexOf(place)
  const other = standing[at + by]
  if (at < 0 || !other) return { said, order }
  const moved = standing.map((each) => (each === place ? other : each === other ? place : each))
  return {
    said,
    order: [...moved, ...order.filter((each) => !moved.some((one) => isSamePlace(each, one)))],
  }
}

/**
 * At another tempo a spot may be a beat longer or shorter: places of a hand are the same when what they
 * share is more than half of what they cover.
 */
export const isSamePlace = (one: SpotPlace, other: SpotPlace): boolean => {
  const [a, b] = [spanOf(one), spanOf(other)]
  const covered = Math.max(a[1], b[1]) - Math.min(a[0], b[0])
  return one.hand === other.hand && overlap(one, other) * 2 > covered
}

/** In quarters. */
export const overlap = (one: SpotPlace, other: SpotPlace): number => {
  const [a, b] = [spanOf(one), spanOf(other)]
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0])
}

/** From where to where, in quarters. */
export const spanOf = ({ from, to }: SpotPlace): readonly [from: number, to: number] => [
  quarters(from),
  quarters(to),
]

const quarters = (fraction: string): number => {
  const [count = 0, of = 1] = fraction.split('_').map(Number)
  return count / of
}

/** As it was stored; what is none is left out. */
export const decodeWords = (stored: unknown): SpotWords => {
  const { said, order } = fieldsOf(stored)
  return {
    said: listOf(said).flatMap((each) => {
      const place = decodePlace(each)
      const { word } = fieldsOf(each)
      return place && (word === 'accepted' || word === 'rejected') ? [{ ...place, word }] : []
    }),
    order: listOf(order).flatMap((each) => decodePlace(each) ?? []),
  }
}

const decodePlace = (stored: unknown): SpotPlace | undefined => {
  const { from, to, hand } = fieldsOf(stored)
  const known = handChoices.find((each) => each === hand)
  return isQuarters(from) && isQuarters(to) && known ? { from, to, hand: known } : undefined
}

const isQuarters = (text: unknown): text is string =>
  typeof text === 'string' && /^\d+(?:_[1-9]\d*)?$/.test(text)

const listOf = (stored: unknown): readonly unknown[] => (Array.isArray(stored) ? stored : [])
