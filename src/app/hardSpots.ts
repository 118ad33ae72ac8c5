import type { HardSpot } from '@/difficulty/difficulty'
import { handChoices, type HandChoice, type Score } from '@/music/music'
import type { Result } from '@/music/result'
import type { PieceId, Tempo } from '@/music/units'
import type { Ports } from './ports'

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

/** The hard spots of a piece, and the person's word on them, kept under the piece's name. */
export interface HardSpots {
  /** The hardest first. Looked for anew only where score or tempo are others. */
  readonly find: (score: Score, goal: Tempo) => Promise<readonly HardSpot[]>
  readonly words: (id: PieceId) => Promise<Result<SpotWords, string>>
  readonly save: (id: PieceId, words: SpotWords) => Promise<Result<void, string>>
}

export const createHardSpots = ({
  storage,
  assess,
}: Pick<Ports, 'assess'> & {
  readonly storage: Pick<Ports['storage'], 'spots' | 'saveSpots'>
}): HardSpots => {
  let last:
    { readonly score: Score; readonly goal: Tempo; readonly spots: readonly HardSpot[] } | undefined
  return {
    find: async (score, goal) => {
      if (last?.score === score && last.goal === goal) return last.spots
      const { spots } = await assess(score, goal)
      last = { score, goal, spots }
      return spots
    },
    words: async (id) => {
      const stored = await storage.spots(id)
      return stored.ok ? { ok: true, value: decodeWords(stored.value) } : stored
    },
    save: (id, words) => storage.saveSpots(id, words),
  }
}

/** As it was stored; what is none is left out. */
const decodeWords = (stored: unknown): SpotWords => {
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

const fieldsOf = (stored: unknown): Readonly<Record<string, unknown>> =>
  typeof stored === 'object' && stored !== null ? Object.fromEntries(Object.entries(stored)) : {}
