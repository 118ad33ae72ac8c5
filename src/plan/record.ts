import type { Exercise } from '@/exercises/buildUp'
import type { DayOf } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import type { ChunkDay } from '@/journal/sums'
import { tempo, type ChunkId, type PieceId, type Tempo } from '@/music/units'

/** What the plan needs of the journal: kept sums, and no repetition. */
export interface PracticeRecord {
  /** By day. */
  readonly chunkDays: readonly ChunkDay[]
  /** The highest tempo at which the streak goal of each chunk was met. */
  readonly reached: ReadonlyMap<ChunkId, Tempo>
}

export const recordFrom = (chunkDays: readonly ChunkDay[]): PracticeRecord => ({
  chunkDays,
  reached: reachedIn(chunkDays),
})

/** The record from the events themselves. */
export const recordOf = (events: readonly JournalEvent[], dayOf: DayOf): PracticeRecord =>
  recordFrom(sumDays(events, dayOf).flatMap(({ chunks }) => chunks))

const reachedIn = (chunkDays: readonly ChunkDay[]): ReadonlyMap<ChunkId, Tempo> => {
  const reached = new Map<ChunkId, Tempo>()
  for (const { chunk, doneAt } of chunkDays)
    if (doneAt !== undefined) reached.set(chunk, tempo(Math.max(doneAt, reached.get(chunk) ?? 0)))
  return reached
}

export const ofPiece = (
  { chunkDays, reached }: PracticeRecord,
  piece: PieceId,
): PracticeRecord => ({
  chunkDays: chunkDays.filter((row) => row.piece === piece),
  reached,
})

/** Rungs are metronome marks: the one at or below the tempo asked for is up to 5.3 % lower. */
const sameMark = 0.945

/** Whether the streak goal of an exercise was met at the tempo that it is to reach. */
export const isReached = (
  { reached }: PracticeRecord,
  { chunk, reach }: Exercise,
  goalTempo: Tempo,
): boolean => (reached.get(chunk.id) ?? 0) >= goalTempo * reach * sameMark

/** Days of practice that say how it goes at present. */
const recentDays = 3
/** Fewer repetitions than these say nothing of the share. */
const leastRepetitions = 20

/**
 * More than half of all repetitions clean is the floor of a good day (the share of clean trials goes
 * with what is kept, their number does not: Duke, Simmons & Cash 2009). Whether the last days were below.
 */
export const isBelowFloor = ({ chunkDays }: PracticeRecord): boolean => {
  const days = [...new Set(chunkDays.map(({ day }) => day))].toSorted().slice(-recentDays)
  const rows = chunkDays.filter(({ day }) => days.includes(day))
  const clean = rows.reduce((sum, { tally }) => sum + tally.clean, 0)
  const flawed = rows.reduce((sum, { tally }) => sum + tally.flawed, 0)
  return clean + flawed >= leastRepetitions && clean < flawed
}
