import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { metreOf } from '@/engraving/metre'
import { quarter } from '@/engraving/parts'
import { quantise } from '@/engraving/quantise'
import { tick } from '@/music/units'
import { scoreFrom, scoreOf, resolution, type Frame } from './notation'

/** Starts and lengths in 48ths of a quarter: 'start:length'. */
const written = (score: ReturnType<typeof scoreOf>): string => {
  const metres = score.bars.map((bar) => metreOf(bar, score.ticksPerQuarter))
  const { notes } = quantise(score.notes, metres, score.ticksPerQuarter)
  const unit = quarter / 48
  return notes.map(({ start, end }) => `${start / unit}:${(end - start) / unit}`).join(' ')
}

const played = (places: readonly (readonly [number, number])[], frame: Frame = {}): string =>
  written(
    scoreFrom(
      places.map(([start, length], i) => ({
        key: (60 + (i % 12)) as never,
        start: tick(Math.round(start * resolution)),
        length: tick(Math.max(1, Math.round(length * resolution))),
        hand: 'right' as const,
      })),
      frame,
    ),
  )

describe('quantising for the eye', () => {
  test.each([0.8, 0.85, 0.9, 0.95, 0.99, 1])(
    'lengths of %d of the written value become the value, without rests',
    (articulation) => {
      const text = 'C4 1/2 D4 1/2 E4 1 F4 1/4 G4 1/4 A4 1/2 G4 1/3 F4 1/3 E4 1/3 D4 2'
      expect(written(scoreOf(text, { articulation }))).toBe(
        '0:24 24:24 48:48 96:12 108:12 120:24 144:16 160:16 176:16 192:96',
      )
    },
  )

  test('a legato end that overlaps the next note is no second voice', () => {
    expect(
      played([
        [0, 0.6],
        [0.5, 0.55],
        [1, 1.1],
        [2, 1],
      ]),
    ).toBe('0:24 24:24 48:48 96:48')
  })

  test('a note held through its successors keeps its length', () => {
    expect(
      played([
        [0, 1.9],
        [0.5, 0.45],
        [1, 0.5],
        [1.5, 0.5],
        [2, 1],
      ]),
    ).toBe('0:96 24:24 48:24 72:24 96:48')
  })

  test('a written rest stays a rest', () => {
    expect(written(scoreOf('C4 1/2 r 1/2 D4 1 r 1 E4 1'))).toBe('0:24 48:48 144:48')
    expect(written(scoreOf('C4 3/2 r 1/2 D4 2'))).toBe('0:72 96:96')
  })

  test.each([
    ['eighths', 8, [0, 0.5]],
    ['sixteenths', 8, [0, 0.25, 0.5, 0.75]],
    ['a triplet', 8, [0, 1 / 3, 2 / 3]],
    ['a sextuplet', 5, [0, 1 / 6, 2 / 6, 3 / 6, 4 / 6, 5 / 6]],
    ['thirty-seconds', 5, [0, 1 / 8, 2 / 8, 3 / 8, 4 / 8, 5 / 8, 6 / 8, 7 / 8]],
    ['a quintuplet', 2, [0, 0.2, 0.4, 0.6, 0.8]],
  ])('%s played up to %d ms off at 120 come out even', (_, milliseconds, places) => {
    const off = milliseconds / 500
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -off, max: off, noNaN: true }), {
          minLength: 8,
          maxLength: 8,
        }),
        (noise) => {
          const uneven = places.map(
            (at, i) => [Math.max(0, at + (noise[i] ?? 0)), 0.9 / places.length] as const,
          )
          const starts = played([...uneven, [1, 1]])
            .split(' ')
            .map((n) => Number(n.split(':')[0]))
          expect(starts.slice(0, -1).map((n) => n / 48)).toEqual(
            places.map((at) => expect.closeTo(at, 6)),
          )
        },
      ),
    )
  })

  test('triplets 25 ms off at 120 quarters a minute are still triplets', () => {
    expect(
      played([
        [0.02, 0.3],
        [0.38, 0.3],
        [0.62, 0.3],
        [1, 1],
      ]),
    ).toBe('0:16 16:16 32:16 48:48')
  })

  test('a rolled chord of 40 ms is one onset', () => {
    expect(
      played([
        [0, 1],
        [0.04, 1],
        [0.08, 1],
        [1, 1],
      ]),
    ).toBe('0:48 0:48 0:48 48:48')
  })

  test('the score itself is left alone', () => {
    const score = scoreOf('C4 1/2 D4 1/2', { articulation: 0.83 })
    const before = JSON.stringify(score)
    written(score)
    expect(JSON.stringify(score)).toBe(before)
  })
})
