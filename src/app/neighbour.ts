import { proposeChunks } from '@/exercises/propose'
import { tick } from '@/music/units'
import { placeOf } from '@/music/place'
import type { Practising, Upcoming } from './practising'

/** The proposed chunks of the whole piece, in order; a chunk of the person's own leads to the nearest one. */
export const neighbourOf = (
  { piece, written }: Pick<Practising, 'piece' | 'written'>,
  step: 1 | -1,
): Upcoming | undefined => {
  const all = proposeChunks(piece, tick(0), piece.end, written.hand)
  const next =
    step === 1
      ? all.find((each) => each.start > written.start)
      : all.findLast((each) => each.start < written.start)
  return (
    next && {
      route: { kind: 'practice', piece: piece.id, place: placeOf(next) },
      sheet: { score: piece, chunk: next },
      written: next,
    }
  )
}
