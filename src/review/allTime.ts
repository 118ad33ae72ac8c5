import { monthOf, type Day } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { DayTotal, PieceDay } from '@/journal/sums'
import type { PieceId } from '@/music/units'
import { isPlayed, joinOverruled, joinSums, type Figures, type OverruleCount } from './joinSums'
import { compareShares, type ShareTrend } from './proportion'
import type { Span } from './teacherPage'

export interface PieceFigures extends Figures {
  readonly piece: PieceId
  /** The title under which it was added last, where the sums tell it. */
  readonly title?: string
  readonly firstDay: Day
  readonly lastDay: Day
  /** On how many days it was played. */
  readonly days: number
}

/** All practice there is a record of, from the kept sums. */
export interface AllTime extends Figures {
  /** On how many days something was played. */
  readonly days: number
  readonly months: readonly ({ readonly month: string } & Figures)[]
  /** The last played first. */
  readonly pieces: readonly PieceFigures[]
  readonly overruled: readonly OverruleCount[]
  /** The last four weeks with practice against the four before; absent while there is nothing to compare. */
  readonly trend?: Trend
}

/** Two times of practice compared, and which days they are. */
export interface Trend extends ShareTrend {
  readonly days: { readonly before: Span; readonly after: Span }
}

/** Days of practice that are compared with as many before: enough for the interval to be worth showing. */
const trendDays = 28

export const reviewAllTime = (
  totals: readonly DayTotal[],
  pieces: readonly PieceDay[],
): AllTime => {
  const played = totals.filter(isPlayed)
  const trend = trendOf(played)
  return {
    ...joinSums(totals),
    days: played.length,
    months: [...groupBy(played, ({ day }) => monthOf(day))].map(([month, days]) => ({
      month,
      ...joinSums(days),
    })),
    pieces: [...groupBy(pieces, ({ piece }) => piece).values()]
      .flatMap(pieceFigures)
      .toSorted((a, b) => (a.lastDay < b.lastDay ? 1 : a.lastDay > b.lastDay ? -1 : 0)),
    overruled: joinOverruled(totals),
    ...(trend ? { trend } : {}),
  }
}

/** The last days with practice against as many before; `undefined` while there is nothing to compare. */
export const trendOf = (days: readonly (DayTotal | PieceDay)[]): Trend | undefined => {
  const played = days.filter(isPlayed)
  const [old, late] = [played.slice(-2 * trendDays, -trendDays), played.slice(-trendDays)]
  const trend = compareShares(joinSums(old).tally, joinSums(late).tally)
  const [before, after] = [spanOf(old), spanOf(late)]
  return trend && before && after && { ...trend, days: { before, after } }
}

const spanOf = (days: readonly { readonly day: Day }[]): Span | undefined => {
  const [first, last] = [days[0], days.at(-1)]
  return first && last && { from: first.day, to: last.day }
}

const pieceFigures = (rows: readonly PieceDay[]): readonly PieceFigures[] => {
  const played = rows.filter(isPlayed)
  const [first, last] = [played[0], played.at(-1)]
  if (!first || !last) return []
  const title = rows.findLast((row) => row.title !== undefined)?.title
  return [
    {
      piece: first.piece,
      ...(title === undefined ? {} : { title }),
      ...joinSums(played),
      firstDay: first.day,
      lastDay: last.day,
      days: new Set(played.map(({ day }) => day)).size,
    },
  ]
}
