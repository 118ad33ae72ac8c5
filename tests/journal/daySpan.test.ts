import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt, daysAfter, parseDay, type Day } from '@/journal/day'
import { spanOf } from '@/journal/daySpan'

const day = (text: string): Day => {
  const parsed = parseDay(text)
  if (!parsed) throw new Error(`${text} is no day`)
  return parsed
}

describe('from when to when a day lasts', () => {
  test.each([
    ['UTC', 0, '2026-05-01T04:00:00Z'],
    ['Pacific/Kiritimati, 14 hours before', 840, '2026-04-30T14:00:00Z'],
    ['Baker Island, 12 hours behind', -720, '2026-05-01T16:00:00Z'],
    ['Nepal, 5 hours and 45 minutes before', 345, '2026-04-30T22:15:00Z'],
  ])('at %s', (_, minutesEast, begins) => {
    const { from, to } = spanOf(day('2026-05-01'), (ms) => dayAt(ms, minutesEast))
    expect(new Date(from).toISOString()).toBe(begins.replace('Z', '.000Z'))
    expect(to - from).toBe(86_400_000)
  })

  // Central European clocks went forward at 01:00 UTC on 29 March 2026 (Directive 2000/84/EC: the last Sunday of March).
  test('a day on which the clocks go forward has 23 hours, the night before four counted to the evening', () => {
    const change = Date.UTC(2026, 2, 29, 1)
    const dayOf = (ms: number) => dayAt(ms, ms < change ? 60 : 120)
    const { from, to } = spanOf(day('2026-03-28'), dayOf)
    expect((to - from) / 3_600_000).toBe(23)
  })

  test('every moment lies in the span of its own day and no other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -2e12, max: 4e12 }),
        fc.integer({ min: -720, max: 840 }),
        (at, minutesEast) => {
          const dayOf = (ms: number) => dayAt(ms, minutesEast)
          const { from, to } = spanOf(dayOf(at), dayOf)
          expect(from <= at && at < to).toBe(true)
          expect(spanOf(daysAfter(dayOf(at), 1), dayOf).from).toBe(to)
        },
      ),
    )
  })
})
