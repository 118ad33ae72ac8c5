import { expect, test } from 'vitest'
import { makeSignal } from '@/sound/signalSound'
import { signals } from '@/sound/sound'

const rate = 48_000
const low = 220
const high = 220 * 2 ** (5 / 12)

const peak = (samples: Float32Array): number =>
  samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
/** The power near a frequency: Goertzel's sum. */
const toneAt = (samples: Float32Array, hertz: number): number => {
  let [re, im] = [0, 0]
  for (const [i, sample] of samples.entries()) {
    re += sample * Math.cos((2 * Math.PI * hertz * i) / rate)
    im += sample * Math.sin((2 * Math.PI * hertz * i) / rate)
  }
  return re ** 2 + im ** 2
}
/** Whether the lower or the higher bar rings in the first stroke, and in the second. */
const heard = (samples: Float32Array): string =>
  [samples.slice(0, 0.14 * rate), samples.slice(0.2 * rate, 0.34 * rate)]
    .map((part) => {
      const [l, h] = [toneAt(part, low), toneAt(part, high)]
      return l > 4 * h ? 'low' : h > 4 * l ? 'high' : 'both'
    })
    .join(' ')

test('every signal is short and soft, begins and ends in silence, and never clips', () => {
  for (const signal of signals) {
    const samples = makeSignal(signal, rate)
    expect(samples.length / rate).toBeLessThan(0.8)
    expect(peak(samples)).toBeLessThan(0.6)
    expect(peak(samples)).toBeGreaterThan(0.1)
    expect(Math.abs(samples[0] ?? 1)).toBeLessThan(0.001)
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(0.001)
  }
})

test('up rises, down falls, a problem is the same stroke twice, done is both at once', () => {
  expect(heard(makeSignal('up', rate))).toBe('low high')
  expect(heard(makeSignal('down', rate))).toBe('high low')
  expect(heard(makeSignal('problem', rate))).toBe('low low')
  expect(heard(makeSignal('done', rate))).toMatch(/^both/)
  expect(heard(makeSignal('streak', rate))).toMatch(/^high/)
})
