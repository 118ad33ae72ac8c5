import { cutChunk, type Chunk } from '@/music/chunk'
import { formatFraction, parseFraction } from '@/music/fraction'
import type { Score } from '@/music/music'
import { tick } from '@/music/units'
import type { Place } from './route'

/** The place of a chunk as it stands in the address: its first and last onset, in quarters of the score. */
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
