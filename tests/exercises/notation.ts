import { cutChunk, type Chunk } from '@/music/chunk'
import { formatFraction } from '@/music/fraction'
import type { HandChoice, Score } from '@/music/music'
import { formatKey } from '@/music/pitch'
import { tick } from '@/music/units'

/** All that a hand plays in a score. */
export const wholeOf = (score: Score, hand: HandChoice = 'both'): Chunk => {
  const chunk = cutChunk(score, tick(0), score.end, hand)
  if (!chunk) throw new Error('no notes')
  return chunk
}

/** The keys of each onset and the quarters to the next one: 'C5:1/2 E5+G5:1/2 C6'. */
export const showChunk = ({ onsets, ticksPerQuarter }: Chunk): string =>
  onsets
    .map(({ start, notes }, i) => {
      const next = onsets[i + 1]?.start
      const gap = next === undefined ? '' : `:${showQuarters(next - start, ticksPerQuarter)}`
      return `${notes.map(({ key }) => formatKey(key)).join('+')}${gap}`
    })
    .join(' ')

/** (720, 480) -> '3/2' */
export const showQuarters = (ticks: number, ticksPerQuarter: number): string =>
  formatFraction(ticks, ticksPerQuarter).replace('_', '/')
