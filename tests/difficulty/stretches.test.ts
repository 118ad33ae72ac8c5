import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findStretches } from '@/difficulty/stretches'

/** '1 1 4 4 1' -> '2-3'. */
const stretches = (loads: string): string =>
  findStretches(loads.split(' ').map(Number))
    .map(({ from, to }) => `${from}-${to}`)
    .join(' ')

describe('stretches of beats', () => {
  test.each([
    ['what stands out', '1 1 1 1 1 4 4 4 1 1 1 1', '5-7'],
    ['two of them', '1 1 1 1 1 4 4 4 1 1 1 1 5 5 5 1 1 1 1 1', '5-7 12-14'],
    ['one, with an easier beat between', '1 1 1 1 4 4 4 2 4 4 4 1 1 1 1 1 1 1 1', '4-10'],
    ['the harder half', '1 1 1 1 1 1 1 1 1 1 3 3 3 3 3 3 3 3', '10-17'],
    [
      'what is merely hard beside what is very hard',
      `${'1 '.repeat(20)}9 9 9 9 ${'1 '.repeat(10)}3 3 3 3 ${'1 '.repeat(10)}1`,
      '20-23 34-37',
    ],
    ['all where all is alike', '2 2 2 2 2 2', '0-5'],
    ['none where there is nothing', '0 0 0', ''],
  ])('%s: %s', (_, loads, expected) => {
    expect(stretches(loads)).toBe(expected)
  })

  const loads = fc.array(fc.integer({ min: 0, max: 50 }), {
    minLength: 1,
    maxLength: 80,
  })
  test('lie in order, within the beats, and do not overlap', () => {
    fc.assert(
      fc.property(loads, (all) => {
        const found = findStretches(all)
        for (const [i, { from, to }] of found.entries()) {
          expect(from).toBeLessThanOrEqual(to)
          expect(to).toBeLessThan(all.length)
          expect(from).toBeGreaterThan(found[i - 1]?.to ?? -1)
        }
      }),
    )
  })
  test('are there wherever anything is played', () => {
    fc.assert(
      fc.property(loads, (all) => {
        expect(findStretches(all).length > 0).toBe(all.some((load) => load > 0))
      }),
    )
  })
  test('do not depend on the unit', () => {
    fc.assert(
      fc.property(loads, (all) => {
        const places = (by: number): string =>
          findStretches(all.map((load) => load * by))
            .map(({ from, to }) => `${from}-${to}`)
            .join()
        expect(places(4)).toBe(places(1))
      }),
    )
  })
})
