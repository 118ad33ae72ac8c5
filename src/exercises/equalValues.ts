import { beatQuarters } from '@/music/beat'
import type { Note, Score, TimeSignature } from '@/music/music'
import { onsetsOf, type OnsetRange } from './onsets'

/** A run whose onsets follow each other in one value throughout. */
export interface Run {
  readonly onsets: readonly [OnsetRange, ...OnsetRange[]]
  /** From onset to onset, in ticks. */
  readonly value: number
  /** What is counted, in ticks: a whole number of values. */
  readonly beat: number
  readonly time: TimeSignature
}

/** The notes as one run in values shorter than the beat; `undefined` when they are none. */
export const runOf = (
  { bars, ticksPerQuarter }: Score,
  notes: readonly Note[],
): Run | undefined => {
  const [first, ...rest] = onsetsOf(notes)
  const second = rest[0]
  const time = first && bars[first.barIndex]?.time
  if (!first || !second || !time) return undefined
  const value = second.start - first.start
  const beat = beatQuarters(time) * ticksPerQuarter
  const isEqual = rest.every(({ start }, i) => start === first.start + (i + 1) * value)
  return isEqual && value < beat && beat % value === 0
    ? { onsets: [first, ...rest], value, beat, time }
    : undefined
}
