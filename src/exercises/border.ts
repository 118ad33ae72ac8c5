import { beatQuarters } from '@/music/beat'
import type { Bar } from '@/music/music'
import type { Tick } from '@/music/units'

/** Where an onset stands in the bar, from the best place for a border to the worst. */
export const borderPlaces = ['barLine', 'halfBar', 'beat', 'between'] as const
export type BorderPlace = (typeof borderPlaces)[number]

/**
 * The place of a tick in its bar. The last beats of a bar are written in a pickup, so it is counted
 * from its end. In 4/4 the tick of the third beat is 'halfBar', in 6/8 that of the fourth eighth.
 */
export const borderPlace = (at: Tick, bar: Bar, ticksPerQuarter: number): BorderPlace => {
  const whole = (4 * ticksPerQuarter * bar.time.beats) / bar.time.beatType
  const beat = beatQuarters(bar.time) * ticksPerQuarter
  const offset = at - bar.start + (isPickup(bar, whole) ? whole - bar.length : 0)
  if (offset === 0) return 'barLine'
  if (2 * offset === whole && isMultiple(offset, beat)) return 'halfBar'
  return isMultiple(offset, beat) ? 'beat' : 'between'
}

const isPickup = (bar: Bar, whole: number): boolean => bar.number === 0 && bar.length < whole

/** The beat may be a fraction of a tick where the resolution is coarse, so zero is met within a millionth. */
const isMultiple = (offset: number, beat: number): boolean =>
  Math.abs(offset / beat - Math.round(offset / beat)) < 1e-6
