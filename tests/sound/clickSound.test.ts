import { expect, test } from 'vitest'
import { makeClick } from '@/sound/clickSound'
import { accents } from '@/sound/sound'

const peak = (samples: Float32Array): number =>
  samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
const power = (samples: Float32Array): number =>
  samples.reduce((sum, sample) => sum + sample ** 2, 0)
/** Share of the power near a frequency: Goertzel's sum. */
const toneAt = (samples: Float32Array, hertz: number, rate: number): number => {
  let [re, im] = [0, 0]
  for (const [i, sample] of samples.entries()) {
    re += sample * Math.cos((2 * Math.PI * hertz * i) / rate)
    im += sample * Math.sin((2 * Math.PI * hertz * i) / rate)
  }
  return re ** 2 + im ** 2
}

test.each([44_100, 48_000, 96_000])(
  'at %d Hz the clicks begin at once, never clip, and die away',
  (rate) => {
    for (const accent of accents) {
      const samples = makeClick(accent, rate)
      expect(peak(samples)).toBeLessThanOrEqual(1)
      expect(peak(samples.slice(0, rate / 1000))).toBe(peak(samples))
      expect(power(samples.slice(0, rate / 50)) / power(samples)).toBeGreaterThan(0.95)
      expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(0.001)
    }
  },
)

test('the heavier the accent, the louder the click', () => {
  const loudness = accents.map((accent) => power(makeClick(accent, 48_000)))
  expect(loudness).toEqual(loudness.toSorted((a, b) => b - a))
  expect(new Set(loudness).size).toBe(4)
})

test('the first of the bar rings higher than the other beats', () => {
  const [strong, weak] = [makeClick('strong', 48_000), makeClick('weak', 48_000)]
  expect(toneAt(strong, 2350, 48_000)).toBeGreaterThan(4 * toneAt(strong, 1570, 48_000))
  expect(toneAt(weak, 1570, 48_000)).toBeGreaterThan(4 * toneAt(weak, 2350, 48_000))
})
