import { describe, expect, test } from 'vitest'
import { daysOverdue } from '@/plan/due'
import { createPianist, natureOf, type Nature } from './pianist'
import { layoutOf, pieceOf } from './pieces'
import { dayNumber, emptyRecord, practiseDay, type Practised } from './practise'

/** Sundays are free, two weeks in summer, ten days at the end of the year. */
const isHoliday = (day: number): boolean => day % 7 === 6 || (day >= 190 && day < 204) || day >= 355

/** Who learns so slowly has something to learn for most of the year. */
const slow = (nature: Nature): Nature => ({ ...nature, growth: nature.growth / 2 })

/** A year with two pieces, half an hour a day. */
const year = (seed: number, length = 365): readonly (Practised & { readonly i: number })[] => {
  const desks = [pieceOf(7), pieceOf(4)].map((score, k) => ({
    layout: layoutOf(score),
    pianist: createPianist(seed + k, score, slow(natureOf(seed))),
  }))
  let record = emptyRecord
  const days: (Practised & { readonly i: number })[] = []
  for (let i = 0; i < length; i++) {
    if (isHoliday(i)) continue
    const day = practiseDay(desks, record, i, { minutes: 30, seed })
    days.push({ ...day, i })
    record = day.record
  }
  return days
}

describe.each([5, 9])('a year of days with holidays, pianist %i', (seed) => {
  const days = year(seed)

  test('both pieces come to be kept, and stay in rotation', () => {
    const last = days.at(-1)
    expect(days.some(({ pieces }) => pieces[0]?.finished === true)).toBe(true)
    expect(
      last?.pieces.flatMap(({ places }) => places).every(({ state }) => state !== 'untouched'),
    ).toBe(true)
    const lateChecks = days
      .filter(({ i }) => i > 300)
      .flatMap(({ plan }) => plan.items.filter(({ kind }) => kind === 'coldCheck'))
    expect(lateChecks.length).toBeGreaterThan(0)
  })

  test('no check that is due waits longer than five days of practice', () => {
    const waited = new Map<string, number>()
    let longest = 0
    for (const { plan, pieces } of days) {
      const checked = new Set(
        plan.items.flatMap((item) => (item.kind === 'coldCheck' ? [item.chunk] : [])),
      )
      for (const { id, check } of pieces.flatMap(({ places }) => places)) {
        const isDue = check !== undefined && daysOverdue(check, plan.day) >= 0
        waited.set(id, isDue && !checked.has(id) ? (waited.get(id) ?? 0) + 1 : 0)
        longest = Math.max(longest, waited.get(id) ?? 0)
      }
    }
    expect(longest).toBeLessThanOrEqual(5)
  })

  test('minutes are kept, and never exceeded by more than a tenth', () => {
    for (const { plan } of days) expect(plan.minutes).toBeLessThanOrEqual(33)
    const working = days.filter(({ plan }) =>
      plan.items.some(({ kind }) => kind === 'newGroup' || kind === 'join'),
    )
    expect(working.length).toBeGreaterThan(20)
    for (const { plan } of working) expect(plan.minutes).toBeGreaterThanOrEqual(27)
  })

  test('more than half of the repetitions are clean', () => {
    const shares = days.map(({ cleanShare }) => cleanShare)
    expect(shares.reduce((sum, each) => sum + each, 0) / shares.length).toBeGreaterThan(0.5)
  })

  test('nothing is lost by a holiday: the places of the day before are there the day after', () => {
    const [before, after] = [days.findLast(({ i }) => i < 190), days.find(({ i }) => i >= 204)]
    const states = (day: Practised | undefined) =>
      day?.pieces.flatMap(({ places }) => places.map(({ id }) => id))
    expect(states(after)).toEqual(states(before))
    expect(after?.plan.day).toBe(dayNumber(204))
    expect(after?.plan.items.length).toBeGreaterThan(0)
  })
})

test('the same year again is the same', () => {
  const plans = () => year(5, 40).map(({ plan }) => plan)
  expect(plans()).toEqual(plans())
})
