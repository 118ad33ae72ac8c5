import { substitutionsIn, type Substitution } from '@/journal/flawCounts'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay } from '@/journal/sums'
import type { PieceId } from '@/music/units'
import {
  coldChecksOf,
  standingsOf,
  statesOf,
  type ChunkStanding,
  type ChunkState,
  type ColdCheck,
} from './chunkStates'
import { isPlayed } from './joinSums'
import { estimateShare, type Estimate } from './proportion'

/** How many cold checks there were, and how many held: clean of clean and flawed. */
export interface ColdFigures {
  readonly checks: number
  readonly held: number
  readonly failed: number
  readonly brokenOff: number
  /** Absent while none came to its end. */
  readonly share?: Estimate
}

export const countChecks = (checks: readonly ColdCheck[]): ColdFigures => {
  const count = (verdict: ColdCheck['verdict']): number =>
    checks.filter((check) => check.verdict === verdict).length
  const [held, failed, brokenOff] = [count('clean'), count('flawed'), count('brokenOff')]
  const share = estimateShare(held, held + failed)
  return { checks: checks.length, held, failed, brokenOff, ...(share ? { share } : {}) }
}

export type StateCounts = Readonly<Record<ChunkState, number>>

/** What only the sums of the chunks of all pieces tell. */
export interface ChunksOfAll {
  readonly states: StateCounts
  readonly cold: ColdFigures
  readonly substitutions: readonly Substitution[]
  /** The pieces that have chunks, in the order in which they come. */
  readonly pieces: readonly {
    readonly piece: PieceId
    readonly states: StateCounts
    readonly cold: ColdFigures
  }[]
}

export const reviewChunksOfAll = (rows: readonly ChunkDay[]): ChunksOfAll => {
  const pieces = [...groupBy(rows, ({ piece }) => piece)]
    .filter(([, of]) => of.some(isPlayed))
    .map(([piece, of]) => ({
      piece,
      states: [...statesOf(of).values()],
      checks: coldChecksOf(of),
    }))
  return {
    states: countStates(pieces.flatMap(({ states }) => states)),
    cold: countChecks(pieces.flatMap(({ checks }) => checks)),
    substitutions: substitutionsIn(rows.flatMap(({ places }) => places)),
    pieces: pieces.map(({ piece, states, checks }) => ({
      piece,
      states: countStates(states),
      cold: countChecks(checks),
    })),
  }
}

/** Every cold check of all pieces, piece by piece. */
export const coldChecksOfAll = (rows: readonly ChunkDay[]): readonly ColdCheck[] =>
  [...groupBy(rows, ({ piece }) => piece).values()].flatMap((of) => coldChecksOf(of))

/** Where every chunk of all pieces stands. */
export const standingsOfAll = (rows: readonly ChunkDay[]): readonly ChunkStanding[] =>
  [...groupBy(rows, ({ piece }) => piece).values()].flatMap((of) => standingsOf(of))

/** How many chunks are in each state. */
export const countStates = (states: readonly ChunkState[]): StateCounts => {
  const counts = { practised: 0, secure: 0, kept: 0, slipped: 0 }
  for (const state of states) counts[state]++
  return counts
}
