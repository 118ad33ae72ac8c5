import type { RecordedPlace } from '@/journal/journal'
import { recordPlace } from '@/journal/record'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import { barsOf } from './practising'

/** Where a chunk stands in its piece, for an entry of the notebook about it. */
export const notebookPlace = (score: Score, chunk: Chunk): RecordedPlace | undefined => {
  const bars = barsOf(score, chunk)
  return bars && recordPlace(chunk, bars.first.number, bars.last.number)
}
