import type { Bar, Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'

/** From the first tick up to, not including, the last. */
export interface Stretch {
  readonly from: Tick
  readonly to: Tick
}

/** A phrase is four bars more often than not (common practice, no source). */
const phraseBars = 4
/** Ten groups of five: more than this takes a build-up longer than an hour. */
const mostOnsets = 48
/** A rest of so few bars at the end of the piece goes with the passage before it. */
const crumbBars = 1

/**
 * A piece in passages of up to four bars, counted from the first full bar; fewer where the bars are full
 * of notes. Bars without notes belong to no passage.
 */
export const proposePassages = (score: Score): readonly Stretch[] => {
  const counts = onsetsInBars(score)
  const groups: { first: number; last: number; onsets: number }[] = []
  for (const [i, bar] of score.bars.entries()) {
    const onsets = counts[i] ?? 0
    const group = groups.at(-1)
    if (group && fits(score.bars, group, i, onsets)) {
      group.last = i
      group.onsets += onsets
    } else if (onsets > 0 || bar.number === 0) groups.push({ first: i, last: i, onsets })
  }
  return groups
    .filter(({ onsets }) => onsets > 0)
    .map(({ first, last }) => stretch(score, first, last))
}

const fits = (
  bars: readonly Bar[],
  {
    first,
    last,
    onsets,
  }: { readonly first: number; readonly last: number; readonly onsets: number },
  next: number,
  more: number,
): boolean => {
  if (last !== next - 1 || onsets + more > mostOnsets) return false
  const pickup = bars[first]?.number === 0 ? 1 : 0
  const isLastCrumb = next >= bars.length - crumbBars
  return next - first + 1 - pickup <= phraseBars + (isLastCrumb ? crumbBars : 0)
}

const onsetsInBars = ({ notes, bars }: Score): readonly number[] => {
  const starts = bars.map(() => new Set<Tick>())
  for (const { start, barIndex, grace } of notes) if (!grace) starts[barIndex]?.add(start)
  return starts.map(({ size }) => size)
}

const stretch = ({ bars, end }: Score, first: number, last: number): Stretch => {
  const [begin, close] = [bars[first], bars[last]]
  return {
    from: begin?.start ?? tick(0),
    to: close ? tick(close.start + close.length) : end,
  }
}
