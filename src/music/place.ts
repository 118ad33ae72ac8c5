import { cutChunk, type Chunk } from './chunk'
import { formatFraction, parseFraction } from './fraction'
import type { HandChoice, Score } from './music'
import { tick } from './units'

/** Where a chunk stands in its piece: its first and last onset, in exact quarters from the start ('3_2' is one and a half). */
export interface Place {
  readonly from: string
  readonly to: string
  readonly hand: HandChoice
}

export const placeOf = (chunk: Chunk): Place => {
  const fraction = (t: number): string => formatFraction(t, chunk.ticksPerQuarter)
  return {
    from: fraction(chunk.start),
    to: fraction(chunk.start + (chunk.onsets.at(-1)?.start ?? 0)),
    hand: chunk.hand,
  }
}

/** The inverse; `undefined` when the place names no notes of this score. */
export const chunkAt = (score: Score, { from, to, hand }: Place): Chunk | undefined => {
  const first = parseFraction(from, score.ticksPerQuarter)
  const last = parseFraction(to, score.ticksPerQuarter)
  return first === undefined || last === undefined || last < first
    ? undefined
    : cutChunk(score, tick(first), tick(last + 1), hand)
}

/** Whether two places of a piece have any time in common, whichever hand. */
export const areMeeting = (one: Omit<Place, 'hand'>, other: Omit<Place, 'hand'>): boolean =>
  quarters(one.from) <= quarters(other.to) && quarters(other.from) <= quarters(one.to)

/** Fractions are reduced, so that equal ones give the same number. */
const quarters = (text: string): number => {
  const [numerator = '0', denominator = '1'] = text.split('_')
  return Number(numerator) / Number(denominator)
}
