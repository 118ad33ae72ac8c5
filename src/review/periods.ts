import { daysBetween, monthOf, weekOf, type Day } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { Sum } from '@/journal/sums'
import { isPlayed, joinSums, type Figures } from './joinSums'

export const periodSteps = ['day', 'week', 'month'] as const
export type PeriodStep = (typeof periodSteps)[number]

/** A day, a week from Monday on, or a month with practice. */
export interface Period extends Figures {
  /** Its first day; of a month '2026-05'. */
  readonly from: string
  /** The first and the last day in it with practice. */
  readonly firstDay: Day
  readonly lastDay: Day
  /** How many steps after the first period: those between without practice are left out. */
  readonly at: number
}

/** Days joined to longer times, in the order of the calendar. */
export const joinPeriods = (
  sums: readonly (Sum & { readonly day: Day })[],
  step: PeriodStep,
): readonly Period[] => {
  const played = sums
    .filter(isPlayed)
    .toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0))
  const first = played[0]?.day
  if (first === undefined) return []
  return [...groupBy(played, ({ day }) => nameOf(day, step))].map(([from, days]) => ({
    from,
    firstDay: days[0].day,
    lastDay: days.at(-1)?.day ?? days[0].day,
    at: distance(first, days[0].day, step),
    ...joinSums(days),
  }))
}

const nameOf = (day: Day, step: PeriodStep): string => {
  switch (step) {
    case 'day':
      return day
    case 'week':
      return weekOf(day)
    case 'month':
      return monthOf(day)
  }
}

const distance = (from: Day, to: Day, step: PeriodStep): number => {
  switch (step) {
    case 'day':
      return daysBetween(from, to)
    case 'week':
      return daysBetween(weekOf(from), weekOf(to)) / 7
    case 'month':
      return monthNumber(to) - monthNumber(from)
  }
}

const monthNumber = (day: Day): number => {
  const [year = 0, month = 1] = day.split('-').map(Number)
  return year * 12 + month
}
