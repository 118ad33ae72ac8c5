import { classicMarks } from '@/coach/ladder'
import { widestIn } from '@/exercises/blocked'
import { buildUp, type Exercise } from '@/exercises/buildUp'
import { estimateMinutes, type Pace } from '@/exercises/estimate'
import { progressOf, type Progress } from '@/exercises/progress'
import { writeVariant, type Variant } from '@/exercises/variants'
import { widestOf, type HandReach } from '@/fingering/spans'
import type { JournalEvent } from '@/journal/journal'
import { recordPlace } from '@/journal/record'
import type { Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import type { Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import { tempo, tick, type ChunkId, type PieceId, type Tempo } from '@/music/units'
import { barsOf, keysOf, type PlaceInBuildUp, type Upcoming } from './practising'
import type { BuildUpPlan, PracticeRoute } from './route'

/** A build-up and where the person stands in it. */
export interface BuildUpStanding {
  readonly plan: BuildUpPlan
  readonly passage: Chunk
  readonly exercises: readonly Exercise[]
  readonly progress: Progress
  readonly goalTempo: Tempo
  /** What is left. */
  readonly minutes: number
  /** At the person's own pace, or at a usual one while little is known. */
  readonly isOwnPace: boolean
}

/** Who asks: which build-up of which score, with what record. */
export interface Asked {
  readonly score: Score
  readonly plan: BuildUpPlan
  readonly goalTempo: Tempo
  /** How far the person's hand reaches: no chord of a blocked exercise is wider. */
  readonly reach: HandReach
  /** Of the piece, of all sessions; only what tells that exercises are done is read. */
  readonly events: readonly JournalEvent[]
}

/** `undefined` where the passage names no notes of the score. */
export const standingIn = (
  asked: Asked,
  pace: Pace,
  isOwnPace: boolean,
): BuildUpStanding | undefined => {
  const { score, plan, goalTempo } = asked
  const passage = chunkAt(score, plan.passage)
  if (!passage) return undefined
  const exercises = exercisesOf(asked, passage)
  const progress = progressOf(exercises, doneOf(asked, exercises))
  const minutes = estimateMinutes(progress.left, pace)
  return { plan, passage, exercises, progress, goalTempo, minutes, isOwnPace }
}

/** The place of an exercise in its build-up; `undefined` where it is none of it. */
export const placeInBuildUp = (
  asked: Pick<Asked, 'score' | 'plan' | 'reach'>,
  id: ChunkId,
): PlaceInBuildUp | undefined => {
  const { score, plan } = asked
  const passage = chunkAt(score, plan.passage)
  const bars = passage && barsOf(score, passage)
  const exercises = passage ? exercisesOf(asked, passage) : []
  const index = exercises.findIndex(({ chunk }) => chunk.id === id)
  const exercise = exercises[index]
  if (!passage || !bars || !exercise) return undefined
  return {
    plan,
    exercise,
    number: index + 1,
    of: exercises.length,
    passage: recordPlace(passage, bars.first.number, bars.last.number),
    from: passage.start,
    to: tick(passage.start + (passage.onsets.at(-1)?.start ?? 0)),
    keys: keysOf(passage),
  }
}

/** What comes when an exercise is done: the first that is not; with the last, the build-up itself. */
export const afterExercise = (asked: Asked, { exercise }: PlaceInBuildUp): Upcoming =>
  upcoming(asked, leftIn(asked, exercise)[0])

/** The first exercise that is left; `undefined` when all are done. */
export const firstLeft = (asked: Asked): Upcoming | undefined => {
  const passage = chunkAt(asked.score, asked.plan.passage)
  const exercises = passage ? exercisesOf(asked, passage) : []
  const { next } = progressOf(exercises, doneOf(asked, exercises))
  return next && upcoming(asked, next)
}

/**
 * What the person turns to instead: the next that is not done, or the one before in the list, done or
 * not. Beyond the ends is the build-up itself.
 */
export const besideExercise = (
  asked: Asked,
  { exercise, number }: PlaceInBuildUp,
  step: 1 | -1,
): Upcoming => {
  const passage = chunkAt(asked.score, asked.plan.passage)
  const exercises = passage ? exercisesOf(asked, passage) : []
  if (step === -1) return upcoming(asked, exercises[number - 2])
  const left = leftIn(asked, exercise)
  return upcoming(asked, left.find((each) => exercises.indexOf(each) >= number) ?? left[0])
}

/** The address of an exercise. */
export const routeOf = (
  piece: PieceId,
  plan: BuildUpPlan,
  { place, form }: Exercise,
): PracticeRoute => ({
  kind: 'practice',
  piece,
  place,
  ...(form === 'asWritten' ? {} : { form }),
  plan,
})

/** The tempo of a share of the goal: the metronome mark at or below it. */
export const markAt = (goalTempo: Tempo, share: number): Tempo =>
  share >= 1
    ? goalTempo
    : (classicMarks(goalTempo * share).at(-1) ?? tempo(Math.max(1, goalTempo * share)))

const variants = new WeakMap<Score, Map<ChunkId, Variant | undefined>>()

/** A chunk in a form. The same each time, so that its notation is engraved once. */
export const variantOf = (score: Score, written: Chunk, form: Form): Variant | undefined => {
  const made = writeVariant(score, written, form)
  if (!made) return undefined
  const known = variants.get(score) ?? new Map<ChunkId, Variant | undefined>()
  variants.set(score, known)
  const variant = known.get(made.chunk.id) ?? made
  known.set(made.chunk.id, variant)
  return variant
}

const buildUps = new WeakMap<Score, Map<string, readonly Exercise[]>>()

const exercisesOf = (
  { score, plan, reach }: Pick<Asked, 'score' | 'plan' | 'reach'>,
  passage: Chunk,
): readonly Exercise[] => {
  const { thoroughness, direction } = plan
  const { hand } = plan.passage
  const name = `${passage.id} ${thoroughness} ${direction} ${reach}`
  const known = buildUps.get(score) ?? new Map<string, readonly Exercise[]>()
  buildUps.set(score, known)
  const to = tick(passage.start + (passage.onsets.at(-1)?.start ?? 0) + 1)
  const exercises =
    known.get(name) ??
    buildUp(score, { from: passage.start, to }, { hand, thoroughness, direction }).filter(
      // What is blocked is left out rather than cut otherwise: by its name in the record it is the same for every hand.
      ({ form, chunk }) => form !== 'blocked' || widestIn(chunk) <= widestOf(reach),
    )
  known.set(name, exercises)
  return exercises
}

/** A tempo so little below what was to be reached is the same: rungs are whole numbers, goals need not be. */
const sameTempo = 0.99

/** The exercises whose streak goal was met at their tempo, whatever build-up they were met in. */
const doneOf = (
  { goalTempo, events }: Pick<Asked, 'goalTempo' | 'events'>,
  exercises: readonly Exercise[],
): ReadonlySet<ChunkId> => {
  const reached = new Map<ChunkId, number>()
  for (const event of events)
    if (event.kind === 'exerciseDone' || event.kind === 'secure')
      reached.set(event.chunk, Math.max(event.rung, reached.get(event.chunk) ?? 0))
  return new Set(
    exercises
      .filter(
        ({ chunk, reach }) => (reached.get(chunk.id) ?? 0) >= markAt(goalTempo, reach) * sameTempo,
      )
      .map(({ chunk }) => chunk.id),
  )
}

/** The exercises that are not done when this one is. */
const leftIn = (asked: Asked, exercise: Exercise): readonly Exercise[] => {
  const passage = chunkAt(asked.score, asked.plan.passage)
  const exercises = passage ? exercisesOf(asked, passage) : []
  const done = new Set([...doneOf(asked, exercises), exercise.chunk.id])
  return progressOf(exercises, done).left
}

const upcoming = ({ score, plan }: Asked, exercise: Exercise | undefined): Upcoming => {
  if (!exercise) return { route: { kind: 'buildUp', piece: score.id, plan } }
  const written = chunkAt(score, exercise.place)
  const variant = written && variantOf(score, written, exercise.form)
  return {
    route: routeOf(score.id, plan, exercise),
    exercise,
    form: exercise.form,
    ...(variant ? { sheet: { score: variant.score, chunk: variant.chunk } } : {}),
    ...(written ? { written } : {}),
  }
}
