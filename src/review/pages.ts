import type { ChunkDay, DayTotal, PieceDay } from '@/journal/sums'
import { reviewAllTime, trendOf, type AllTime, type Trend } from './allTime'
import { isPlayed, joinOverruled, type OverruleCount } from './joinSums'
import { joinPeriods, periodSteps, type Period, type PeriodStep } from './periods'
import { reviewPiece, type PieceReview } from './pieceReview'

/** What each page of the review says, on the screen and on the command line. */

export type Periods = Readonly<Record<PeriodStep, readonly Period[]>>

export interface AllPage extends AllTime {
  readonly periods: Periods
}

export interface PiecePage extends PieceReview {
  /** The title under which it was added last, where the sums tell it. */
  readonly title?: string
  readonly days: number
  readonly periods: Periods
  readonly trend?: Trend
  readonly overruled: readonly OverruleCount[]
}

export const allPage = (totals: readonly DayTotal[], pieces: readonly PieceDay[]): AllPage => ({
  ...reviewAllTime(totals, pieces),
  periods: periodsOf(totals),
})

/** The rows of its chunks, and its own days. */
export const piecePage = (rows: readonly ChunkDay[], own: readonly PieceDay[]): PiecePage => {
  const title = own.findLast((row) => row.title !== undefined)?.title
  const trend = trendOf(own)
  return {
    ...reviewPiece(rows),
    ...(title === undefined ? {} : { title }),
    days: new Set(rows.filter(isPlayed).map(({ day }) => day)).size,
    periods: periodsOf(rows),
    ...(trend ? { trend } : {}),
    overruled: joinOverruled(own),
  }
}

const periodsOf = (sums: Parameters<typeof joinPeriods>[0]): Periods => {
  const [day, week, month] = periodSteps.map((step) => joinPeriods(sums, step))
  return { day: day ?? [], week: week ?? [], month: month ?? [] }
}
