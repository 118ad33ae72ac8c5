import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatBase64, parseBase64 } from '@/journal/base64'
import { decodeTake, encodeTake } from '@/journal/take'
import { key, ms } from '@/music/units'
import { anyTake } from '../support/anyEvent'

describe('base64', () => {
  // The test vectors of RFC 4648, section 10, without their padding.
  test.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy'],
  ])('%j is %j', (plain, encoded) => {
    expect(formatBase64([...new TextEncoder().encode(plain)])).toBe(encoded)
  })

  test('agrees with Node and comes back, for any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
        const text = formatBase64([...bytes])
        expect(text).toBe(Buffer.from(bytes).toString('base64').replaceAll('=', ''))
        expect(parseBase64(text)).toEqual([...bytes])
      }),
    )
  })

  test.each(['Z', 'Zg==', 'Z!g8', 'Zm9vY'])('%j is refused', (text) => {
    expect(parseBase64(text)).toBeUndefined()
  })
})

describe('a take as text', () => {
  test('keeps each key event to a tenth of a millisecond', () => {
    const events = [
      { kind: 'pedal', pedal: 'sustain', value: 127, at: ms(999.96) },
      { kind: 'down', key: key(60), velocity: 64, at: ms(1_000.04) },
      { kind: 'up', key: key(60), at: ms(1_250.123) },
    ] as const
    const decoded = decodeTake(encodeTake({ events }, ms(1_000)), ms(0))
    const times = decoded.ok ? decoded.value.events.map((event) => event.at) : []
    expect(times).toEqual([0, 0, 250.1])
  })

  test('any take comes back', () => {
    fc.assert(
      fc.property(anyTake, (take) => {
        expect(decodeTake(encodeTake(take, ms(0)), ms(0))).toEqual({ ok: true, value: take })
      }),
    )
  })

  test('an hour of playing with the times of a real clock keeps them without drift', () => {
    const events = Array.from({ length: 7_200 }, (_, i) => ({
      kind: 'down' as const,
      key: key(60),
      velocity: 64,
      at: ms(12_345.678 + i * 500.049),
    }))
    const decoded = decodeTake(encodeTake({ events }, ms(12_345.678)), ms(12_345.678))
    const last = decoded.ok ? decoded.value.events.at(-1)?.at : undefined
    expect(Math.abs((last ?? 0) - (12_345.678 + 7_199 * 500.049))).toBeLessThan(0.051)
  })

  test('takes under twelve letters a key event, six or seven as a rule', () => {
    fc.assert(
      fc.property(anyTake, (take) => {
        const letters = encodeTake(take, ms(0)).length
        expect(letters).toBeLessThanOrEqual(take.events.length * 12)
      }),
    )
    const run = Array.from({ length: 100 }, (_, i) => [
      { kind: 'down' as const, key: key(100), velocity: 110, at: ms(i * 400) },
      { kind: 'up' as const, key: key(100), at: ms(i * 400 + 390) },
    ]).flat()
    expect(encodeTake({ events: run }, ms(0)).length / run.length).toBeLessThan(7)
  })

  test.each([
    ['a letter that is not base64', 'AA*A', { kind: 'notBase64' }],
    ['an event cut short', formatBase64([0, 60, 64, 20, 60]), { kind: 'cutShort', events: 1 }],
    ['a pedal that there is not', formatBase64([0, 200, 64]), { kind: 'unknownEvent', events: 0 }],
    ['a velocity over 127', formatBase64([0, 60, 128]), { kind: 'unknownEvent', events: 0 }],
  ])('%s is told', (_, text, reason) => {
    expect(decodeTake(text, ms(0))).toEqual({ ok: false, reason })
  })

  test('never throws on noise', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(typeof decodeTake(formatBase64([...bytes]), ms(0)).ok).toBe('boolean')
      }),
    )
  })
})
