import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildUp, type BuildUpOptions } from '@/exercises/buildUp'
import { estimateMinutes, usualPace } from '@/exercises/estimate'
import { expectedTries } from '@/exercises/expectedTries'
import { tempo, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'

// Computed from the closed form, to the digits shown.
describe('expected tries until so many clean in a row', () => {
  test.each([
    [0.5, [14, 62, 254, 2046]],
    [0.7, [6.38, 16.5, 37.1, 114.7]],
    [0.8, [4.77, 10.3, 18.8, 41.6]],
    [0.9, [3.72, 6.94, 10.9, 18.7]],
    [0.95, [3.33, 5.85, 8.64, 13.4]],
    [1, [3, 5, 7, 10]],
  ])('at a clean share of %d for 3, 5, 7, 10: %j', (share, tries) => {
    for (const [i, streak] of [3, 5, 7, 10].entries()) {
      const expected = tries[i] ?? 0
      const digits = `${expected}`.split('.')[1]?.length ?? 0
      expect(expectedTries(share, streak)).toBeCloseTo(expected, digits)
    }
  })

  // Mean of a success run: (1 - p^k) / (p^k q). Feller, vol. 1, ch. XIII; from memory.
  test('is the closed form', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 0.98, noNaN: true }),
        fc.integer({ min: 1, max: 10 }),
        (p, k) => {
          const closed = (1 - p ** k) / (p ** k * (1 - p))
          expect(expectedTries(p, k) / closed).toBeCloseTo(1, 9)
        },
      ),
    )
  })

  // A chain over the streaks 0 to k, its shares carried forward try by try until hardly any is left.
  test('is what the Markov chain of the streak gives', () => {
    for (const [p, k] of [
      [0.5, 3],
      [0.8, 5],
      [0.9, 10],
    ] as const) {
      let shares = [1, ...Array<number>(k - 1).fill(0)]
      let mean = 0
      for (let t = 0; t < 5000; t++) {
        const left = shares.reduce((sum, share) => sum + share, 0)
        mean += left
        shares = [left * (1 - p), ...shares.slice(0, -1).map((share) => share * p)]
      }
      expect(expectedTries(p, k)).toBeCloseTo(mean, 6)
    }
  })

  test('never clean means never', () => {
    expect(expectedTries(0, 3)).toBe(Infinity)
  })
})

const sixtyFour = Array(64).fill('C5:1/4').join(' ')
const minutes = (
  options: Partial<BuildUpOptions>,
  pace: Partial<Parameters<typeof estimateMinutes>[1]> = {},
): number => {
  const score = writeScore({ right: sixtyFour, left: sixtyFour.replaceAll('5', '3') })
  const all = buildUp(
    score,
    { from: tick(0), to: score.end },
    { hand: 'right', thoroughness: 'thorough', direction: 'forward', ...options },
  )
  return estimateMinutes(all, { goalTempo: tempo(100), ...usualPace, ...pace })
}

describe('how long a build-up takes', () => {
  test('a group of three: five seconds to find it, then tries of its length and a breath', () => {
    const score = writeScore({ right: 'C5 D5 E5 F5' })
    const [, , group] = buildUp(
      score,
      { from: tick(0), to: score.end },
      { hand: 'right', thoroughness: 'thorough', direction: 'forward' },
    )
    // Three quarters at 55 of 100 last 3.27 s; at 8 of 10 clean three in a row take 4.77 tries.
    const seconds = 5 + 4.765625 * (3 * (60 / 55) + 2)
    expect(group?.size).toBe(3)
    const found = estimateMinutes(group ? [group] : [], { goalTempo: tempo(100), ...usualPace })
    expect(found * 60).toBeCloseTo(seconds, 6)
  })

  test('sixty-four sixteenths of one hand take about an hour, brisk less than that; both hands some hours', () => {
    const one = { thorough: minutes({}), brisk: minutes({ thoroughness: 'brisk' }) }
    const both = minutes({ hand: 'both' })
    expect(one.brisk).toBeLessThan(one.thorough)
    expect(Math.round(one.thorough)).toBeGreaterThan(40)
    expect(Math.round(one.thorough)).toBeLessThan(90)
    expect(both).toBeGreaterThan(1.5 * one.thorough)
    expect(both).toBeLessThan(3 * one.thorough)
  })

  test('who plays clean more often, breathes less or plays faster is sooner there', () => {
    const usual = minutes({})
    expect(minutes({}, { cleanShare: 0.9 })).toBeLessThan(usual)
    expect(minutes({}, { pauseSeconds: 1 })).toBeLessThan(usual)
    expect(minutes({}, { goalTempo: tempo(120) })).toBeLessThan(usual)
  })
})
