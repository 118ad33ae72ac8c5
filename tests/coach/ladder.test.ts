import fc from 'fast-check'
import { expect, test } from 'vitest'
import { buildLadder, classicMarks, startRung, type Ladder } from '@/coach/ladder'
import { tempo } from '@/music/units'

const classic: Ladder = { kind: 'classic' }
const byFive: Ladder = { kind: 'percent', percent: 5 }
const rungsTo = (goal: number, ladder: Ladder = classic, start?: number): string =>
  buildLadder(ladder, tempo(goal), start === undefined ? undefined : tempo(start)).join(' ')

/** The scale engraved on pendulum metronomes, 40 to 208 (common practice, no source). */
const pendulum =
  '40 42 44 46 48 50 52 54 56 58 60 63 66 69 72 76 80 84 88 92 96 100 104 108 112 116 120 ' +
  '126 132 138 144 152 160 168 176 184 192 200 208'

test('the classic marks are those of the pendulum metronome', () => {
  expect(
    classicMarks(208)
      .filter((mark) => mark >= 40)
      .join(' '),
  ).toBe(pendulum)
})

test('below 40 the marks go by two', () => {
  expect(classicMarks(40).slice(-6)).toEqual([30, 32, 34, 36, 38, 40])
})

test.each([
  [66, '34 36 38 40 42 44 46 48 50 52 54 56 58 60 63 66'],
  [72, '36 38 40 42 44 46 48 50 52 54 56 58 60 63 66 69 72'],
  [208, '104 108 112 116 120 126 132 138 144 152 160 168 176 184 192 200 208'],
  [122, '63 66 69 72 76 80 84 88 92 96 100 104 108 112 116 122'],
  [10, '6 8 10'],
])('the rungs to goal %i reach from half of it to the goal itself', (goal, rungs) => {
  expect(rungsTo(goal)).toBe(rungs)
})

test('a mark that is felt as the goal itself is left out', () => {
  expect(rungsTo(121)).toContain('112 116 121')
})

test('five per cent steps are even up to the goal', () => {
  expect(rungsTo(100, byFive)).toBe('51 53 56 58 61 64 68 71 75 78 82 86 91 95 100')
})

test('a slower start tempo reaches further down', () => {
  expect(rungsTo(72, classic, 31).startsWith('30 32 34 36')).toBe(true)
})

test.each([
  [120, 66],
  [208, 112],
  [72, 38],
  [60, 32],
  [30, 16],
])('a drill to goal %i starts at %i without a start tempo', (goal, start) => {
  expect(startRung(buildLadder(classic, tempo(goal)))).toBe(start)
})

test('a start tempo between two marks starts at the lower', () => {
  expect(startRung(buildLadder(classic, tempo(120), tempo(75)), tempo(75))).toBe(72)
})

test('any ladder rises, stays within percent bounds and ends at its goal; the start is on it', () => {
  const ladders = fc.oneof(
    fc.constant(classic),
    fc
      .double({ min: 3, max: 8, noNaN: true })
      .map((percent): Ladder => ({ kind: 'percent', percent })),
  )
  const tempos = fc.double({ min: 5, max: 400, noNaN: true })
  fc.assert(
    fc.property(ladders, tempos, fc.option(tempos, { nil: undefined }), (ladder, goal, start) => {
      const from = start === undefined ? undefined : tempo(start)
      const rungs = buildLadder(ladder, tempo(goal), from)
      expect(rungs.at(-1)).toBe(goal)
      for (const [i, rung] of rungs.entries()) expect(rung).toBeGreaterThan(rungs[i - 1] ?? 0)
      expect(rungs).toContain(startRung(rungs, from))
    }),
  )
})

test('without a start tempo the first rung is 50 to 60 % of any usual goal', () => {
  for (let goal = 20; goal <= 300; goal++) {
    const share = startRung(buildLadder(classic, tempo(goal))) / goal
    expect(share).toBeGreaterThanOrEqual(0.5)
    expect(share).toBeLessThanOrEqual(0.6)
  }
})
