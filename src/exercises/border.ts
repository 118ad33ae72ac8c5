import { beatQuarters } from '@/music/beat'
import type { Bar, Score } from '@/music/music'
import type { Tick } from '@/music/units'
import { offsetInBar, wholeBar, type OnsetRange } from './onsets'

/** Where an onset stands in the bar, from the best place for a border to the worst. */
export const borderPlaces = ['barLine', 'halfBar', 'beat', 'between'] as const
export type BorderPlace = (typeof borderPlaces)[number]

/**
 * The place of a tick in its bar. The last beats of a bar are written in a pickup, so it is counted
 * from its end. In 4/4 the tick of the third beat is 'halfBar', in 6/8 that of the fourth eighth.
 */
export const borderPlace = (at: Tick, bar: Bar, ticksPerQuarter: number): BorderPlace => {
  const beat = beatQuarters(bar.time) * ticksPerQuarter
  const offset = offsetInBar(at, bar, ticksPerQuarter)
  if (offset === 0) return 'barLine'
  if (2 * offset === wholeBar(bar, ticksPerQuarter) && isMultiple(offset, beat)) return 'halfBar'
  return isMultiple(offset, beat) ? 'beat' : 'between'
}

/**
 * What it costs to put a border at an onset, on the scale of the squared distance from the ideal
 * size: an onset between the beats is chosen only where a beat is more than two or three onsets off.
 */
export const borderCost = (
  { start, barIndex }: Pick<OnsetRange, 'start' | 'barIndex'>,
  { bars, ticksPerQuarter }: Score,
): number => {
  const bar = bars[barIndex]
  return costs[bar ? borderPlace(start, bar, ticksPerQuarter) : 'between']
}

const costs: { readonly [place in BorderPlace]: number } = {
  barLine: 0,
  halfBar: 1,
  beat: 2,
  between: 12,
}

/** The beat may be a fraction of a tick where the resolution is coarse, so zero is met within a millionth. */
const isMultiple = (offset: number, beat: number): boolean =>
  Math.abs(offset / beat - Math.round(offset / beat)) < 1e-6
