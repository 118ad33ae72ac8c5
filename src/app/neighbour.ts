import { proposeChunks } from '@/exercises/propose'
import { tick } from '@/music/units'
import { placeOf } from '@/music/place'
import type { Practising, Upcoming } from './practising'

/** The proposed chunks of the whole piece, in order; a chunk of the person's own leads to the nearest one. */
export const neighbourOf = (
  { score, chunk }: Pick<Practising, 'score' | 'chunk'>,
  step: 1 | -1,
): Upcoming | undefined => {
  const all = proposeChunks(score, tick(0), score.end, chunk.hand)
  const next =
    step === 1
      ? all.find((each) => each.start > chunk.start)
      : all.findLast((each) => each.start < chunk.start)
  return (
    next && {
      chunk: next,
      route: { kind: 'practice', piece: score.id, place: placeOf(next) },
    }
  )
}
