import { proposeChunks } from '@/exercises/propose'
import type { Chunk } from '@/music/chunk'
import { tick } from '@/music/units'
import type { Practising } from './practising'

/** The proposed chunks of the whole piece, in order; a chunk of the person's own leads to the nearest one. */
export const neighbourOf = ({ score, chunk }: Practising, step: 1 | -1): Chunk | undefined => {
  const all = proposeChunks(score, tick(0), score.end, chunk.hand)
  return step === 1
    ? all.find((each) => each.start > chunk.start)
    : all.findLast((each) => each.start < chunk.start)
}
