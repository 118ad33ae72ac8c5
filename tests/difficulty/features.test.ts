import { describe, expect, test } from 'vitest'
import {
  alteredNotes,
  awkwardness,
  furtherNotes,
  leapBits,
  levelChanges,
  passedSemitones,
  repeatedKeys,
  stretchShare,
  strokesASecond,
  travelMm,
  trilledStrokes,
} from '@/difficulty/features'
import { octaveMm, placeMm } from '@/difficulty/keyboard'
import { clockOf, strokesOf, type Stroke } from '@/difficulty/strokes'
import { fingerWork } from '@/fingering/fingering'
import { parseKey } from '@/music/pitch'
import { key, tempo, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'

/** A hand that spans a ninth. */
const span = 188
const strokes = (line: string, quarters = 120): readonly Stroke[] => {
  const score = writeScore({ right: line })
  return strokesOf(score.notes, 'right', clockOf(score, tempo(quarters)))
}
/** A measure of the last stroke after the one before. */
const ofLast = <T>(
  measure: (before: Stroke | undefined, stroke: Stroke) => T,
  line: string,
  quarters = 120,
): T => {
  const all = strokes(line, quarters)
  const stroke = all.at(-1)
  if (!stroke) throw new Error(`no stroke in ${line}`)
  return measure(all.at(-2), stroke)
}
const place = (name: string): number => placeMm(parseKey(name) ?? key(0))

describe('the keyboard', () => {
  // Jacobs 2001, Music Perception 18:505: an octave is 164.5 mm, a white key 23.5.
  test('has octaves of 164.5 mm of seven white keys', () => {
    expect(place('C5') - place('C4')).toBeCloseTo(164.5, 6)
    for (const [one, other] of [
      ['C4', 'D4'],
      ['E4', 'F4'],
      ['B4', 'C5'],
    ] as const)
      expect(place(other) - place(one)).toBeCloseTo(23.5, 6)
  })
  test('rises from key to key', () => {
    for (let k = 21; k < 108; k++) expect(placeMm(key(k + 1))).toBeGreaterThan(placeMm(key(k)))
  })
})

describe('speed', () => {
  test.each([
    ['sixteenths at 120 are 8 onsets a second', 'C4:1/4 D4:1/4', 120, 8],
    ['triplet eighths at 100 are 5', 'C4:1/3 D4:1/3', 100, 5],
    ['quarters at 60 are 1', 'C4 D4', 60, 1],
  ])('%s', (_, line, quarters, rate) => {
    expect(ofLast((_before, stroke) => strokesASecond(stroke), line, quarters)).toBeCloseTo(rate, 9)
  })
  test('the clock goes through the changes of tempo, in proportion to the goal', () => {
    const tempos = [
      { start: tick(0), tempo: tempo(120) },
      { start: tick(960), tempo: tempo(60) },
    ]
    const score = { tempos, ticksPerQuarter: 480 }
    expect([0, 480, 960, 1440].map((at) => clockOf(score, undefined)(tick(at)))).toEqual([
      0, 0.5, 1, 2,
    ])
    expect([960, 1440].map((at) => clockOf(score, tempo(240))(tick(at)))).toEqual([0.5, 1])
  })
  test('120 quarters a minute hold where the score names no tempo (Standard MIDI Files 1.0)', () => {
    expect(clockOf({ tempos: [], ticksPerQuarter: 480 }, undefined)(tick(960))).toBe(1)
  })
})

describe('leaps', () => {
  const travel = (line: string, of = span): number =>
    ofLast((before, stroke) => (before ? travelMm(before, stroke, of) : NaN), line)
  test.each([
    ['C4 A4', 0],
    ['C4 C5', 164.5 - (2 / 3) * 188 - 23.5],
    ['C4 C6', 329 - (2 / 3) * 188 - 23.5],
    ['C6 C4', 329 - (2 / 3) * 188 - 23.5],
    ['C4+C5 D4+D5', 0],
    ['C4+C5 E4+E5', 23.5],
    ['C4+E4+G4 C5+E5+G5', 164.5 - ((2 / 3) * 188 - 94) - 23.5],
  ])('%s: the hand travels %d mm', (line, distance) => {
    expect(travel(line)).toBeCloseTo(distance, 6)
  })
  test('a smaller hand travels farther', () => {
    expect(travel('C4 C6', octaveMm)).toBeGreaterThan(travel('C4 C6', 211.5))
  })
  // Fitts 1954, in the form of MacKenzie 1992: log2(1 + distance / width).
  test('two octaves are 3.1 bits in half a second, half of it in a whole one', () => {
    const bits = Math.log2(1 + (329 - (2 / 3) * 188 - 23.5) / 23.5)
    expect(bits).toBeCloseTo(3.12, 2)
    const leap = (line: string, quarters: number): number =>
      ofLast((before, stroke) => leapBits(before, stroke, span), line, quarters)
    expect(leap('C4 C6', 120)).toBeCloseTo(bits, 9)
    expect(leap('C4 C6', 240)).toBeCloseTo(bits, 9)
    expect(leap('C4 C6', 60)).toBeCloseTo(bits / 2, 9)
  })
  test('the first stroke is no leap', () => {
    expect(ofLast((before, stroke) => leapBits(before, stroke, span), 'C6')).toBe(0)
  })
})

describe('stretches', () => {
  test.each([
    ['C4+A4', 188, 0],
    ['C4+C5', 188, 0.39],
    ['C4+D5', 188, 1],
    ['C4+E5', 188, 1.89],
    ['C4+C6', 188, 3],
    ['C4+C5', 164.5, 1],
  ])('%s in a hand of %d mm: %d', (line, of, share) => {
    expect(ofLast((_, stroke) => stretchShare(stroke, of), line)).toBeCloseTo(share, 2)
  })
  test('a rolled chord is not stretched for', () => {
    const [stroke] = strokes('C4+E5')
    if (!stroke) throw new Error('there is a stroke')
    const rolled = { ...stroke, notes: stroke.notes.map((n) => ({ ...n, rolled: true as const })) }
    expect(stretchShare(rolled, span)).toBe(0)
  })
})

describe('what else a hand has to do', () => {
  test.each([
    ['C4', 0],
    ['C4+E4', 1],
    ['C4+E4+G4', 2],
  ])('double notes and chords: %s has %d further notes', (line, count) => {
    expect(ofLast((_, stroke) => furtherNotes(stroke), line)).toBe(count)
  })
  test.each([
    ['C4 D4', 120, 0],
    ['C4:1/2 C4:1/2', 120, 1],
    ['C4 C4', 120, 0.5],
    ['C4:1/4 C4:1/4', 120, 1],
    ['C4+E4:1/2 C4+E4:1/2', 120, 2],
  ])('repeated notes: %s at %d is %d', (line, quarters, count) => {
    expect(ofLast(repeatedKeys, line, quarters)).toBeCloseTo(count, 9)
  })
  test.each([
    ['C4:1/4 D4:1/4 C4:1/4 D4:1/4', 1],
    ['C4:1/2 D4:1/2 C4:1/2 D4:1/2', 4 / 9],
    ['C4:1/4 D4:1/4 C4:1/4', 0],
    ['C4:1/4 D4:1/4 E4:1/4 F4:1/4', 0],
    ['C4:1/4 C4:1/4 C4:1/4 C4:1/4', 0],
    ['C4+E4:1/4 G4:1/4 C4+E4:1/4 G4:1/4', 1],
  ])('trills and tremolos: the last of %s counts %d', (line, count) => {
    const all = strokes(line)
    expect(trilledStrokes(all, all.length - 1)).toBeCloseTo(count, 9)
  })
  test('a trill by its sign is eight strokes a second, a mordent two, a turn four', () => {
    const [stroke] = strokes('C4:2')
    if (!stroke) throw new Error('there is a stroke')
    const signed = (ornament: 'trill' | 'mordent' | 'turn'): number =>
      trilledStrokes([{ ...stroke, notes: stroke.notes.map((n) => ({ ...n, ornament })) }], 0)
    expect([signed('trill'), signed('mordent'), signed('turn')]).toEqual([8, 2, 4])
  })
  test('grace notes count as strokes of their main note', () => {
    const all = strokes('C4 (D4) C4')
    expect(all.map((_, i) => trilledStrokes(all, i))).toEqual([0, 1])
  })
  test.each([
    ['C4 D4', 0],
    ['C4 C#4', 1],
    ['C#4 D#4', 0],
    ['C4+E4 C4+Eb4', 1],
  ])('black and white keys: %s changes %d times', (line, count) => {
    expect(ofLast(levelChanges, line)).toBe(count)
  })
  test.each([
    ['F#4', 0, 1],
    ['F#4', 1, 0],
    ['F4', 1, 1],
    ['Bb4', -1, 0],
    ['B4', -1, 1],
    ['C4+E4+G#4', 0, 1],
  ])('accidentals: %s with %d sharps has %d', (line, fifths, count) => {
    const signatures = [{ start: tick(0), fifths, mode: 'major' as const }]
    expect(ofLast((_, stroke) => alteredNotes(stroke, signatures), line)).toBe(count)
  })
  test.each([
    [1, 1, 0],
    [3, 1, 2],
    [20, 1, 4],
    [3, 3, 0],
  ])('fingers: %d points for %d notes are %d beyond the usual', (cost, notes, beyond) => {
    const [stroke] = strokes(['C4', 'C4+E4', 'C4+E4+G4'][notes - 1] ?? '')
    expect(stroke && awkwardness({ cost, thumbPassing: 0 }, stroke)).toBe(beyond)
  })
  // Scales: the usual digits, as in the tables of Beringer & Dunhill 1900 (C major, right hand: 1 2 3 1 2 3 4 5).
  test.each([
    ['the scale of C', 'C4 D4 E4 F4 G4 A4 B4 C5', [0, 0, 0, 1, 0, 0, 0, 0]],
    ['five fingers', 'C4 D4 E4 F4 G4', [0, 0, 0, 0, 0]],
    ['a broken chord of two octaves', 'C4 E4 G4 C5 E5 G5 C6', [0, 0, 0, 5, 0, 0, 0]],
  ])('thumb passings: %s', (_, line, passed) => {
    const { notes, ticksPerQuarter } = writeScore({ right: line })
    const work = fingerWork(notes, { hand: 'right', ticksPerQuarter })
    expect(work.map(passedSemitones)).toEqual(passed)
  })
})
