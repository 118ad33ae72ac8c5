import type { DrillId } from '@/journal/ids'
import type { Chunk } from '@/music/chunk'
import type { Bar, Score, TimeSignature } from '@/music/music'
import type { Signature } from '@/music/spelling'
import type { Tempo } from '@/music/units'
import type { Route } from './route'

/** What is being drilled. */
export interface Practising {
  readonly drill: DrillId
  readonly score: Score
  readonly chunk: Chunk
  readonly time: TimeSignature
  readonly bars: { readonly first: Bar; readonly last: Bar }
  /** The key signature where the chunk begins, for the names of its keys. */
  readonly signature: Signature
  readonly goalTempo: Tempo
  /** What comes on the desk when this is done. */
  readonly next?: Upcoming
}

/** A stretch of a score to be engraved, and the address of its drill. */
export interface Upcoming {
  readonly chunk: Chunk
  readonly route: Route
}

/** The bars in which the chunk begins and ends; `undefined` for a chunk of another score. */
export const barsOf = (
  score: Score,
  chunk: Chunk,
): { readonly first: Bar; readonly last: Bar } | undefined => {
  const lastOnset = chunk.start + (chunk.onsets.at(-1)?.start ?? 0)
  const first = score.bars.findLast((bar) => bar.start <= chunk.start)
  const last = score.bars.findLast((bar) => bar.start <= lastOnset)
  return first && last ? { first, last } : undefined
}
