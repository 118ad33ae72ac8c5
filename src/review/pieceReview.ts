import type { Day } from '@/journal/day'
import { joinPlaces, substitutionsIn, type Substitution } from '@/journal/flawCounts'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay, DrillSum } from '@/journal/sums'
import type { ChunkId, Tempo } from '@/music/units'
import { coldChecksOf, statesOf, type ChunkState, type ColdCheck } from './chunkStates'
import { countChecks, countStates, type ColdFigures, type StateCounts } from './coldFigures'
import { byFrequency, type FlawCount } from './flaws'
import { joinSums, type Figures } from './joinSums'
import { fitLearningCurve, type CurvePoint, type LearningCurve } from './learningCurve'

/** One day of a chunk. */
export interface ChunkDayFigures extends Figures {
  readonly day: Day
  /** The slowest and the fastest tempo, and the last. */
  readonly lowestRung: Tempo
  readonly highestRung: Tempo
  readonly lastRung: Tempo
}

export interface ChunkFigures extends Figures {
  readonly chunk: ChunkId
  /** Where it stands and how it was drilled last, where the sums tell it. */
  readonly drill?: DrillSum
  readonly state: ChunkState
  readonly days: readonly ChunkDayFigures[]
  /** Whether errors fall since the tempo last reached a new height; absent while there are too few days to say. */
  readonly curve?: LearningCurve
}

/** All practice of one piece, from the kept sums of its chunks. */
export interface PieceReview extends Figures {
  /** In the order in which they were first played. */
  readonly chunks: readonly ChunkFigures[]
  /** Where what went wrong, the most frequent first. */
  readonly places: readonly FlawCount[]
  readonly substitutions: readonly Substitution[]
  readonly coldChecks: readonly ColdCheck[]
  readonly cold: ColdFigures
  readonly states: StateCounts
}

export const reviewPiece = (rows: readonly ChunkDay[]): PieceReview => {
  const states = statesOf(rows)
  const chunks = [...groupBy(rows, ({ chunk }) => chunk)]
  const coldChecks = coldChecksOf(rows)
  return {
    ...joinSums(rows),
    chunks: chunks.flatMap(([chunk, days]) => {
      const state = states.get(chunk)
      return state ? [reviewChunk(chunk, days, state)] : []
    }),
    places: byFrequency(
      chunks.flatMap(([chunk, days]) =>
        joinPlaces(days.flatMap(({ places }) => places)).map((place) => ({ chunk, ...place })),
      ),
    ),
    substitutions: substitutionsIn(rows.flatMap(({ places }) => places)),
    coldChecks,
    cold: countChecks(coldChecks),
    states: countStates([...states.values()]),
  }
}

const reviewChunk = (
  chunk: ChunkId,
  days: readonly ChunkDay[],
  state: ChunkState,
): ChunkFigures => {
  const drill = days.findLast(({ begun }) => begun !== undefined)?.begun
  const curve = fitLearningCurve(curveOf(days))
  return {
    chunk,
    ...(drill ? { drill } : {}),
    state,
    ...joinSums(days),
    days: days.flatMap(dayFigures),
    ...(curve ? { curve } : {}),
  }
}

const dayFigures = (row: ChunkDay): readonly ChunkDayFigures[] => {
  const [lowest, highest] = [row.rungs[0], row.rungs.at(-1)]
  if (!lowest || !highest || row.lastRung === undefined) return []
  return [
    {
      day: row.day,
      ...joinSums([row]),
      lowestRung: lowest.rung,
      highestRung: highest.rung,
      lastRung: row.lastRung,
    },
  ]
}

/**
 * A day is a point, at the middle of its repetitions. Half a flawed one is added to each, so that a
 * day without any has a logarithm (common practice for counts). While new tempi are still reached, as
 * many errors as before are no plateau: only the days from the last new tempo on are taken.
 */
const curveOf = (days: readonly ChunkDay[]): readonly CurvePoint[] => {
  let before = 0
  let highest = 0
  let points: CurvePoint[] = []
  for (const { tally, rungs } of days) {
    const of = tally.clean + tally.flawed
    const top = rungs.at(-1)?.rung ?? 0
    if (top > highest) points = []
    highest = Math.max(highest, top)
    if (of === 0) continue
    points.push({ trial: before + (of + 1) / 2, errors: (tally.flawed + 0.5) / (of + 1) })
    before += of
  }
  return points
}
