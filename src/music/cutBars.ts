import { cutChunk, type Chunk } from './chunk'
import type { HandChoice, Score } from './music'
import { tick } from './units'

/**
 * The bars from one number to another, both included, as a chunk; a pickup is bar 0. `undefined`
 * when the hand has no notes there. Numbers beyond the piece mean its first and last bar.
 */
export const cutBars = (
  score: Score,
  fromBar: number,
  toBar: number,
  hand: HandChoice,
): Chunk | undefined => {
  const from = score.bars.find((bar) => bar.number >= fromBar)
  const to = score.bars.findLast((bar) => bar.number <= toBar)
  return from && to && cutChunk(score, from.start, tick(to.start + to.length), hand)
}
