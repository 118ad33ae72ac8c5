import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fnv1a64, identifyPiece, nameNotes } from '@/music/identity'
import { key, tick } from '@/music/units'
import { writeScore } from './writeScore'

// Test vectors of FNV-1a, 64 bits: Fowler, Noll, Vo, Eastlake,
// "The FNV Non-Cryptographic Hash Algorithm" (IETF draft-eastlake-fnv), source code with vectors.
test.each([
  ['', 'cbf29ce484222325'],
  ['a', 'af63dc4c8601ec8c'],
  ['foobar', '85944171f73967e8'],
])('the hash of %j is %s', (text, hash) => {
  expect(fnv1a64(text)).toBe(hash)
})

test('the hash is that of the definition, worked out in whole numbers of any size', () => {
  const byDefinition = (text: string): string =>
    [...text]
      .reduce(
        (hash, c) => BigInt.asUintN(64, (hash ^ BigInt(c.charCodeAt(0))) * 0x100000001b3n),
        0xcbf29ce484222325n,
      )
      .toString(16)
      .padStart(16, '0')
  const ascii = fc.string({ unit: 'binary-ascii', maxLength: 200 })
  fc.assert(
    fc.property(ascii, (text) => {
      expect(fnv1a64(text)).toBe(byDefinition(text))
    }),
  )
})

const names = (...places: readonly (readonly [start: number, key: number])[]): string =>
  nameNotes(
    places.map(([start, k]) => ({ start: tick(start), key: key(k) })),
    480,
  )
    .map((n) => n.id)
    .join(' ')

test.each([
  ['a note is named by its place in quarters and its key', [[720, 60]], 'n3_2k60'],
  [
    'a second note on the same key gets a letter',
    [
      [0, 60],
      [0, 60],
      [0, 60],
    ],
    'n0k60 n0k60b n0k60c',
  ],
  [
    'the same key elsewhere needs none',
    [
      [0, 60],
      [480, 60],
      [480, 62],
    ],
    'n0k60 n1k60 n1k62',
  ],
] as const)('%s', (_, places, expected) => {
  expect(names(...places)).toBe(expected)
})

const word = fc
  .tuple(
    fc.constantFrom('C4', 'C4+E4', 'G4', 'F#4', 'r'),
    fc.constantFrom('1/4', '1/3', '1', '3/2'),
  )
  .map(([name, length]) => `${name}:${length}`)
const line = fc.array(word, { minLength: 1, maxLength: 20 }).map((words) => `A4 ${words.join(' ')}`)

test('the same music at another resolution has the same piece id and the same note ids', () => {
  fc.assert(
    fc.property(line, line, fc.constantFrom(12, 24, 96, 960), (right, left, ticksPerQuarter) => {
      const one = writeScore({ right, left, ticksPerQuarter: 480 })
      const other = writeScore({ right, left, ticksPerQuarter })
      expect(other.id).toBe(one.id)
      expect(other.notes.map((n) => n.id)).toEqual(one.notes.map((n) => n.id))
    }),
  )
})

test('note ids are all different and can stand in XML', () => {
  fc.assert(
    fc.property(line, (right) => {
      const ids = writeScore({ right, left: right }).notes.map((n) => n.id)
      expect(new Set(ids).size).toBe(ids.length)
      // XML 1.0, NCName without colons, the part in ASCII.
      for (const id of ids) expect(id).toMatch(/^[A-Za-z_][\w.-]*$/)
    }),
  )
})

const plain = { right: 'C4 D4 E4 F4' }
test.each([
  ['another key', { right: 'C4 D4 E4 F#4' }, false],
  ['another length', { right: 'C4 D4 E4 F4:2' }, false],
  ['another time signature', { ...plain, time: [2, 4] }, false],
  ['a pickup', { ...plain, pickup: 1 }, false],
  ['another hand', { left: 'C4 D4 E4 F4' }, true],
  ['the same notes spread over both hands', { right: 'C4 D4 r F4', left: 'r:2 E4' }, true],
] as const)('a piece with %s: same piece is %s', (_, sheet, same) => {
  expect(writeScore(sheet).id === writeScore(plain).id).toBe(same)
})

test('the order in which notes are listed does not matter', () => {
  const score = writeScore({ right: 'C4 D4 E4', left: 'C3 G3 C3' })
  expect(identifyPiece(score.notes.toReversed(), score.bars, 480)).toBe(score.id)
})
