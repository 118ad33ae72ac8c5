import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitLearningCurve, fitLine, studentT, type CurvePoint } from '@/review/learningCurve'
import { compareShares, estimateShare } from '@/review/proportion'

describe('a share and its interval', () => {
  // Newcombe 1998, Stat. Med. 17:857-872, table I, method 3 (score method without continuity correction), from memory.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i lies between %d and %d', (hits, of, low, high) => {
    const share = estimateShare(hits, of)
    expect(share?.low).toBeCloseTo(low, 4)
    expect(share?.high).toBeCloseTo(high, 4)
  })

  test('of nothing is not claimed', () => {
    expect(estimateShare(0, 0)).toBeUndefined()
  })

  test('holds the share, stays within 0 and 1, and narrows with more cases', () => {
    const cases = fc
      .integer({ min: 1, max: 500 })
      .chain((of) => fc.tuple(fc.nat(of), fc.constant(of)))
    fc.assert(
      fc.property(cases, ([hits, of]) => {
        const share = estimateShare(hits, of)
        const more = estimateShare(hits * 4, of * 4)
        if (!share || !more) throw new Error('no estimate')
        expect(share.low).toBeGreaterThanOrEqual(0)
        expect(share.low).toBeLessThanOrEqual(share.value)
        expect(share.high).toBeGreaterThanOrEqual(share.value)
        expect(share.high).toBeLessThanOrEqual(1)
        expect(more.high - more.low).toBeLessThan(share.high - share.low)
      }),
    )
  })
})

describe('two shares', () => {
  // Newcombe 1998, Stat. Med. 17:873-890, table II, method 10, from memory: 56 of 70 against 48 of 80.
  test('56 of 70 after 48 of 80: 0.20 more, between 0.0524 and 0.3339', () => {
    const trend = compareShares({ clean: 48, flawed: 32 }, { clean: 56, flawed: 14 })
    expect(trend?.rise.value).toBeCloseTo(0.2, 10)
    expect(trend?.rise.low).toBeCloseTo(0.0524, 4)
    expect(trend?.rise.high).toBeCloseTo(0.3339, 4)
    expect(trend?.verdict).toBe('better')
  })

  test.each([
    [{ clean: 4, flawed: 6 }, { clean: 7, flawed: 3 }, 'unclear'],
    [{ clean: 40, flawed: 60 }, { clean: 70, flawed: 30 }, 'better'],
    [{ clean: 70, flawed: 30 }, { clean: 40, flawed: 60 }, 'worse'],
    [{ clean: 50, flawed: 50 }, { clean: 50, flawed: 50 }, 'unclear'],
  ])('%j, then %j: %s', (before, after, verdict) => {
    expect(compareShares(before, after)?.verdict).toBe(verdict)
  })

  test('a time without clean and flawed ones is not compared', () => {
    expect(compareShares({ clean: 0, flawed: 0 }, { clean: 9, flawed: 1 })).toBeUndefined()
  })
})

describe('the line', () => {
  // NIST Statistical Reference Datasets, linear regression, "Norris": data and certified values, from memory.
  test('of the Norris data is the certified one', () => {
    const line = fitLine(norris)
    expect(line?.slope).toBeCloseTo(1.00211681802045, 12)
    expect(line?.intercept).toBeCloseTo(-0.262323073774029, 11)
    expect(line?.slopeError).toBeCloseTo(0.000429796848199937, 14)
  })

  // Anscombe 1973, Am. Stat. 27:17-21, first data set, from memory: 3 + 0.5 x, standard error of the slope 0.118.
  test('of the first data set of Anscombe is 3 + 0.5 x', () => {
    const line = fitLine([
      [10, 8.04],
      [8, 6.95],
      [13, 7.58],
      [9, 8.81],
      [11, 8.33],
      [14, 9.96],
      [6, 7.24],
      [4, 4.26],
      [12, 10.84],
      [7, 4.82],
      [5, 5.68],
    ])
    expect(line?.slope).toBeCloseTo(0.5, 3)
    expect(line?.intercept).toBeCloseTo(3, 3)
    expect(line?.slopeError).toBeCloseTo(0.118, 3)
  })

  test('of points above one another is none', () => {
    expect(
      fitLine([
        [1, 1],
        [1, 2],
        [1, 3],
      ]),
    ).toBeUndefined()
  })

  // The table of Student's distribution, two-sided 95 % (Fisher & Yates, from memory).
  test.each([
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [6, 2.447],
    [8, 2.306],
    [10, 2.228],
    [15, 2.131],
    [20, 2.086],
    [30, 2.042],
    [60, 2.0],
    [120, 1.98],
  ])('Student with %i degrees of freedom: %d', (degrees, t) => {
    expect(Math.abs(studentT(degrees) - t)).toBeLessThan(0.005)
  })
})

describe('a learning curve', () => {
  /** errors = start * trial^slope, wobbling by the factors in turn. */
  const curve = (slope: number, count: number, wobble: readonly number[] = [1]): CurvePoint[] =>
    Array.from({ length: count }, (_, i) => ({
      trial: (i + 1) * 10,
      errors: 0.6 * (i + 1) ** slope * (wobble[i % wobble.length] ?? 1),
    }))

  test('finds the power by which errors fall', () => {
    expect(fitLearningCurve(curve(-0.7, 8))?.slope.value).toBeCloseTo(-0.7, 10)
  })

  test.each<[string, CurvePoint[], string | undefined]>([
    ['errors that fall', curve(-0.5, 10, [1, 1.1, 0.9]), 'improving'],
    ['errors that grow', curve(0.5, 10, [1, 1.1, 0.9]), 'worsening'],
    ['the same again and again', curve(0, 12, [1, 1.03, 0.97]), 'plateau'],
    ['a fall of a few per cent', curve(-0.05, 12, [1, 1.02, 0.98]), 'plateau'],
    ['up and down', curve(0, 8, [1, 3, 0.3, 2]), 'unclear'],
    ['four points', curve(-0.5, 4), undefined],
  ])('%s', (_, points, verdict) => {
    expect(fitLearningCurve(points)?.verdict).toBe(verdict)
  })
})

const norris = [
  [0.2, 0.1],
  [337.4, 338.8],
  [118.2, 118.1],
  [884.6, 888.0],
  [10.1, 9.2],
  [226.5, 228.1],
  [666.3, 668.5],
  [996.3, 998.5],
  [448.6, 449.1],
  [777.0, 778.9],
  [558.2, 559.2],
  [0.4, 0.3],
  [0.6, 0.1],
  [775.5, 778.1],
  [666.9, 668.8],
  [338.0, 339.3],
  [447.5, 448.9],
  [11.6, 10.8],
  [556.0, 557.7],
  [228.1, 228.3],
  [995.8, 998.0],
  [887.6, 888.8],
  [120.2, 119.6],
  [0.3, 0.3],
  [0.3, 0.6],
  [556.8, 557.6],
  [339.1, 339.3],
  [887.2, 888.0],
  [999.0, 998.5],
  [779.0, 778.9],
  [11.1, 10.2],
  [118.3, 117.6],
  [229.2, 228.9],
  [669.1, 668.4],
  [448.9, 449.2],
  [0.5, 0.2],
] as const
