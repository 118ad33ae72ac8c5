import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Reason } from '@/difficulty/reasons'
import { tick } from '@/music/units'
import { proposePassages } from '@/plan/passages'
import { areNearIdentical } from '@/plan/similar'
import { tellReason } from '@/text/spots'
import { writeScore } from '../music/writeScore'
import { layoutOf, pieceOf } from './pieces'

const bar = (i: number) => ({ from: tick(1920 * (i - 1)), to: tick(1920 * i) })

describe('a piece is cut into passages', () => {
  test.each([
    ['eight bars', { right: 'C5:4 D5:4 E5:4 F5:4 G5:4 A5:4 B5:4 C6:4' }, ['1-4', '5-8']],
    [
      'nine bars: the last goes with its neighbours',
      { right: 'C5:4 D5:4 E5:4 F5:4 G5:4 A5:4 B5:4 C6:4 C5:4' },
      ['1-4', '5-9'],
    ],
    ['a pickup goes with the first bars', { right: 'G4 C5:4 D5:4 E5:4 F5:3', pickup: 1 }, ['0-4']],
    [
      'fewer bars where they are full of notes',
      { right: Array.from({ length: 64 }, () => 'C5:1/4 D5:1/4').join(' ') },
      ['1-3', '4-6', '7-8'],
    ],
  ])('%s', (_, sheet, expected) => {
    const score = writeScore(sheet)
    const numberAt = (at: number) => score.bars.findLast(({ start }) => start <= at)?.number
    expect(
      proposePassages(score).map(({ from, to }) => `${numberAt(from)}-${numberAt(to - 1)}`),
    ).toEqual(expected)
  })

  test('every note stands in exactly one passage', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), (times) => {
        const score = pieceOf(times)
        const passages = proposePassages(score)
        for (const { start } of score.notes)
          expect(passages.filter(({ from, to }) => start >= from && start < to)).toHaveLength(1)
      }),
      { numRuns: 12 },
    )
  })
})

describe('the order of a plan', () => {
  const spot = { ...bar(7), hand: 'right', reasons: [{ kind: 'leap', widest: 'octave' }] } as const
  const layout = layoutOf(pieceOf(4), [spot])
  const index = (id: string) => layout.places.findIndex((place) => place.id === id)

  test('a hard spot comes before its passage, and a join after its passages', () => {
    expect(layout.places.map(({ kind }) => kind)).toContain('spot')
    for (const { id, parts } of layout.places)
      for (const part of parts) expect(index(part)).toBeLessThan(index(id))
    const join = layout.places.find(({ kind }) => kind === 'join')
    expect(join?.parts).toHaveLength(2)
  })

  test('the person’s ranking of the spots comes before what is harder', () => {
    const one = { ...bar(7), hand: 'right', reasons: [] } as const
    const other = { ...bar(10), hand: 'right', reasons: [] } as const
    const barsOf = (ranks: readonly (number | undefined)[]) => {
      const spots = [one, other].map((each, i) => {
        const rank = ranks[i]
        return rank === undefined ? each : { ...each, rank }
      })
      return layoutOf(pieceOf(4), spots)
        .places.filter(({ kind }) => kind !== 'join')
        .map(({ kind, place }) => `${kind} ${place.fromBar}`)
        .slice(0, 4)
    }
    expect(barsOf([0, 1])).toEqual(['spot 7', 'passage 5', 'spot 10', 'passage 9'])
    expect(barsOf([1, 0])).toEqual(['spot 10', 'passage 9', 'spot 7', 'passage 5'])
    expect(barsOf([undefined, 0]).slice(0, 2)).toEqual(['spot 10', 'passage 9'])
  })

  test('a passage says each kind of reason once, with its greatest figure', () => {
    const of = (i: number, ...reasons: readonly Reason[]) =>
      ({ ...bar(i), hand: 'right', reasons }) as const
    const { places } = layoutOf(pieceOf(4), [
      of(
        5,
        { kind: 'speed', onsetsASecond: 2.8 },
        { kind: 'leap', widest: 'beyond' },
        { kind: 'accidentals' },
      ),
      of(
        6,
        { kind: 'speed', onsetsASecond: 10.5 },
        { kind: 'leap', widest: 'fifth' },
        { kind: 'chords', struck: 3 },
      ),
      of(7, { kind: 'speed', onsetsASecond: 3.5 }, { kind: 'leap', widest: 'twoOctaves' }),
      of(8, { kind: 'chords', struck: 4 }, { kind: 'chords', struck: 'thirds' }),
      of(8, { kind: 'stretch', widest: 'seventh' }, { kind: 'accidentals' }),
    ])
    const told = places.filter(({ kind, reasons }) => kind === 'passage' && reasons.length > 0)
    expect(told.map(({ reasons }) => reasons.map(tellReason))).toEqual([
      [
        'fast: 10.5 onsets a second',
        'leaps: more than two octaves',
        'accidentals',
        'chords of up to 4 notes in one hand',
        'thirds',
        'stretches: up to a seventh',
      ],
    ])
  })

  // So no exercise of a plan asks for a chord that is wider than the hand.
  test('its build-ups are brisk: every exercise is as written', () => {
    const exercises = layout.places.flatMap((place) => place.exercises)
    expect(new Set(exercises.map(({ form }) => form))).toEqual(new Set(['asWritten']))
  })

  test('passages come by what is hardest in them', () => {
    const peaks = layout.places
      .filter(({ kind }) => kind === 'passage')
      .map(({ difficulty, parts }) =>
        Math.max(difficulty, ...parts.map((part) => layout.places[index(part)]?.difficulty ?? 0)),
      )
    expect(peaks).toEqual(peaks.toSorted((a, b) => b - a))
  })

  test('in a build-up no exercise of both hands comes before each hand has had its notes', () => {
    for (const { exercises, kind } of layout.places.filter((place) => place.kind !== 'join')) {
      for (const [i, both] of exercises.entries()) {
        if (both.hand !== 'both' || kind === 'join') continue
        const before = exercises.slice(0, i)
        for (const hand of ['right', 'left'])
          expect(before.some((e) => e.hand === hand && e.from < both.to && e.to > both.from)).toBe(
            true,
          )
      }
    }
  })

  test('a spot that is most of a passage is that passage', () => {
    const places = layoutOf(pieceOf(2), [
      { from: tick(0), to: tick(1920 * 4), hand: 'both', reasons: [] },
    ]).places
    expect(places.filter(({ kind }) => kind === 'spot')).toEqual([])
  })
})

test('a passage and the same a tone higher are near-identical, another melody is not', () => {
  const lines = {
    theme: 'C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5 E5',
    higher: 'D5:1/2 E5:1/2 F#5:1/2 G5:1/2 A5 F#5',
    other: 'G5 r C5:1/2 A4:1/2 F5',
  }
  const moving = (line: string) => {
    const [place] = layoutOf(writeScore({ right: line })).places
    if (!place) throw new Error('no place')
    return place
  }
  const theme = moving(lines.theme)
  expect(areNearIdentical(theme, moving(lines.higher))).toBe(true)
  expect(areNearIdentical(theme, moving(lines.other))).toBe(false)
  expect(areNearIdentical(theme, theme)).toBe(false)
})
