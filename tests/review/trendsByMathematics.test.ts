/** The intervals and fits of the review against their definitions: sums and integrals done by brute force. */
import { describe, expect, test } from 'vitest'
import { fitLearningCurve, fitLine, studentT } from '@/review/learningCurve'
import { compareShares, estimateShare, z95 } from '@/review/proportion'

/** By Simpson's rule. */
const integral = (f: (x: number) => number, from: number, to: number, steps = 20_000): number => {
  const h = (to - from) / steps
  let sum = f(from) + f(to)
  for (let i = 1; i < steps; i++) sum += f(from + i * h) * (i % 2 === 0 ? 2 : 4)
  return (sum * h) / 3
}

/** How likely so many hits of n are, term by term. */
const binomial = (n: number, p: number): readonly number[] => {
  const terms = [(1 - p) ** n]
  for (let k = 1; k <= n; k++) terms.push(((terms[k - 1] ?? 0) * ((n - k + 1) / k) * p) / (1 - p))
  return terms
}

const shares = Array.from({ length: 49 }, (_, i) => (i + 1) / 50)
const mean = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0) / of.length

describe('the points of the distributions', () => {
  test('95 of 100 of the normal distribution lie within 1.96 of its middle', () => {
    const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
    expect(integral(density, -z95, z95)).toBeCloseTo(0.95, 12)
  })

  test.each([3, 4, 5, 6, 8, 12, 20, 40, 100])(
    '95 of 100 of Student’s distribution with %i degrees of freedom lie within its point',
    (degrees) => {
      const shape = (x: number) => (1 + (x * x) / degrees) ** (-(degrees + 1) / 2)
      // The tails of 3 degrees reach far: x = tan u takes them in.
      const all = integral((u) => shape(Math.tan(u)) / Math.cos(u) ** 2, -1.5707, 1.5707)
      const within = integral(shape, -studentT(degrees), studentT(degrees))
      expect(Math.abs(within / all - 0.95)).toBeLessThan(0.0004)
    },
  )
})

describe('the interval of a share', () => {
  // Wilson 1927: it holds the shares p from which the found one is no more than 1.96 standard errors of p away.
  test('ends where the found share is 1.96 standard errors of the end away', () => {
    for (const n of [1, 2, 5, 12, 40, 333])
      for (let hits = 0; hits <= n; hits++) {
        const { low = 0, high = 0 } = estimateShare(hits, n) ?? {}
        const found = hits / n
        for (const end of [low, high])
          if (end > 0 && end < 1)
            expect(Math.abs(found - end) / Math.sqrt((end * (1 - end)) / n)).toBeCloseTo(z95, 8)
      }
  })

  test('holds the true share in about 95 of 100 cases, whatever it is', () => {
    for (const n of [8, 20, 60]) {
      const held = shares.map((p) =>
        binomial(n, p).reduce((sum, chance, hits) => {
          const { low = 1, high = 0 } = estimateShare(hits, n) ?? {}
          return low <= p && p <= high ? sum + chance : sum
        }, 0),
      )
      expect(mean(held)).toBeGreaterThan(0.94)
      expect(mean(held)).toBeLessThan(0.97)
      // Of few cases no interval can do better for every share: hits come in whole numbers.
      expect(Math.min(...held)).toBeGreaterThan(0.83)
    }
  })
})

describe('a change of the share', () => {
  const verdicts = (n: number, before: number, after: number) => {
    const [first, second] = [binomial(n, before), binomial(n, after)]
    const chances = { better: 0, worse: 0, unclear: 0 }
    first.forEach((chance, clean) =>
      second.forEach((other, cleanLater) => {
        const trend = compareShares(
          { clean, flawed: n - clean },
          { clean: cleanLater, flawed: n - cleanLater },
        )
        if (trend) chances[trend.verdict] += chance * other
      }),
    )
    return chances
  }

  test.each([20, 40, 80])(
    'that is none is claimed in about 5 of 100 cases at most, with %i before and after',
    (n) => {
      const claimed = [0.3, 0.5, 0.6, 0.75, 0.9].map((p) => 1 - verdicts(n, p, p).unclear)
      expect(mean(claimed)).toBeLessThan(0.05)
      expect(Math.max(...claimed)).toBeLessThan(0.065)
    },
  )

  test('that is large is found, and hardly ever the other way round', () => {
    const { better, worse } = verdicts(80, 0.5, 0.75)
    expect(better).toBeGreaterThan(0.85)
    expect(worse).toBeLessThan(1e-4)
  })

  test('lies within its interval in about 95 of 100 cases', () => {
    for (const [before, after] of [
      [0.5, 0.5],
      [0.4, 0.7],
      [0.9, 0.6],
    ] as const) {
      const [first, second] = [binomial(30, before), binomial(30, after)]
      let held = 0
      first.forEach((chance, a) =>
        second.forEach((other, b) => {
          const rise = compareShares(
            { clean: a, flawed: 30 - a },
            { clean: b, flawed: 30 - b },
          )?.rise
          if (rise && rise.low <= after - before && after - before <= rise.high)
            held += chance * other
        }),
      )
      expect(held).toBeGreaterThan(0.94)
      expect(held).toBeLessThan(0.98)
    }
  })
})

describe('the line', () => {
  test('of whole numbers is that of the normal equations in whole numbers', () => {
    const points = Array.from({ length: 30 }, (_, i) => [i * 7 + (i % 4), (i * i) % 91] as const)
    const sum = (f: (x: bigint, y: bigint) => bigint): bigint =>
      points.reduce((total, [x, y]) => total + f(BigInt(x), BigInt(y)), 0n)
    const n = BigInt(points.length)
    const [x, y, xx, xy, yy] = [
      sum((a) => a),
      sum((_, b) => b),
      sum((a) => a * a),
      sum((a, b) => a * b),
      sum((_, b) => b * b),
    ]
    const [top, bottom] = [n * xy - x * y, n * xx - x * x]
    const slope = Number(top) / Number(bottom)
    // n (n - 2) times the variance of the slope is (Syy Sxx - Sxy²) / Sxx², each S being n times its sum of squares.
    const rest = (n * yy - y * y) * bottom - top * top
    const slopeError = Math.sqrt(Number(rest) / (points.length - 2)) / Number(bottom)
    const line = fitLine(points)
    expect(line?.slope).toBeCloseTo(slope, 12)
    expect(line?.slopeError).toBeCloseTo(slopeError, 12)
  })
})

describe('a learning curve without learning', () => {
  /** The same numbers each time. Source: the minimal standard generator, Park & Miller 1988, from memory. */
  const randomFrom = (seed: number) => () =>
    (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647

  test('is called improving or worsening in about 5 of 100 cases', () => {
    const random = randomFrom(11)
    // A sum of twelve evenly spread numbers is nearly normal.
    const noise = (): number => Array.from({ length: 12 }, random).reduce((a, b) => a + b, -6)
    const runs = 4_000
    let claimed = 0
    for (let run = 0; run < runs; run++) {
      const points = Array.from({ length: 9 }, (_, i) => ({
        trial: 5 + 10 * i,
        errors: 0.4 * Math.exp(0.4 * noise()),
      }))
      const verdict = fitLearningCurve(points)?.verdict
      if (verdict === 'improving' || verdict === 'worsening') claimed++
    }
    expect(claimed / runs).toBeGreaterThan(0.035)
    expect(claimed / runs).toBeLessThan(0.065)
  })
})
