import { cutChunk, type Chunk } from '@/music/chunk'
import type { HandChoice, Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'
import { borderCost } from './border'
import { cutSpans } from './cutSpans'
import { idealOnsets, leastOnsets, mostOnsets } from './exercises'
import { notesIn, onsetsOf } from './onsets'

/**
 * Chunks of 3 to 10 onsets that cover [from, to) of one hand or both, in the order of the score.
 * Each shares its last onset with the next one's first. A selection of fewer than 3 onsets is one
 * small chunk; one without notes gives none. The same selection always gives the same chunks.
 */
export const proposeChunks = (
  score: Score,
  from: Tick,
  to: Tick,
  hand: HandChoice,
): readonly Chunk[] => {
  const chosen = notesIn(score, from, to, hand)
  const onsets = onsetsOf(chosen)
  const costs = onsets.map((onset) => borderCost(onset, score))
  const sizes = { least: leastOnsets, most: mostOnsets, ideal: idealOnsets }
  return cutSpans(costs, sizes).flatMap((span) => {
    const first = onsets[span.first]
    const last = onsets[span.last]
    if (!first || !last) return []
    const notes = chosen.slice(first.begin, last.end)
    const chunk = cutChunk({ ...score, notes }, first.start, tick(last.start + 1), hand)
    return chunk ? [chunk] : []
  })
}
