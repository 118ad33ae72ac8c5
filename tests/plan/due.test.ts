import { describe, expect, test } from 'vitest'
import { dayAt, daysBetween } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { chunkId } from '@/music/units'
import { checkIntervals, daysOverdue, nextCheck } from '@/plan/due'
import { recordOf } from '@/plan/record'
import { drillBegun, repetition, secure } from '../review/session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
const noon = 43_200
const days = 86_400

/** Secure on day 0, then the cold repetition of some later days: { 1: 'c', 3: 'f' }. */
const after = (cold: Readonly<Record<number, 'c' | 'f' | 'b'>>, again: readonly number[] = []) => {
  const events: JournalEvent[] = [
    drillBegun(noon - 1),
    ...[0, 10, 20, 30, 40].map((s) => repetition('c', noon + s, { rung: 120 })),
    secure(noon + 60),
    ...Object.entries(cold).map(([day, letter]) =>
      repetition(letter, Number(day) * days + noon, { rung: 120 }),
    ),
    ...again.map((day) => secure(day * days + noon + 600)),
  ]
  const rows = recordOf(events, dayOf).chunkDays.filter(({ chunk }) => chunk === chunkId('a'))
  const check = nextCheck(rows)
  const first = rows[0]?.day ?? dayOf(0)
  return check && daysBetween(first, check.since) + check.interval
}

describe('the day on which a place is due cold, counted from the day on which it was secure', () => {
  test.each([
    ['at first', {}, 1],
    ['clean on day 1', { 1: 'c' }, 1 + 2],
    ['clean each time', { 1: 'c', 3: 'c' }, 3 + 4],
    ['clean each time', { 1: 'c', 3: 'c', 7: 'c' }, 7 + 7],
    ['clean each time', { 1: 'c', 3: 'c', 7: 'c', 14: 'c' }, 14 + 14],
    ['clean each time', { 1: 'c', 3: 'c', 7: 'c', 14: 'c', 28: 'c' }, 28 + 28],
    ['and no longer interval', { 1: 'c', 3: 'c', 7: 'c', 14: 'c', 28: 'c', 56: 'c' }, 56 + 28],
    ['late by a holiday, but clean', { 1: 'c', 20: 'c' }, 20 + 4],
    ['slipped: the next day', { 1: 'c', 3: 'c', 7: 'f' }, 8],
    ['slipped and clean again: from the beginning', { 1: 'c', 3: 'c', 7: 'f', 8: 'c' }, 8 + 2],
    ['broken off: the next day', { 1: 'c', 3: 'b' }, 4],
    ['failed before it was ever kept: practised first', { 1: 'f' }, undefined],
  ] as const)('%s: %j', (_, cold, due) => {
    expect(after(cold)).toBe(due)
  })

  test('secure again after it failed, it is due the day after', () => {
    expect(after({ 1: 'f' }, [4])).toBe(5)
    expect(after({ 1: 'c', 3: 'f' }, [3])).toBe(4)
  })

  test('a streak on the day of a clean check changes nothing', () => {
    expect(after({ 1: 'c', 3: 'c' }, [3])).toBe(3 + 4)
  })
})

test('intervals grow, and the first is a night', () => {
  expect(checkIntervals[0]).toBe(1)
  expect([...checkIntervals]).toEqual(checkIntervals.toSorted((a, b) => a - b))
  const check = { since: dayOf(0), interval: 4, rung: 120 as never }
  expect(daysOverdue(check, dayOf(7 * days * 1000))).toBe(
    daysBetween(dayOf(0), dayOf(7 * days * 1000)) - 4,
  )
})
