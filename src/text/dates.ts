import { catalogue } from './text'

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/** A month from 1 to 12. */
const monthName = (month: number): string => months[month - 1] ?? `${month}`
const shortName = (month: number): string => monthName(month).slice(0, 3)

/** Days and months; what the rest of the program asks for is `dateWords` and `weekdayWord`. */
export const datesText = catalogue('dates', {
  day: (day: number, month: number, year: number) => `${day} ${monthName(month)} ${year}`,
  /** Of a year that is named elsewhere. */
  dayAndMonth: (day: number, month: number) => `${day} ${monthName(month)}`,
  month: (month: number, year: number) => `${monthName(month)} ${year}`,
  shortDay: (day: number, month: number) => `${day} ${shortName(month)}`,
  shortMonth: shortName,
  /** From Sunday on. */
  weekdays: ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'],
})

export type DatesText = typeof datesText

/** '2026-05-03' -> '3 May 2026'; '2026-05' -> 'May 2026'; short: '3 May', 'May'. */
export const dateWords = (date: string, length: 'long' | 'short' = 'long'): string => {
  const [year = 0, month = 1, day] = date.split('-').map(Number)
  if (length === 'short')
    return day === undefined ? datesText.shortMonth(month) : datesText.shortDay(day, month)
  return day === undefined ? datesText.month(month, year) : datesText.day(day, month, year)
}

/** '2026-05-03' -> 'Sunday'. Sakamoto's rule: a year is counted from March on, so that the leap day is its last. */
export const weekdayWord = (date: string): string => {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number)
  const counted = month < 3 ? year - 1 : year
  const leapDays = Math.floor(counted / 4) - Math.floor(counted / 100) + Math.floor(counted / 400)
  return datesText.weekdays[(counted + leapDays + (shifts[month - 1] ?? 0) + day) % 7] ?? ''
}

/** By how many weekdays the days of each month stand off. */
const shifts = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4] as const
