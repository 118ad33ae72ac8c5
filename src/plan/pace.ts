import type { Exercise } from '@/exercises/buildUp'
import { usualPace } from '@/exercises/estimate'
import { expectedTries } from '@/exercises/expectedTries'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay } from '@/journal/sums'
import { quarterMs, tempo, type Tempo } from '@/music/units'
import {
  factorAt,
  fitFactor,
  usualDifficulty,
  usualFactor,
  usualSlope,
  type Factor,
} from './factor'
import type { PieceLayout } from './layOut'
import { isReached, type PracticeRecord } from './record'

export interface Work {
  readonly repetitions: number
  readonly minutes: number
}

/** How the person works: from their own record as far as there is one. */
export interface OwnPace {
  /** How many times the usual number of repetitions a rung takes, by the difficulty of the place. */
  readonly factor: Factor
  /** From the end of a repetition to the beginning of the next. */
  readonly pauseSeconds: number
  /** Of how many exercises that were done the record tells. */
  readonly exercises: number
}

/** What is assumed of a person of whom nothing is known; why stands in `planText.weeks.defaults`. */
export const planDefaults = {
  /** A rung. */
  repetitions: { kind: 'repetitions', value: usualFactor * expectedTries(usualPace.cleanShare, 3) },
  /** Points a second at which that holds. */
  difficulty: { kind: 'difficulty', value: usualDifficulty },
  slope: { kind: 'slope', value: usualSlope },
  /** Seconds. */
  pause: { kind: 'pause', value: usualPace.pauseSeconds },
} as const

/** A value that stands in for a record. */
export type PlanDefault = (typeof planDefaults)[keyof typeof planDefaults]

/** From one classic metronome mark to the next. */
const rungRatio = 1.045
/** To find the place and look at it, seconds for each exercise (common practice, no source). */
const turnSeconds = 5

/** The person's pace from what the record tells of exercises of these pieces. */
export const paceFrom = (record: PracticeRecord, layouts: readonly PieceLayout[]): OwnPace => {
  const rows = groupBy(record.chunkDays, ({ chunk }) => chunk)
  const played = layouts.flatMap(({ places, goalTempo }) =>
    places.flatMap(({ exercises, difficulty }) =>
      exercises.flatMap((exercise) => {
        const days = rows.get(exercise.chunk.id)
        return days ? [{ exercise, days, difficulty, goalTempo }] : []
      }),
    ),
  )
  const done = played.flatMap(({ exercise, days, difficulty, goalTempo }) => {
    const repetitions = days.reduce((sum, { tally }) => sum + tally.clean + tally.flawed, 0)
    if (repetitions === 0 || !isReached(record, exercise, goalTempo)) return []
    return [{ difficulty, ratio: repetitions / usualRepetitions(exercise) }]
  })
  const pauses = played.flatMap(({ exercise, days }) => pausesIn(exercise, days))
  return {
    factor: fitFactor(done),
    pauseSeconds: median(pauses) ?? planDefaults.pause.value,
    exercises: done.length,
  }
}

/** What some exercises of a place still take at the person's pace. */
export const estimateWork = (
  exercises: readonly Exercise[],
  difficulty: number,
  goalTempo: Tempo,
  { factor, pauseSeconds }: OwnPace,
): Work => {
  const times = factorAt(factor, difficulty)
  let repetitions = 0
  let seconds = 0
  for (const exercise of exercises) {
    const more = times * usualRepetitions(exercise)
    repetitions += more
    seconds += turnSeconds + more * (playingSeconds(exercise, goalTempo) + pauseSeconds)
  }
  return { repetitions, minutes: seconds / 60 }
}

/** A streak at each rung, at the usual clean share. */
const usualRepetitions = ({ begin, reach, streakGoal }: Exercise): number =>
  rungsIn(begin, reach) * expectedTries(usualPace.cleanShare, streakGoal)

const rungsIn = (begin: number, reach: number): number =>
  1 + Math.max(0, Math.ceil(Math.log(reach / begin) / Math.log(rungRatio) - 1e-9))

/** At the tempo between where it begins and where it is to arrive. */
const playingSeconds = ({ chunk, begin, reach }: Exercise, goalTempo: Tempo): number =>
  (quartersOf(chunk) * quarterMs(tempo(goalTempo * Math.sqrt(begin * reach)))) / 1000

const quartersOf = ({ start, end, ticksPerQuarter }: Exercise['chunk']): number =>
  (end - start) / ticksPerQuarter

/** Fewer repetitions than this tell more of the search for the place than of the pauses. */
const leastForPause = 5

/** Seconds between the repetitions of a day, where there are enough. */
const pausesIn = ({ chunk }: Exercise, days: readonly ChunkDay[]): readonly number[] =>
  days.flatMap(({ ms, rungs }) => {
    const counts = rungs.map(({ rung, tally }) => ({
      count: tally.clean + tally.flawed + tally.brokenOff,
      each: quartersOf(chunk) * quarterMs(rung),
    }))
    const count = counts.reduce((sum, each) => sum + each.count, 0)
    const playing = counts.reduce((sum, { count: n, each }) => sum + n * each, 0)
    return count < leastForPause ? [] : [Math.max(0, (ms - playing) / count / 1000)]
  })

const median = (values: readonly number[]): number | undefined =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]
