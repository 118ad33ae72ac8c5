import { beatQuarters } from '@/music/beat'
import type { TimeSignature } from '@/music/music'
import { ms, quarterMs, type Ms, type Tempo } from '@/music/units'

/** The clicks of a sounding metronome on the clock of the key events. */
export interface Clicks {
  /** The click with which the music begins, or began. */
  readonly first: Ms
  /** From one click to the next. */
  readonly gap: Ms
}

export const clicksFrom = (first: Ms, time: TimeSignature, tempo: Tempo): Clicks => ({
  first,
  gap: ms(beatQuarters(time) * quarterMs(tempo)),
})

/**
 * The same clicks, moved so that one of them falls where a click is really heard. The metronome keeps
 * the time of the sound hardware, key events that of the computer: 100 parts in a million between the
 * two are 360 ms after an hour. Moved at each click, they are never far off.
 */
export const followClicks = ({ first, gap }: Clicks, heard: Ms): Clicks => {
  const passed = Math.round((heard - first) / gap)
  return { first: ms(heard - passed * gap), gap }
}
