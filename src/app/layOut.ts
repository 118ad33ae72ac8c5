import type { HandReach } from '@/fingering/spans'
import type { Score } from '@/music/music'
import type { Tempo } from '@/music/units'
import { analyse } from '@/plan/analyse'
import { layOutPiece, type PieceLayout } from '@/plan/layOut'
import type { SpotWords } from './spotWords'
import { listSpots } from './spotList'

/** The places of a piece at its goal tempo for the person's hand, with their word on its hard spots. Some 7 ms a bar: for a worker. */
export const layOut = (
  score: Score,
  goal: Tempo,
  words: SpotWords,
  span: HandReach,
): PieceLayout => {
  const analysis = analyse(score, goal, span)
  const spots = listSpots(score, analysis.spots, words, 'both')
    .filter(({ word }) => word !== 'rejected')
    .map(({ from, to, place, reasons }, rank) => {
      const spot = { from, to, hand: place.hand, reasons }
      return words.order.length > 0 ? { ...spot, rank } : spot
    })
  return layOutPiece(score, { ...analysis, spots }, { goalTempo: goal })
}
