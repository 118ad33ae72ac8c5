import { quarterMs, tempo, type Tempo } from '@/music/units'
import type { Exercise } from './buildUp'
import { expectedTries } from './expectedTries'

/** How the person works, from their own record. */
export interface Pace {
  /** Quarters a minute. */
  readonly goalTempo: Tempo
  /** From the end of a repetition to the beginning of the next, seconds. */
  readonly pauseSeconds: number
  /** Clean of all repetitions that were ended. */
  readonly cleanShare: number
}

/** Where there is no record: a breath between repetitions, and eight of ten clean (common practice, no source). */
export const usualPace = { pauseSeconds: 2, cleanShare: 0.8 } as const

/** To find the place and look at it, seconds for each exercise (common practice, no source). */
const turnSeconds = 5
/** From one classic metronome mark to the next: 3.3 to 5.3 %, between 60 and 208 about 4.5. */
const rungRatio = 1.045

/**
 * How long exercises take until their streak goals are met at every rung, on the average, in minutes.
 * A group of three that lasts a second: with the usual pace 4.8 tries of 3 seconds, and 5: 19 seconds.
 */
export const estimateMinutes = (exercises: readonly Exercise[], pace: Pace): number =>
  exercises.reduce((sum, exercise) => sum + secondsOf(exercise, pace), 0) / 60

const secondsOf = ({ chunk, begin, reach, streakGoal }: Exercise, pace: Pace): number => {
  const quarters = (chunk.end - chunk.start) / chunk.ticksPerQuarter
  const tries = expectedTries(pace.cleanShare, streakGoal)
  const atRung = (share: number): number => {
    const playing = (quarters * quarterMs(tempo(pace.goalTempo * share))) / 1000
    return tries * (playing + pace.pauseSeconds)
  }
  let seconds = turnSeconds + atRung(reach)
  for (let share = begin; share < reach; share *= rungRatio) seconds += atRung(share)
  return seconds
}
