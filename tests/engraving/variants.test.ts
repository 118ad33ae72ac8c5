/**
 * Exercises made from a passage, as they are written: each a small score of its own with other starts
 * and lengths than the piece has. Values in order: '8.' dotted eighth, 'r' rest, '[ ]' a beam.
 */
import { expect, test } from 'vitest'
import { writeMei } from '@/engraving/mei'
import { cutStretch } from '@/engraving/stretch'
import type { Score } from '@/music/music'
import { key, tick } from '@/music/units'
import { printed } from './printed'
import { resolution, scoreFrom, scoreOf, type Frame } from './notation'

/** Sixteenths of the piece, at their places and lengths in the exercise, in quarters. */
const exercise = (
  keys: readonly (readonly number[])[],
  times: readonly (readonly [start: number, length: number])[],
  frame: Frame = {},
): Score =>
  scoreFrom(
    keys.flatMap((chord, i) =>
      chord.map((k) => ({
        key: key(k),
        start: tick((times[i]?.[0] ?? 0) * resolution),
        length: tick((times[i]?.[1] ?? 1) * resolution),
        hand: 'right' as const,
      })),
    ),
    frame,
  )

const written = (score: Score): string => {
  const stretch = cutStretch(score, tick(0), score.end, 'right')
  return stretch
    ? printed(writeMei(stretch).mei)
        .map((bar) => bar.join(' / '))
        .join(' | ')
    : ''
}

const scale = [60, 62, 64, 65, 67, 69, 71, 72].map((k) => [k])
const names = ['C4', 'D4', 'E4', 'F4', 'G4', 'A4', 'B4', 'C5']

const pairs = (long: number, short: number): (readonly [number, number])[] =>
  scale.map((_, i) => {
    const pair = Math.floor(i / 2) * (long + short)
    return i % 2 === 0 ? [pair, long] : [pair + long, short]
  })

test('long-short is dotted', () => {
  expect(written(exercise(scale, pairs(3 / 4, 1 / 4)))).toBe(
    '[C4:8. D4:16] [E4:8. F4:16] [G4:8. A4:16] [B4:8. C5:16]',
  )
  expect(written(exercise(scale, pairs(3 / 2, 1 / 2)))).toBe(
    'C4:4. D4:8 E4:4. F4:8 | G4:4. A4:8 B4:4. C5:8',
  )
})

test('short-long is dotted backwards', () => {
  expect(written(exercise(scale, pairs(1 / 4, 3 / 4)))).toBe(
    '[C4:16 D4:8.] [E4:16 F4:8.] [G4:16 A4:8.] [B4:16 C5:8.]',
  )
})

test('long-short in the time of two to one is a triplet', () => {
  expect(written(exercise(scale, pairs(2 / 3, 1 / 3)))).toBe(
    '3(C4:4 D4:8) 3(E4:4 F4:8) 3(G4:4 A4:8) 3(B4:4 C5:8)',
  )
})

test.each([
  [
    'after each three',
    3,
    '[C4:16 D4:16 E4:16] r:16 [F4:16 G4:16 A4:16] r:16 [B4:16 C5:16] r:8 r:4',
  ],
  ['after each four', 4, '[C4:16 D4:16 E4:16 F4:16] r:4 [G4:16 A4:16 B4:16 C5:16] r:4'],
])('a stop %s is a rest', (_, group, expected) => {
  const rest = group === 3 ? 1 / 4 : 1
  const times = scale.map((_, i) => [i / 4 + Math.floor(i / group) * rest, 1 / 4] as const)
  expect(written(exercise(scale, times))).toBe(expected)
})

test('a stop on the last of each four is a longer value', () => {
  const times = scale.map((_, i) => {
    const at = Math.floor(i / 4) * 2 + (i % 4) / 4
    return [at, i % 4 === 3 ? 5 / 4 : 1 / 4] as const
  })
  expect(written(exercise(scale, times))).toBe(
    '[C4:16 D4:16 E4:16 F4:16~] F4:4 [G4:16 A4:16 B4:16 C5:16~] C5:4',
  )
})

test('blocked: what was broken is a chord', () => {
  const chords = [
    [60, 64, 67],
    [65, 69, 72],
  ]
  expect(
    written(
      exercise(chords, [
        [0, 1],
        [1, 1],
      ]),
    ),
  ).toBe('C4+E4+G4:4 A4+C5+F4:4 r:2')
  expect(
    written(
      exercise(chords, [
        [0, 2],
        [2, 2],
      ]),
    ),
  ).toBe('C4+E4+G4:2 A4+C5+F4:2')
})

test('a group that begins inside its bar keeps its place in it', () => {
  const score = scoreOf('r 2 C4 3/4 D4 1/4 E4 3/4 F4 1/4')
  const stretch = cutStretch(score, tick(2 * resolution), score.end, 'right')
  expect(stretch && printed(writeMei(stretch).mei)).toEqual([['[C4:8. D4:16] [E4:8. F4:16]']])
})

test('in six eighths the long note falls on the beat', () => {
  const times = scale
    .slice(0, 4)
    .map((_, i) => [Math.floor(i / 2) * 1.5 + (i % 2), i % 2 === 0 ? 1 : 1 / 2] as const)
  expect(written(exercise(scale.slice(0, 4), times, { time: { beats: 6, beatType: 8 } }))).toBe(
    names
      .slice(0, 4)
      .map((name, i) => `${name}:${i % 2 === 0 ? 4 : 8}`)
      .join(' '),
  )
})
