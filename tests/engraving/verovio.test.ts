/** Our notation against verovio's own reading of it: what it would sound like, and what it draws. */
import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { draw } from '@/engraving/draw'
import { writeMei } from '@/engraving/mei'
import { cutStretch, type Stretch } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import type { HandChoice, Score } from '@/music/music'
import { key, tick } from '@/music/units'
import { resolution, scoreFrom, scoreOf } from './notation'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

const stretchOf = (score: Score, from: number, to: number, hand: HandChoice): Stretch => {
  const stretch = cutStretch(score, tick(from), tick(to), hand)
  if (!stretch) throw new Error('no such stretch')
  return stretch
}

/** 'quarters:key' of each note, from the first onset; continued ties do not sound again. */
const heardBy = (stretch: Stretch): string[] => {
  expect(toolkit.loadData(writeMei(stretch).mei)).toBe(1)
  const ids = new Set(stretch.notes.map((n): string => n.id))
  const entries = toolkit.renderToTimemap()
  const sounding = entries.flatMap(({ qstamp, on = [] }) =>
    on.filter((id) => ids.has(id)).map((id) => ({ qstamp, id })),
  )
  const first = Math.min(...sounding.map(({ qstamp }) => qstamp))
  return sounding
    .map(
      ({ qstamp, id }) => `${place(qstamp - first)}:${toolkit.getMIDIValuesForElement(id).pitch}`,
    )
    .toSorted()
}

const writtenIn = ({ notes, ticksPerQuarter }: Stretch): string[] => {
  const first = Math.min(...notes.map((n) => n.start))
  return notes.map((n) => `${place((n.start - first) / ticksPerQuarter)}:${n.key}`).toSorted()
}

const place = (quarters: number): string => (Math.round(quarters * 48) / 48).toFixed(4)

/** A beat of one hand in 48ths of a quarter: divisions that print knows. */
const beat = fc.constantFrom(
  [48],
  [24, 24],
  [12, 12, 12, 12],
  [36, 12],
  [12, 36],
  [24, 12, 12],
  [12, 24, 12],
  [16, 16, 16],
  [32, 16],
  [16, 32],
  [8, 8, 8, 8, 8, 8],
  [24, 8, 8, 8],
  [6, 6, 6, 6, 6, 6, 6, 6],
)
const line = (low: number, high: number) =>
  fc.array(
    fc.tuple(
      beat,
      fc.array(fc.uniqueArray(fc.integer({ min: low, max: high }), { maxLength: 4 }), {
        minLength: 8,
        maxLength: 8,
      }),
    ),
    { minLength: 2, maxLength: 10 },
  )
const times = fc.constantFrom(
  { beats: 4, beatType: 4 },
  { beats: 3, beatType: 4 },
  { beats: 2, beatType: 4 },
  { beats: 2, beatType: 2 },
  { beats: 5, beatType: 4 },
)

const linesOf = (
  beats: readonly (readonly [readonly number[], readonly (readonly number[])[]])[],
  hand: 'left' | 'right',
  articulation: number,
) => {
  let at = 0
  return beats.flatMap(([lengths, chords]) =>
    lengths.flatMap((length, i) => {
      const start = tick((at * resolution) / 48)
      at += length
      const sounding = Math.round((length * resolution * articulation) / 48)
      return (chords[i] ?? []).map((k) => ({ key: key(k), start, length: tick(sounding), hand }))
    }),
  )
}

const scores = fc
  .record({
    right: line(55, 96),
    left: line(28, 67),
    time: times,
    fifths: fc.integer({ min: -7, max: 7 }),
    mode: fc.constantFrom('major' as const, 'minor' as const),
    articulation: fc.constantFrom(0.8, 0.9, 1),
  })
  .map(({ right, left, articulation, ...frame }) => ({
    notes: [...linesOf(right, 'right', articulation), ...linesOf(left, 'left', articulation)],
    frame,
  }))
  .filter(({ notes }) => notes.length > 0)
  .map(({ notes, frame }) => scoreFrom(notes, frame))

/** Notes of any length on the grid of sixteenths, many at once: voices without end. */
const thickets = fc
  .record({
    notes: fc.array(
      fc.record({
        key: fc.integer({ min: 21, max: 108 }).map(key),
        start: fc.integer({ min: 0, max: 40 }).map((n) => tick((n * resolution) / 4)),
        length: fc.integer({ min: 1, max: 24 }).map((n) => tick((n * resolution) / 4)),
        hand: fc.constantFrom('left' as const, 'right' as const),
      }),
      { minLength: 1, maxLength: 40 },
    ),
    time: fc.constantFrom(
      { beats: 4, beatType: 4 },
      { beats: 6, beatType: 8 },
      { beats: 7, beatType: 8 },
      { beats: 3, beatType: 8 },
      { beats: 12, beatType: 8 },
    ),
  })
  .map(({ notes, time }) => scoreFrom(notes, { time }))

