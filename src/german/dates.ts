import type { DatesText } from '@/text/dates'

const months = [
  'Januar',
  'Februar',
  'März',
  'April',
  'Mai',
  'Juni',
  'Juli',
  'August',
  'September',
  'Oktober',
  'November',
  'Dezember',
] as const

/** A month of up to four letters is not shortened. */
const shortMonths = [
  'Jan.',
  'Feb.',
  'März',
  'Apr.',
  'Mai',
  'Juni',
  'Juli',
  'Aug.',
  'Sept.',
  'Okt.',
  'Nov.',
  'Dez.',
] as const

const monthName = (month: number): string => months[month - 1] ?? `${month}.`
const shortName = (month: number): string => shortMonths[month - 1] ?? `${month}.`

export const dates: DatesText = {
  day: (day, month, year) => `${day}. ${monthName(month)} ${year}`,
  dayAndMonth: (day, month) => `${day}. ${monthName(month)}`,
  month: (month, year) => `${monthName(month)} ${year}`,
  shortDay: (day, month) => `${day}. ${shortName(month)}`,
  shortMonth: shortName,
  weekdays: ['Sonntag', 'Montag', 'Dienstag', 'Mittwoch', 'Donnerstag', 'Freitag', 'Samstag'],
}
