import type { Bar, TimeSignature } from '@/music/music'
import { tick, type Tick } from '@/music/units'
import type { TimeChange } from './score'

/** More bars than in any piece; a file with more has a wrong time in it. */
export const mostBars = 20_000

/** How long a full bar is: 6/8 at 480 ticks a quarter -> 1440. */
export const fullBar = (time: TimeSignature, ticksPerQuarter: number): number =>
  (time.beats * 4 * ticksPerQuarter) / time.beatType

/** By how much ticks must be multiplied so that every full bar is a whole number of them. */
export const barScale = (times: readonly TimeChange[], ticksPerQuarter: number): number => {
  let scale = 1
  while (times.some(({ time }) => fullBar(time, ticksPerQuarter * scale) % 1 !== 0)) scale *= 2
  return scale
}

/**
 * Lays bars from tick 0 until `end` is covered. A new time signature begins a new bar wherever it
 * stands. A first bar that is shorter than a bar of the signature after it is a pickup, number 0:
 * files say it as 1/4 for one bar, then 3/4. `undefined` when there are too many.
 */
export const layBars = (
  times: readonly TimeChange[],
  ticksPerQuarter: number,
  end: Tick,
): readonly Bar[] | undefined => {
  const changes = times[0]?.start === 0 ? times : [{ start: tick(0), time: commonTime }, ...times]
  const bars: Bar[] = []
  for (const [i, { start, time }] of changes.entries()) {
    const next = changes[i + 1]?.start ?? Infinity
    const full = fullBar(time, ticksPerQuarter)
    for (let at: number = start; at < Math.min(next, end); at += full) {
      if (bars.length === mostBars) return undefined
      const length = tick(Math.min(full, next - at))
      bars.push({ number: bars.length + 1, start: tick(at), length, time })
    }
  }
  return numberPickup(bars, ticksPerQuarter)
}

/** SMF 1.0: 4/4 where the file gives no time signature. */
const commonTime: TimeSignature = { beats: 4, beatType: 4 }

const numberPickup = (bars: readonly Bar[], ticksPerQuarter: number): readonly Bar[] => {
  const [first, second, ...rest] = bars
  if (!first || !second || first.length >= fullBar(second.time, ticksPerQuarter)) return bars
  return [{ ...first, time: second.time }, second, ...rest].map((bar, i) => ({ ...bar, number: i }))
}
