import { cutChunk, type Chunk } from '@/music/chunk'
import type { HandChoice, Note, Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'
import { borderPlace, type BorderPlace } from './border'
import { idealOnsets, leastOnsets, mostOnsets } from './exercises'

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
  const chosen = score.notes.filter(
    (n) => n.start >= from && n.start < to && (hand === 'both' || n.hand === hand),
  )
  const onsets = onsetsOf(chosen)
  return spans(onsets.map((onset) => borderCost[placeOf(score, onset)])).flatMap((span) => {
    const first = onsets[span.first]
    const last = onsets[span.last]
    if (!first || !last) return []
    const notes = chosen.slice(first.begin, last.end)
    const chunk = cutChunk({ ...score, notes }, first.start, tick(last.start + 1), hand)
    return chunk ? [chunk] : []
  })
}

/** What starts together: `chosen[begin]` up to `chosen[end - 1]`. */
interface OnsetRange {
  readonly start: Tick
  readonly barIndex: number
  readonly begin: number
  readonly end: number
}

/** The onsets that must be played: where only grace notes stand there is none. */
const onsetsOf = (chosen: readonly Note[]): readonly OnsetRange[] => {
  const ranges: OnsetRange[] = []
  for (let begin = 0, end = 0; begin < chosen.length; begin = end) {
    const start = chosen[begin]?.start
    while (chosen[end]?.start === start) end++
    const main = chosen.slice(begin, end).find((n) => !n.grace)
    if (main) ranges.push({ start: main.start, barIndex: main.barIndex, begin, end })
  }
  return ranges
}

/**
 * What it costs to put a border at a place, on the scale of the squared distance from the ideal
 * size: an onset between the beats is chosen only where a beat is more than two or three onsets off.
 */
const borderCost: { readonly [place in BorderPlace]: number } = {
  barLine: 0,
  halfBar: 1,
  beat: 2,
  between: 12,
}

const placeOf = (score: Score, onset: OnsetRange): BorderPlace => {
  const bar = score.bars[onset.barIndex]
  return bar ? borderPlace(onset.start, bar, score.ticksPerQuarter) : 'between'
}

interface Span {
  readonly first: number
  readonly last: number
}

/** The cheapest way to cut the onsets: dynamic programming over the borders, forward. */
const spans = (costs: readonly number[]): readonly Span[] => {
  const end = costs.length - 1
  if (end < 0) return []
  if (costs.length <= leastOnsets) return [{ first: 0, last: end }]
  const best: { readonly cost: number; readonly from: number }[] = [{ cost: 0, from: 0 }]
  for (let last = 1; last <= end; last++) {
    let choice = { cost: Infinity, from: 0 }
    for (let size = leastOnsets; size <= Math.min(mostOnsets, last + 1); size++) {
      const from = last - size + 1
      const border = last === end ? 0 : (costs[last] ?? 0)
      const cost = (best[from]?.cost ?? Infinity) + (size - idealOnsets) ** 2 + border
      if (cost < choice.cost) choice = { cost, from }
    }
    best.push(choice)
  }
  return walkBack(best, end)
}

const walkBack = (best: readonly { readonly from: number }[], end: number): readonly Span[] => {
  const found: Span[] = []
  for (let last = end; last > 0; last = best[last]?.from ?? 0)
    found.push({ first: best[last]?.from ?? 0, last })
  return found.toReversed()
}
