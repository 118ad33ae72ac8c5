/** Clefs and octave lines of a hand, from its notes alone. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ledgerLines } from '@/engraving/clefs'
import { readingsOf } from '@/engraving/readings'
import type { Hand, Score } from '@/music/music'
import { key, tick } from '@/music/units'
import { resolution, scoreFrom, scoreOf, type Frame } from './notation'

/** Where a reading begins, in quarters, and what it is: '0 treble, 4 treble 8va'. */
const readings = (text: string, hand: Hand = 'right', frame: Frame = {}): string =>
  shown(scoreOf(text, frame), hand)

const shown = (score: Score, hand: Hand): string =>
  readingsOf(score)
    [hand].map(({ at, clef, octaves }) => `${at / resolution} ${clef}${lines.get(octaves) ?? ''}`)
    .join(', ')

const lines = new Map([
  [1, ' 8va'],
  [2, ' 15ma'],
  [-1, ' 8vb'],
])

describe('octave lines', () => {
  // Four ledger lines and more are written an octave nearer: common practice, no source.
  test.each([
    [
      'a scale up to the third ledger line needs none',
      'C5 1 E5 1 G5 1 C6 1 E6 1 E6 1 C6 2',
      '0 treble',
    ],
    ['one note, however high, needs none', 'C5 1 C8 1 C5 2', '0 treble'],
    ['two notes on the fourth ledger line need none', 'C5 1 G6 1 G6 1 C5 1', '0 treble'],
    [
      'a few higher ones stand under 8va',
      'C5 4 | C7 1 D7 1 E7 1 C7 1 | C5 4',
      '0 treble, 4 treble 8va, 8 treble',
    ],
    [
      'a short way down stays under it',
      'C7 1/2 D7 1/2 E7 1/2 C7 1/2 G5 1/2 C7 1/2 E7 1/2 G7 1/2',
      '0 treble 8va',
    ],
    [
      'the highest octave stands under 15ma',
      'B7 1/2 C8 1/2 A7 1/2 B7 1/2 C8 1/2 G7 1/2 B7 1/2 C8 1/2',
      '0 treble 15ma',
    ],
    [
      'a bar of rests ends a line',
      'C7 1 D7 1 E7 1 F7 1 | r 4 | C7 1 D7 1 E7 1 F7 1',
      '0 treble 8va, 8 treble 8va',
    ],
  ])('%s', (_, text, expected) => {
    expect(readings(text)).toBe(expected)
  })

  test('low notes of the left hand stand over 8vb; octaves are known by their upper note', () => {
    expect(readings('l: E1 1 D1 1 C1 1 E1 1 | D1 1 C1 1 B0 1 C1 1', 'left')).toBe('0 bass 8vb')
    expect(readings('l: A1+A2 1 G1+G2 1 F1+F2 1 E1+E2 1', 'left')).toBe('0 bass')
  })

  test('a line begins on the beat rather than between two', () => {
    const run =
      'C6 1/4 D6 1/4 E6 1/4 F6 1/4 G6 1/4 A6 1/4 B6 1/4 C7 1/4 D7 1/4 E7 1/4 F7 1/4 G7 1/4 E7 1'
    expect(readings(run)).toBe('0 treble, 1 treble 8va')
  })

  test('no line drives a second voice out of the staff', () => {
    expect(
      readings(
        'C7 1/2 D7 1/2 C7 1/2 D7 1/2 C7 1/2 D7 1/2 C7 1/2 D7 1/2\nC4 1/2 D4 1/2 C4 1/2 D4 1/2 C4 1/2 D4 1/2 C4 1/2 D4 1/2',
      ),
    ).toBe('0 treble')
  })

  test('no line begins while a note from before is held', () => {
    const held = readings('C4 2 r 6\nr 1 C7 1/2 D7 1/2 C7 1/2 D7 1/2 C7 1/2 D7 1/2 E7 1/2 D7 1/2')
    expect(held).toBe('0 treble, 2 treble 8va')
  })
})

describe('clefs', () => {
  test.each([
    ['C5 1 D5 1 E5 2', 'right', '0 treble'],
    ['C3 1 D3 1 E3 2', 'right', '0 bass'],
    ['l: C5 1 D5 1 E5 2', 'left', '0 treble'],
    ['l: C3 1 C6 1 C3 2', 'left', '0 bass'],
    ['l: C3 4 | C5 1 E5 1 G5 1 C6 1 | C3 4 | C3 4', 'left', '0 bass, 4 treble, 8 bass'],
    ['l: C3 2 C5 1/2 E5 1/2 G5 1/2 C6 1/2 | C6 1 B5 1 A5 1 G5 1', 'left', '0 bass, 2 treble'],
  ] as const)('%s in the %s hand: %s', (text, hand, expected) => {
    expect(readings(text, hand)).toBe(expected)
  })

  test('nowhere but at the first onset of a bar or on a beat', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 21, max: 108 }), fc.integer({ min: 1, max: 6 })), {
          minLength: 1,
          maxLength: 60,
        }),
        (places) => {
          let at = 0
          const score = scoreFrom(
            places.map(([k, quarters]) => {
              const start = tick(at)
              at += (quarters * resolution) / 4
              return { key: key(k), start, length: tick((quarters * resolution) / 4), hand: 'left' }
            }),
          )
          const { left } = readingsOf(score)
          for (const [i, { at: change, clef }] of left.entries()) {
            const before = left[i - 1]
            if (!before || before.clef === clef) continue
            const first = score.notes.find((n) => n.barIndex === barOf(score, change))
            expect(first?.start === change || change % resolution === 0).toBe(true)
          }
        },
      ),
    )
  })

  test('each onset needs fewer ledger lines under its reading than without any change', () => {
    const score = scoreOf('l: C2 1 E2 1 G2 1 C3 1 | C5 1 E5 1 G5 1 C6 1 | C7 1 D7 1 E7 1 C7 1')
    const { left } = readingsOf(score)
    expect(shown(score, 'left')).toBe('0 bass, 4 treble, 8 treble 8va')
    const counts = ['C2', 'C6', 'E7'].map((_, i) => left[i]?.clef)
    expect(counts).toEqual(['bass', 'treble', 'treble'])
    // C6 is step 42, E7 step 51.
    expect(ledgerLines(42, 'treble')).toBe(2)
    expect(ledgerLines(51 - 7, 'treble')).toBe(3)
  })
})

const barOf = ({ bars }: Score, at: number): number => bars.findLastIndex((bar) => bar.start <= at)

test('a piece is read once', () => {
  const score = scoreOf('C5 1 D5 1')
  expect(readingsOf(score)).toBe(readingsOf(score))
})
