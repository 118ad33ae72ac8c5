import type { HardSpot } from '@/difficulty/difficulty'
import { formatFraction } from '@/music/fraction'
import type { HandChoice, Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'
import type { SpotPlace, SpotWords } from './hardSpots'

/** A hard spot as it stands in the list of a piece. */
export interface ListedSpot {
  readonly place: SpotPlace
  readonly from: Tick
  /** Where its last beat ends. */
  readonly to: Tick
  readonly word: 'found' | 'accepted' | 'rejected'
  /** How it stands among the others: 3 is as hard as the hardest. */
  readonly depth: 1 | 2 | 3
  /** Points a second; of a spot of the person's own, those of what was found there, else 0. */
  readonly difficulty: number
  readonly reasons: readonly string[]
  /** A way to practise for each reason. */
  readonly practise: readonly string[]
}

/** What was found and what the person said, for a hand or for both, in the order of rank. */
export const listSpots = (
  score: Score,
  found: readonly HardSpot[],
  { said, order }: SpotWords,
  hand: HandChoice,
): readonly ListedSpot[] => {
  const hardest = Math.max(...found.map(({ difficulty }) => difficulty))
  const fromAnalysis = found.map((spot): ListedSpot => {
    const place = spotPlace(score, spot)
    const word = said.find((each) => isSame(each, place))?.word ?? 'found'
    return { ...spot, place, word, depth: depthOf(spot.difficulty, hardest) }
  })
  const own = said
    .filter((each) => !fromAnalysis.some(({ place }) => isSame(each, place)))
    .map(({ word, ...place }): ListedSpot => {
      const [start, end] = spanOf(place)
      const [from, to] = [start, end].map((at) => tick(Math.round(at * score.ticksPerQuarter)))
      const inside = fromAnalysis.filter(
        (spot) => sharesHand(spot.place, place) && overlap(spot.place, place) > 0,
      )
      const difficulty = Math.max(0, ...inside.map((spot) => spot.difficulty))
      return {
        place,
        word,
        difficulty,
        reasons: [],
        practise: [],
        from: from ?? tick(0),
        to: to ?? tick(0),
        depth: depthOf(difficulty, hardest),
      }
    })
  const all = [...fromAnalysis, ...own].toSorted((a, b) => b.difficulty - a.difficulty)
  // With one hand come the spots of both: that hand has its share in them.
  return rank(all, order).filter(({ place }) => sharesHand(place, { ...place, hand }))
}

export const spotPlace = (
  { ticksPerQuarter }: Score,
  { from, to, hand }: { readonly from: Tick; readonly to: Tick; readonly hand: HandChoice },
): SpotPlace => ({
  from: formatFraction(from, ticksPerQuarter),
  to: formatFraction(to, ticksPerQuarter),
  hand,
})

/** The latest word on a place stands. */
export const saySpot = (
  { said, order }: SpotWords,
  places: readonly SpotPlace[],
  word: 'accepted' | 'rejected',
): SpotWords => ({
  said: [
    ...said.filter((each) => !places.some((place) => isSame(each, place))),
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
    order: [...moved, ...order.filter((each) => !moved.some((one) => isSame(each, one)))],
  }
}

/** Whether something in these spots tires or strains the hand: stretches, octaves, trills, repetitions. */
export const isStraining = (spots: readonly ListedSpot[]): boolean =>
  spots.some(({ reasons }) =>
    reasons.some((reason) => /stretches|octaves|trills|repeated/.test(reason)),
  )

/** As the person ranked them; another one comes after the last that is harder. */
const rank = (all: readonly ListedSpot[], order: readonly SpotPlace[]): readonly ListedSpot[] => {
  const ranked = [
    ...new Set(order.flatMap((place) => all.find((spot) => isSame(spot.place, place)) ?? [])),
  ]
  for (const spot of all.filter((each) => !ranked.includes(each))) {
    const harder = ranked.findLastIndex(({ difficulty }) => difficulty >= spot.difficulty)
    ranked.splice(harder + 1, 0, spot)
  }
  return ranked
}

/** From these shares of the hardest spot on the depth is 3, 2: our choice, so that three can be told apart. */
const depths = { deep: 0.85, middle: 0.65 }

const depthOf = (difficulty: number, hardest: number): ListedSpot['depth'] => {
  if (difficulty === 0) return 1
  if (difficulty >= depths.deep * hardest) return 3
  return difficulty >= depths.middle * hardest ? 2 : 1
}

/**
 * At another tempo a spot may be a beat longer or shorter: places of a hand are the same when what they
 * share is more than half of what they cover.
 */
const isSame = (one: SpotPlace, other: SpotPlace): boolean => {
  const [a, b] = [spanOf(one), spanOf(other)]
  const covered = Math.max(a[1], b[1]) - Math.min(a[0], b[0])
  return one.hand === other.hand && overlap(one, other) * 2 > covered
}

const sharesHand = (one: SpotPlace, other: SpotPlace): boolean =>
  one.hand === other.hand || one.hand === 'both' || other.hand === 'both'

/** In quarters. */
const overlap = (one: SpotPlace, other: SpotPlace): number => {
  const [a, b] = [spanOf(one), spanOf(other)]
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0])
}

const spanOf = ({ from, to }: SpotPlace): readonly [from: number, to: number] => [
  quarters(from),
  quarters(to),
]

const quarters = (fraction: string): number => {
  const [count = 0, of = 1] = fraction.split('_').map(Number)
  return count / of
}