describe('the notation as verovio reads it', () => {
  test('a score with ties, triplets and two voices sounds as it is written', () => {
    const score = scoreOf(
      'C5 1/3 D5 1/3 E5 1/3 F#5 5/2 G5 1/2 | A5 1/2 B5 7/2\nC4 2 D4 2 | E4 4\nl: C3 3/2 G2+E3 9/2 r 1 D3 1',
      { fifths: -3 },
    )
    const stretch = stretchOf(score, 0, score.end, 'both')
    expect(heardBy(stretch)).toEqual(writtenIn(stretch))
  })

  test('any quantised score sounds as it is written: keys and onsets', () => {
    fc.assert(
      fc.property(scores, (score) => {
        const stretch = stretchOf(score, 0, score.end, 'both')
        expect(heardBy(stretch)).toEqual(writtenIn(stretch))
      }),
      { numRuns: 40 },
    )
  })

  test('any thicket of overlapping notes keeps its keys and onsets', () => {
    fc.assert(
      fc.property(thickets, (score) => {
        const stretch = stretchOf(score, 0, score.end, 'both')
        expect(heardBy(stretch)).toEqual(writtenIn(stretch))
      }),
      { numRuns: 30 },
    )
  })

  test('any chunk, from anywhere in a bar, sounds as it is written', () => {
    fc.assert(
      fc.property(scores, fc.nat(), fc.nat(), (score, one, two) => {
        const onsets = [...new Set(score.notes.map((n) => n.start))]
        const from = onsets[one % onsets.length] ?? 0
        const last = onsets[Math.min(onsets.length - 1, (one % onsets.length) + (two % 10))] ?? 0
        const stretch = stretchOf(score, from, last + 1, 'both')
        expect(heardBy(stretch)).toEqual(writtenIn(stretch))
      }),
      { numRuns: 40 },
    )
  })

  test('every note of the stretch is one element of the drawing, the neighbours are none', () => {
    fc.assert(
      fc.property(
        scores,
        fc.constantFrom('both' as const, 'left' as const, 'right' as const),
        (score, hand) => {
          const middle = Math.floor(score.end / 2)
          const stretch = stretchOf(score, 0, middle, hand)
          const { svg } = draw(toolkit, stretch, { width: 800, height: 300 })
          const drawn = new Set(stretch.notes.map((n) => n.id))
          for (const { id } of score.notes)
            expect(svg.split(` id="${id}"`).length - 1).toBe(drawn.has(id) ? 1 : 0)
        },
      ),
      { numRuns: 12 },
    )
  })

  test('the drawing carries no colour, style or text of its own', () => {
    const score = scoreOf('C4 1 F#4 1 G4 2', { fifths: 2 })
    const { svg } = draw(toolkit, stretchOf(score, 0, score.end, 'right'), {
      width: 600,
      height: 200,
    })
    expect(svg).not.toMatch(/<style|<desc|<script|color="black"|fill="#|stroke="#/)
    expect(svg).toContain('fill="currentColor"')
    expect(svg).not.toContain('Study')
  })

  test.each([
    [900, 300],
    [1700, 500],
    [600, 800],
    [360, 240],
  ])('a chunk stays inside a box of %d by %d and fills one side of it', (width, height) => {
    const score = scoreOf('C4 1/4 D4 1/4 E4 1/4 F4 1/4 G4 1/2 A4 1/2 B4 1 C5 1', {})
    const drawing = draw(toolkit, stretchOf(score, 0, score.end, 'right'), { width, height })
    expect(drawing.width).toBeLessThanOrEqual(width)
    expect(drawing.height).toBeLessThanOrEqual(height)
    const filled = Math.max(drawing.width / width, drawing.height / height)
    expect(filled).toBeGreaterThan(0.9)
  })

  test('a long stretch breaks into systems no wider than the box', () => {
    const bar = 'C4 1/2 E4 1/2 G4 1/2 C5 1/2 G4 1/2 E4 1/2 C4 1 '
    const score = scoreOf(bar.repeat(16))
    const { svg, width } = draw(toolkit, stretchOf(score, 0, score.end, 'right'), {
      width: 800,
      height: 900,
    })
    expect((svg.match(/class="system"/g) ?? []).length).toBeGreaterThan(2)
    expect(width).toBeLessThanOrEqual(800)
  })
})
