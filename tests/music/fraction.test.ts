import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatFraction, parseFraction } from '@/music/fraction'

test.each([
  [0, 480, '0'],
  [480, 480, '1'],
  [720, 480, '3_2'],
  [160, 480, '1_3'],
  [1, 480, '1_480'],
  [3, 1, '3'],
  [960, 480, '2'],
])('%i ticks of %i a quarter are %s quarters', (ticks, ticksPerQuarter, text) => {
  expect(formatFraction(ticks, ticksPerQuarter)).toBe(text)
})

const place = fc.record({ ticks: fc.nat(1e7), resolution: fc.integer({ min: 1, max: 32767 }) })

test('what is written is read back', () => {
  fc.assert(
    fc.property(place, ({ ticks, resolution }) => {
      expect(parseFraction(formatFraction(ticks, resolution), resolution)).toBe(ticks)
    }),
  )
})

test('the same place at another resolution has the same fraction', () => {
  fc.assert(
    fc.property(place, fc.integer({ min: 1, max: 50 }), ({ ticks, resolution }, times) => {
      expect(formatFraction(ticks * times, resolution * times)).toBe(
        formatFraction(ticks, resolution),
      )
    }),
  )
})

test.each(['', '1_0', '-1', '1/2', '1_2_3', '0.5', ' 1'])('%j is no fraction', (text) => {
  expect(parseFraction(text, 480)).toBe(undefined)
})

test('a fraction that falls between two ticks has no tick', () => {
  expect(parseFraction('1_3', 480)).toBe(160)
  expect(parseFraction('1_7', 480)).toBe(undefined)
})
