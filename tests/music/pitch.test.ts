import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatKey, isBlackKey, parseKey } from '@/music/pitch'
import { key } from '@/music/units'

// Middle C is key 60 (MIDI 1.0 detailed specification, key number chart); scientific pitch names
// call it C4, so that A4 is 69 and a piano goes from A0 to C8 (common practice, no source).
test.each([
  ['C4', 60],
  ['A4', 69],
  ['A0', 21],
  ['C8', 108],
  ['C-1', 0],
  ['G9', 127],
  ['F#5', 78],
  ['Gb5', 78],
  ['B#3', 60],
  ['Cb4', 59],
  ['E##4', 66],
])('%s is key %i', (name, number) => {
  expect(parseKey(name)).toBe(number)
})

test.each(['', 'H4', 'C', '60', 'G#9', 'C-2', 'do'])('%j is no key', (name) => {
  expect(parseKey(name)).toBe(undefined)
})

test('a black key is named by a sharp or, where preferred, by a flat', () => {
  expect([formatKey(key(61)), formatKey(key(61), 'flats')]).toEqual(['C#4', 'Db4'])
})

test('each key is found again by either of its names', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 127 }), fc.constantFrom('sharps', 'flats'), (k, p) => {
      expect(parseKey(formatKey(key(k), p))).toBe(k)
    }),
  )
})

// 52 white and 36 black keys: common practice, no source.
test('a piano of 88 keys has 36 black ones', () => {
  const piano = Array.from({ length: 88 }, (_, i) => key(21 + i))
  expect(piano.filter(isBlackKey)).toHaveLength(36)
  expect([60, 61, 62, 63, 64, 65].map((k) => isBlackKey(key(k)))).toEqual([
    false,
    true,
    false,
    true,
    false,
    false,
  ])
})
