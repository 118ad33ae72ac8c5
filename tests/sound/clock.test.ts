import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ms } from '@/music/units'
import { readClock, toAudioTime, toEventTime, unreadClock, type AudioClock } from '@/sound/clock'

/** Readings every 10 ms of two clocks `offset` apart, the audio clock running `skew` parts fast. */
const read = (
  errors: readonly number[],
  { offset, skew = 0, from = 1 }: { offset: number; skew?: number; from?: number },
): AudioClock =>
  errors.reduce((clock, error, i) => {
    const audio = from + i * 0.01
    return readClock(clock, { audio, event: ms((audio / (1 + skew)) * 1000 + offset + error) })
  }, unreadClock)

test('the median of jittery readings is right though a third of them are far off', () => {
  const jitter = fc.double({ min: -0.5, max: 0.5, noNaN: true })
  const outlier = fc.double({ min: -200, max: 200, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(jitter, { minLength: 14, maxLength: 14 }),
      fc.array(outlier, { minLength: 6, maxLength: 6 }),
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      fc.infiniteStream(fc.nat(19)),
      (steady, wild, offset, places) => {
        const errors = [...steady]
        for (const error of wild) errors.splice(places.next().value ?? 0, 0, error)
        const clock = read(errors, { offset })
        expect(Math.abs((toEventTime(clock, 5) ?? 0) - (5000 + offset))).toBeLessThanOrEqual(
          0.5 + 1e-6,
        )
      },
    ),
  )
})

test('there and back is the same time', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), (audio) => {
      const clock = read([0, 1, -1], { offset: 777 })
      const at = toEventTime(clock, audio)
      expect(at && toAudioTime(clock, at)).toBeCloseTo(audio, 6)
    }),
  )
})

test('clocks that run apart by 100 parts in a million are followed to a tenth of a millisecond', () => {
  let clock = unreadClock
  for (let t = 1; t < 3600; t += 0.1)
    clock = readClock(clock, { audio: t * 1.0001, event: ms(t * 1000 + 50) })
  expect(Math.abs((toEventTime(clock, 3600 * 1.0001) ?? 0) - 3600_050)).toBeLessThan(0.2)
})

test('the zeros that browsers report before sound comes are left out', () => {
  const zeros = [
    { audio: 0, event: ms(0) },
    { audio: 0, event: ms(500) },
    { audio: NaN, event: ms(500) },
  ].reduce(readClock, unreadClock)
  expect(toEventTime(zeros, 1)).toBeUndefined()
  expect(toEventTime(readClock(zeros, { audio: 1, event: ms(1500) }), 2)).toBe(2500)
})
