import { beatQuarters } from '@/music/beat'
import type { Score } from '@/music/music'
import { tick, type Tick } from '@/music/units'
import type { Clock } from './strokes'

/** One beat of a bar: the window in which difficulty is measured. */
export interface Beat {
  readonly start: Tick
  readonly end: Tick
  readonly seconds: number
}

/** The beats of all bars, as their time signatures count them; what is left over at the end of a bar is one, too. */
export const beatsOf = ({ bars, ticksPerQuarter }: Score, clock: Clock): readonly Beat[] =>
  bars.flatMap((bar) => {
    const length = Math.max(1, beatQuarters(bar.time) * ticksPerQuarter)
    const count = Math.max(1, Math.ceil(bar.length / length))
    return Array.from({ length: count }, (_, i): Beat => {
      const start = tick(bar.start + i * length)
      const end = tick(bar.start + Math.min(bar.length, (i + 1) * length))
      return { start, end, seconds: clock(end) - clock(start) }
    })
  })

/** The beat in which each of some sorted places lies. */
export const placeInBeats = (
  beats: readonly Beat[],
  places: readonly { readonly start: Tick }[],
): readonly number[] => {
  let beat = 0
  return places.map(({ start }) => {
    while (beat + 1 < beats.length && (beats[beat]?.end ?? 0) <= start) beat++
    return beat
  })
}

/** The place of the beat in which a tick lies, by halving; the last one for what lies after it. */
export const beatAt = (beats: readonly Beat[], at: Tick): number => {
  let [low, high] = [0, beats.length - 1]
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    if ((beats[middle]?.end ?? 0) <= at) low = middle + 1
    else high = middle
  }
  return low
}
