import { expect, test } from 'vitest'
import { limits } from '@/coach/limits'
import { expectedTries } from '@/exercises/expectedTries'

/** What the reasons of the limits say, computed anew. */

test.each([
  [3, 0.632],
  [5, 0.451],
  [7, 0.348],
  [10, 0.259],
])(
  'after %i clean and none flawed the true share of flawed ones may still be %f (95 %% bound)',
  (k, bound) => {
    expect(1 - 0.05 ** (1 / k)).toBeCloseTo(bound, 3)
  },
)

test('at eight of ten clean a streak of ten takes 42 tries', () => {
  expect(Math.round(expectedTries(0.8, limits.streakGoal.most))).toBe(42)
})

const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k)

/** Probability of k or more successes in n. */
const atLeast = (k: number, n: number, p: number): number =>
  Array.from({ length: n - k + 1 }, (_, i) => k + i).reduce(
    (sum, j) => sum + choose(n, j) * p ** j * (1 - p) ** (n - j),
    0,
  )

test.each([
  [1, 15],
  [3, 6],
])(
  'with %i kinds of slip, two alike at one place come by chance in %i of a hundred',
  (kinds, of) => {
    const { times, withinRepetitions } = limits.sameFlaw
    const cells = 10 * kinds
    const atOne = atLeast(times, withinRepetitions, 0.2 / cells)
    expect(Math.round(100 * (1 - (1 - atOne) ** cells))).toBe(of)
  },
)

/** Clopper & Pearson 1934: the shares at whose edge so many clean are just improbable. */
test.each([
  [5, 8, 0.29, 0.89],
  [6, 10, 0.3, 0.85],
])('after %i of %i clean the share may be %f to %f (exact 90 %% interval)', (k, n, low, high) => {
  expect(Math.abs(atLeast(k, n, low) - 0.05)).toBeLessThan(0.005)
  expect(Math.abs(1 - atLeast(k + 1, n, high) - 0.05)).toBeLessThan(0.005)
})

test('a pause is asked for before the tempo falls, and the tempo falls before the share is told', () => {
  expect(limits.pauseAfterFlawed).toBeLessThan(limits.flawedOfLast.flawed)
  expect(limits.flawedOfLast.of).toBeLessThan(limits.lowShare.of)
  expect(limits.lowShare.of).toBeLessThan(limits.advice.every)
})
