import type { Bar, TimeSignature } from '@/music/music'
import { tick } from '@/music/units'
import { fullBar, mostBars } from './bars'
import type { LaidMeasure, LaidPart } from './layMeasures'

/** Longer than any music, in quarters; beyond it a duration in the file is wrong. */
const mostQuarters = 1_000_000

/**
 * The measures of a file as bars, as long as what stands in them, whatever the time signature says:
 * pickups, bars divided by a repeat and cadenzas. A bar that nothing stands in is as long as its
 * signature. `undefined` when there are too many, or one is far too long.
 */
export const measureBars = (
  parts: readonly LaidPart[],
  resolution: number,
): readonly Bar[] | undefined => {
  const count = parts.reduce((most, { measures }) => Math.max(most, measures.length), 0)
  if (count > mostBars) return undefined
  const bars: Bar[] = []
  const numbers = numberMeasures(parts.find((p) => p.measures.length === count)?.measures ?? [])
  let start = 0
  for (let i = 0; i < count; i++) {
    const length = lengthOf(parts, i, resolution)
    const time = timeOf(parts, i)
    const signature = typeof time === 'object' ? time : freeTime(length, resolution)
    bars.push({
      number: numbers[i] ?? i + 1,
      start: tick(start),
      length: tick(length),
      time: signature,
    })
    start += length
    if (start > mostQuarters * resolution) return undefined
  }
  return bars
}

/** The first part that knows. */
const timeOf = (parts: readonly LaidPart[], i: number): LaidMeasure['time'] => {
  for (const { measures } of parts) {
    const time = measures[i]?.time
    if (time) return time
  }
  return undefined
}

const lengthOf = (parts: readonly LaidPart[], i: number, resolution: number): number => {
  const content = parts.reduce((most, { measures }) => Math.max(most, measures[i]?.length ?? 0), 0)
  const time = timeOf(parts, i)
  const full = typeof time === 'object' ? fullBar(time, resolution) : 4 * resolution
  // Rounded durations of irregular groups may miss the bar line by a little.
  const close = typeof time === 'object' && Math.abs(content - full) < resolution / slack
  return content === 0 || close ? full : content
}

/** A 128th note, in parts of a quarter: no written note is shorter than what is evened out. */
export const slack = 32

/** Without metre: as many beats as there are, of the largest note value that fits. */
const freeTime = (length: number, resolution: number): TimeSignature => {
  for (const beatType of [4, 8, 16, 32]) {
    const beats = (length * beatType) / (4 * resolution)
    if (Number.isInteger(beats) && beats <= 64) return { beats, beatType }
  }
  return { beats: Math.min(64, Math.ceil(length / resolution)), beatType: 4 }
}

/**
 * The printed numbers where they count up; else 1, 2, 3. Bars that the file does not count belong
 * to the bar before them: a pickup is 0, the rest of a divided bar has the number of its beginning.
 */
const numberMeasures = (measures: readonly LaidMeasure[]): readonly number[] => {
  const counted = measures.filter(({ implicit }) => !implicit)
  const printed = counted.map(({ number }) => (/^\d{1,5}$/.test(number) ? Number(number) : NaN))
  const countUp = printed.every((n, i) => n >= (printed[i - 1] ?? 0))
  let index = 0
  let number = 0
  return measures.map(({ implicit }) => {
    if (!implicit) {
      number = countUp ? (printed[index] ?? number) : index + 1
      index++
    }
    return number
  })
}
