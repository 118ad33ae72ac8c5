import type { ChunkDay } from '@/journal/sums'
import type { Score } from '@/music/music'
import { tick } from '@/music/units'
import { orderPlaces, type PieceLayout, type PlanPlace } from '@/plan/layOut'
import { reviewPiece } from '@/review/pieceReview'
import { raisesIn } from './fromPlaying'

/**
 * The order of practice, corrected as the list of hard spots is: a place in which the person's own flaws
 * pile up comes as early as one that is so much more difficult. How they ranked the spots stands above it.
 */
export const orderByPlaying = (
  score: Score,
  layout: PieceLayout,
  rows: readonly ChunkDay[],
): PieceLayout => {
  const raiseOf = raisesIn(score, reviewPiece(rows))
  const times = new Map<string, number>()
  const places = layout.places.map((place) => {
    const { id, chunk, from, to } = place
    const raised = raiseOf({ hand: chunk.hand, from, to: tick(to + 1) })
    if (!raised) return place
    times.set(id, raised.times)
    return { ...place, played: raised.played }
  })
  const difficultyOf = ({ id, difficulty }: PlanPlace): number => difficulty * (times.get(id) ?? 1)
  return { ...layout, places: orderPlaces(places, difficultyOf) }
}
