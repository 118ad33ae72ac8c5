import { groupBy } from '@/journal/groupBy'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import type { ChunkDay, DayTotal, PieceDay } from '@/journal/sums'
import { notebookOf } from '@/journal/notebook'
import type { Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import { reviewAllTime, trendOf, type AllTime } from '@/review/allTime'
import type { Carried } from '@/review/carryOver'
import { coldChecksOf } from '@/review/chunkStates'
import { countChecks, reviewChunksOfAll, type ChunksOfAll } from '@/review/coldFigures'
import { placeFlaws, type BarFlaws } from '@/review/flawBars'
import { isPlayed, joinOverruled, type OverruleCount } from '@/review/joinSums'
import { joinPeriods, periodSteps, type Period, type PeriodStep } from '@/review/periods'
import { reviewPiece, type PieceReview } from '@/review/pieceReview'
import type { ShareTrend } from '@/review/proportion'
import { readChunkDays } from './chunkRecord'
import type { StoragePort } from './ports'
import { openListed, type Shelf } from './reviewedRecord'

export type Periods = Readonly<Record<PeriodStep, readonly Period[]>>

export interface AllReview extends AllTime {
  readonly periods: Periods
}

/** One piece; without its score where its file is not on this machine. */
export interface OnePieceReview extends PieceReview {
  readonly title?: string
  readonly days: number
  readonly periods: Periods
  readonly trend?: ShareTrend
  readonly overruled: readonly OverruleCount[]
  readonly score?: Score
  /** Where in the score the flaws are, the bar with most first. */
  readonly bars: readonly BarFlaws[]
  /** What is written of the piece, the newest first. */
  readonly notebook: ReturnType<typeof notebookOf>
}

interface Sums {
  readonly totals: readonly DayTotal[]
  readonly pieces: readonly PieceDay[]
}

export const reviewAll = ({ totals, pieces }: Sums): AllReview => ({
  ...reviewAllTime(totals, pieces),
  periods: periodsOf(totals),
})

export const readPieceReview = async (
  storage: Pick<StoragePort, 'chunkDays' | 'written'>,
  { pieces }: Sums,
  id: PieceId,
  score: Score | undefined,
  carried: readonly Carried[],
): Promise<Result<OnePieceReview, string>> => {
  const rows = await readChunkDays(storage, id, carried)
  if (!rows.ok) return rows
  const written = await storage.written()
  if (!written.ok) return written
  const review = reviewPiece(rows.value)
  const own = pieces.filter(({ piece }) => piece === id)
  const title = score?.title ?? own.findLast((row) => row.title !== undefined)?.title
  const trend = trendOf(own)
  return {
    ok: true,
    value: {
      ...review,
      ...(title === undefined ? {} : { title }),
      days: new Set(rows.value.filter(isPlayed).map(({ day }) => day)).size,
      periods: periodsOf(rows.value),
      ...(trend ? { trend } : {}),
      overruled: joinOverruled(own),
      ...(score ? { score } : {}),
      bars: score ? placeFlaws(score, review) : [],
      notebook: notebookOf(written.value)
        .filter(({ piece }) => piece === id)
        .toReversed(),
    },
  }
}

/** One piece as it went in the sitting under way. */
export interface SittingPiece extends PieceReview {
  readonly piece: PieceId
  readonly score?: Score
  readonly bars: readonly BarFlaws[]
}

/** Its figures are of these events alone; whether a cold repetition was a check, the days before tell. */
export const readSitting = async (
  record: Pick<StoragePort, 'chunkDays' | 'dayOf'>,
  shelf: Shelf,
  events: readonly JournalEvent[],
): Promise<Result<readonly SittingPiece[], string>> => {
  const played = events.filter((event) => event.kind === 'repetition')
  const rows = sumDays(events, record.dayOf).flatMap(({ chunks }) => chunks)
  const pieces: SittingPiece[] = []
  for (const [piece, of] of groupBy(played, (event) => event.piece)) {
    const open = await openListed(shelf, piece)
    const days = await readChunkDays(record, piece, open?.carried ?? [])
    if (!days.ok) return days
    const times = new Set(of.map(({ atEpochMs }) => atEpochMs))
    const coldChecks = coldChecksOf(days.value).filter(({ atEpochMs }) => times.has(atEpochMs))
    const review = reviewPiece(rows.filter((row) => row.piece === piece))
    pieces.push({
      piece,
      ...review,
      coldChecks,
      cold: countChecks(coldChecks),
      ...(open ? { score: open.score } : {}),
      bars: open ? placeFlaws(open.score, review) : [],
    })
  }
  return ok(pieces)
}

/** Piece by piece, so that a record of years passes through in parts. */
export const readAllChunkDays = async (
  record: Pick<StoragePort, 'chunkDays'>,
  pieces: Sums['pieces'],
): Promise<Result<readonly ChunkDay[], string>> => {
  const chunks: ChunkDay[] = []
  for (const piece of new Set(pieces.map((row) => row.piece))) {
    const rows = await record.chunkDays(piece)
    if (!rows.ok) return rows
    for (const row of rows.value) chunks.push(row)
  }
  return ok(chunks)
}

export const readChunksOfAll = async (
  record: Pick<StoragePort, 'sums' | 'chunkDays'>,
): Promise<Result<ChunksOfAll, string>> => {
  const sums = await record.sums()
  const rows = sums.ok ? await readAllChunkDays(record, sums.value.pieces) : sums
  return rows.ok ? ok(reviewChunksOfAll(rows.value)) : rows
}

const periodsOf = (sums: Parameters<typeof joinPeriods>[0]): Periods => {
  const [day, week, month] = periodSteps.map((step) => joinPeriods(sums, step))
  return { day: day ?? [], week: week ?? [], month: month ?? [] }
}
