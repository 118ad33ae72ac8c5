import { ms, type Ms } from '@/music/units'

/** The audio clock and the events' clock read at one moment. */
export interface Reading {
  /** What is heard at that moment, seconds on the audio clock. */
  readonly audio: number
  /** The moment, on the clock of the key events. */
  readonly event: Ms
}

/** How the two clocks lie to each other, kept from the latest readings. */
export interface AudioClock {
  readonly offsets: readonly number[]
}

/** A single reading is some milliseconds off, at times many; the median of twenty is steady. */
const kept = 20

export const unreadClock: AudioClock = { offsets: [] }

/** Before sound is put out browsers report zeros: such readings are left out. */
export const readClock = (clock: AudioClock, { audio, event }: Reading): AudioClock =>
  audio > 0 && event > 0 && Number.isFinite(audio + event)
    ? { offsets: [...clock.offsets, event - audio * 1000].slice(-kept) }
    : clock

/** When sound of this audio time is heard; `undefined` before the first reading. */
export const toEventTime = (clock: AudioClock, audioSeconds: number): Ms | undefined => {
  const offset = median(clock.offsets)
  return offset === undefined ? undefined : ms(audioSeconds * 1000 + offset)
}

/** The audio time in seconds that is heard at a moment of the events' clock. */
export const toAudioTime = (clock: AudioClock, at: Ms): number | undefined => {
  const offset = median(clock.offsets)
  return offset === undefined ? undefined : (at - offset) / 1000
}

const median = (numbers: readonly number[]): number | undefined => {
  const sorted = numbers.toSorted((a, b) => a - b)
  const high = sorted[Math.floor(sorted.length / 2)]
  const low = sorted[Math.floor((sorted.length - 1) / 2)]
  return high === undefined || low === undefined ? undefined : (low + high) / 2
}
