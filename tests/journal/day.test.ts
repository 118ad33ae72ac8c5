import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt, daysAfter, daysBetween, monthOf, weekOf, type Day } from '@/journal/day'

const at = (utc: string): number => Date.parse(`${utc}Z`)

test('a week begins on its Monday (ISO 8601)', () => {
  // Weekdays as ECMAScript Date gives them, 1 for Monday.
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 40_000 }), (n) => {
      const dateOf = (days: number) => new Date(days * 86_400_000)
      const day = dateOf(n).toISOString().slice(0, 10) as Day
      const monday = weekOf(day)
      expect(new Date(monday).getUTCDay()).toBe(1)
      expect(daysBetween(monday, day)).toBe((dateOf(n).getUTCDay() + 6) % 7)
      expect(daysAfter(monday, daysBetween(monday, day))).toBe(day)
    }),
  )
})

describe('a day of practice', () => {
  test.each([
    ['just before four in the morning', '2026-03-01T03:59:59.999', 0, '2026-02-28'],
    ['at four', '2026-03-01T04:00', 0, '2026-03-01'],
    ['after midnight it is still the evening before', '2026-01-01T00:30', 0, '2025-12-31'],
    ['an hour east', '2026-03-01T03:00', 60, '2026-03-01'],
    ['five hours west', '2026-03-01T08:59', -300, '2026-02-28'],
    ['five and three quarters east', '2026-02-28T22:15', 345, '2026-03-01'],
    ['the leap day', '2024-02-29T12:00', 0, '2024-02-29'],
    ['a century without one', '2100-03-01T03:00', 0, '2100-02-28'],
    ['before 1970', '1969-12-31T12:00', 0, '1969-12-31'],
  ])('%s', (_, utc, east, day) => {
    expect(dayAt(at(utc), east)).toBe(day)
  })

  test('is the date of the Gregorian calendar that the language itself gives (ECMAScript Date)', () => {
    const moments = fc.integer({ min: at('1900-01-01T04:00'), max: at('2200-01-01T00:00') })
    fc.assert(
      fc.property(moments, (moment) => {
        const four = new Date(moment - 4 * 3_600_000)
        expect(dayAt(moment, 0)).toBe(four.toISOString().slice(0, 10))
      }),
    )
  })
})

test('days between two are counted over months, years and leap days', () => {
  const day = (utc: string) => dayAt(at(`${utc}T12:00`), 0)
  const count = (from: string, to: string) => daysBetween(day(from), day(to))
  expect(count('2026-01-05', '2026-01-05')).toBe(0)
  expect(count('2026-01-31', '2026-02-01')).toBe(1)
  expect(count('2024-02-28', '2024-03-01')).toBe(2)
  expect(count('2025-12-31', '2027-01-01')).toBe(366)
  expect(count('2026-03-02', '2026-02-27')).toBe(-3)
})

test('a day names its month', () => {
  expect(monthOf(dayAt(at('2026-12-24T12:00'), 0))).toBe('2026-12')
})
