import { expect, test } from 'vitest'
import { firstMemory, fsrsInterval, fsrsStep, retrievability } from '../bench/fsrs'

/** Values computed from the published curve of FSRS-6 with its default weights (open-spaced-repetition). */
test('the forgetting curve of FSRS-6 that the benchmark compares with', () => {
  expect(retrievability(10, 10)).toBeCloseTo(0.9, 10)
  expect(retrievability(20, 10)).toBeCloseTo(0.84588, 4)
  expect(fsrsInterval(10, 0.95)).toBeCloseTo(4.026, 2)
  expect(fsrsInterval(10, 0.9)).toBeCloseTo(10, 10)
  expect(fsrsInterval(10, 0.8)).toBeCloseTo(33.16, 1)
  expect(firstMemory).toEqual({ stability: 2.3065, difficulty: expect.closeTo(2.1181, 3) })
})

test('a clean check makes it last longer, a failed one shorter', () => {
  expect(fsrsStep(firstMemory, 2, true).stability).toBeGreaterThan(firstMemory.stability)
  expect(fsrsStep(firstMemory, 2, false).stability).toBeLessThan(firstMemory.stability)
})
