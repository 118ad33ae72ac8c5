declare const unit: unique symbol

/** A day of practice, 'YYYY-MM-DD'; days sort as text. */
export type Day = string & { readonly [unit]: 'day' }

/** The day of a moment, given in milliseconds since 1970 UTC. What zone it goes by is the caller's matter. */
export type DayOf = (epochMs: number) => Day

/** Practice after midnight belongs to the evening before: a day begins at four in the morning. */
const dayBeginsAtHour = 4

const dayMs = 86_400_000

/** The day of a moment where clocks stand `minutesEast` before UTC: 3:59 on 2 May at UTC -> '2026-05-01'. */
export const dayAt = (epochMs: number, minutesEast: number): Day =>
  formatDay(Math.floor((epochMs + minutesEast * 60_000 - dayBeginsAtHour * 3_600_000) / dayMs))

/** How many days `to` comes after `from`. */
export const daysBetween = (from: Day, to: Day): number => numberOf(to) - numberOf(from)

/** The day so many days later: '2026-04-30', 1 -> '2026-05-01'. */
export const daysAfter = (day: Day, days: number): Day => formatDay(numberOf(day) + days)

/** '2026-05-01' -> itself; `undefined` for what is no day of the calendar, such as '2026-02-30'. */
export const parseDay = (text: string): Day | undefined => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined
  const day = formatDay(numberOf(text as Day))
  return day === text ? day : undefined
}

/** The Monday of its week (ISO 8601): '2026-05-03' -> '2026-04-27'. 1970-01-05 was a Monday. */
export const weekOf = (day: Day): Day => {
  const days = numberOf(day)
  return formatDay(days - ((((days - 4) % 7) + 7) % 7))
}

/** '2026-05-01' -> '2026-05'. */
export const monthOf = (day: Day): string => day.slice(0, day.lastIndexOf('-'))

/**
 * Days since 1970-01-01 as a date of the Gregorian calendar, and back. The year is taken to begin in
 * March, so that the leap day is its last. Source: Hinnant, "chrono-Compatible Low-Level Date
 * Algorithms" (2013), civil_from_days and days_from_civil.
 */
const formatDay = (days: number): Day => {
  const shifted = days + 719_468
  const era = Math.floor(shifted / 146_097)
  const ofEra = shifted - era * 146_097
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1_460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) /
      365,
  )
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const fromMarch = Math.floor((5 * ofYear + 2) / 153)
  const date = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(date, 2)}` as Day
}

const numberOf = (day: Day): number => {
  const [calendarYear = 0, month = 1, date = 1] = day.split('-').map(Number)
  const year = month <= 2 ? calendarYear - 1 : calendarYear
  const era = Math.floor(year / 400)
  const yearOfEra = year - era * 400
  const ofYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + date - 1
  const ofEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + ofYear
  return era * 146_097 + ofEra - 719_468
}

const padded = (n: number, digits: number): string => String(n).padStart(digits, '0')
