import { countPlaces, type FlawPlace } from '@/journal/flawCounts'
import { groupBy } from '@/journal/groupBy'
import type { RepetitionRecorded } from '@/journal/journal'
import type { ChunkId } from '@/music/units'

/** One kind of flaw at one place of a chunk. */
export interface FlawCount extends FlawPlace {
  readonly chunk: ChunkId
}

/** Flaws by chunk, place and kind, the most frequent first; forgiven ones are not counted. */
export const countFlaws = (repetitions: readonly RepetitionRecorded[]): readonly FlawCount[] =>
  byFrequency(
    [...groupBy(repetitions, ({ chunk }) => chunk)].flatMap(([chunk, of]) =>
      countPlaces(of).map((place) => ({ chunk, ...place })),
    ),
  )

/** The most frequent first; of equals those that stand earlier in their chunk. */
export const byFrequency = (counts: readonly FlawCount[]): readonly FlawCount[] =>
  counts.toSorted((a, b) => b.times - a.times || a.onset - b.onset)
