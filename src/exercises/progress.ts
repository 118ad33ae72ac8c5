import type { ChunkId } from '@/music/units'
import type { Exercise } from './buildUp'

/** Where a build-up stands. */
export interface Progress {
  /** Done, or part of what is done. */
  readonly settled: readonly Exercise[]
  /** The first that is not; `undefined` when all are. */
  readonly next: Exercise | undefined
  readonly left: readonly Exercise[]
}

/**
 * What is done and what comes next. `done`: the chunks, by the names of their forms, whose streak goal
 * was met at the tempo that they were to reach. Who can play a larger part as written can play its
 * small groups, too: they are settled with it, unless they were to be faster.
 */
export const progressOf = (
  exercises: readonly Exercise[],
  done: ReadonlySet<ChunkId>,
): Progress => {
  const finished = exercises.filter(({ chunk }) => done.has(chunk.id))
  const isSettled = (exercise: Exercise): boolean =>
    finished.some((larger) => larger === exercise || holds(larger, exercise))
  const left = exercises.filter((exercise) => !isSettled(exercise))
  return { settled: exercises.filter(isSettled), next: left[0], left }
}

const holds = (larger: Exercise, smaller: Exercise): boolean =>
  larger.form === 'asWritten' &&
  larger.reach >= smaller.reach &&
  (larger.place.hand === 'both' || larger.place.hand === smaller.place.hand) &&
  larger.from <= smaller.from &&
  larger.to >= smaller.to
