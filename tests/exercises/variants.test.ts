import { describe, expect, test } from 'vitest'
import { formsOf, writeVariant, type Variant } from '@/exercises/variants'
import { forms, formedId, parseForm, splitFormedId, type Form } from '@/music/form'
import type { HandChoice, Score } from '@/music/music'
import { chunkId, tick } from '@/music/units'
import { buildUpText } from '@/text/buildUp'
import { cutChunk } from '@/music/chunk'
import { writeScore } from '../music/writeScore'
import { showChunk, showQuarters, wholeOf } from './notation'

const vary = (score: Score, form: Form, hand: HandChoice = 'both', span?: number): Variant => {
  const variant = writeVariant(score, wholeOf(score, hand), form, span)
  if (!variant) throw new Error(`no ${form}`)
  return variant
}
const varied = (
  form: Form,
  sheet: Parameters<typeof writeScore>[0],
  hand: HandChoice = 'both',
): string => showChunk(vary(writeScore(sheet), form, hand).chunk)

/** Bars as time signature and first quarter: '2/4@0 2/4@2'. */
const bars = ({ score }: Variant): string =>
  score.bars
    .map(
      ({ time, start }) =>
        `${time.beats}/${time.beatType}@${showQuarters(start, score.ticksPerQuarter)}`,
    )
    .join(' ')

const sixteenths = 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5:1/4 C6:1/4 D6'
const eighths = 'C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5:1/2 A5:1/2 B5:3/2'
const triplets = 'C5:1/3 D5:1/3 E5:1/3 F5:1/3 G5:1/3 A5:1/3 B5'

// Dotted rhythms in pairs; of three notes, one is long: common practice, no source.
describe('rhythms', () => {
  test.each([
    [
      'sixteenths become dotted sixteenths and thirty-seconds',
      'longShort',
      { right: sixteenths },
      'C5:3/8 D5:1/8 E5:3/8 F5:1/8 G5:3/8 A5:1/8 B5:3/8 C6:1/8 D6',
    ],
    [
      'and the other way round',
      'shortLong',
      { right: sixteenths },
      'C5:1/8 D5:3/8 E5:1/8 F5:3/8 G5:1/8 A5:3/8 B5:1/8 C6:3/8 D6',
    ],
    [
      'three eighths of a beat become a quarter and two sixteenths',
      'longShort',
      { right: eighths, time: [6, 8] },
      'C5:1 D5:1/4 E5:1/4 F5:1 G5:1/4 A5:1/4 B5',
    ],
    [
      'or two sixteenths and a quarter',
      'shortLong',
      { right: eighths, time: [6, 8] },
      'C5:1/4 D5:1/4 E5:1 F5:1/4 G5:1/4 A5:1 B5',
    ],
    [
      'so do triplets',
      'longShort',
      { right: triplets },
      'C5:2/3 D5:1/6 E5:1/6 F5:2/3 G5:1/6 A5:1/6 B5',
    ],
    [
      'six sixteenths of a beat go in pairs',
      'longShort',
      { right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5', time: [6, 8] },
      'C5:3/8 D5:1/8 E5:3/8 F5:1/8 G5:3/8 A5:1/8 B5',
    ],
    [
      'a beat that is no run stays as written',
      'longShort',
      { right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:3/4 A5:1/4 B5:1/4 C6:1/4 D6:1/4 E6:1/4 F6' },
      'C5:3/8 D5:1/8 E5:3/8 F5:1/8 G5:3/4 A5:1/4 B5:3/8 C6:1/8 D6:3/8 E6:1/8 F6',
    ],
    [
      'what begins within a beat keeps the rhythm of that beat',
      'longShort',
      { right: 'r:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5:1/4 C6:1/4 D6' },
      'D5:1/8 E5:3/8 F5:1/8 G5:3/8 A5:1/8 B5:3/8 C6:1/8 D6',
    ],
    [
      'a pickup that begins within a beat stays as written',
      'shortLong',
      { right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5', pickup: 0.5 },
      'C5:1/4 D5:1/4 E5:1/8 F5:3/8 G5:1/8 A5:3/8 B5',
    ],
    [
      'what ends within a beat, too',
      'longShort',
      { right: 'C5:1/4 D5:1/4 E5:1/4' },
      'C5:3/8 D5:1/8 E5',
    ],
    [
      'the other hand stays with its beats',
      'longShort',
      { right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5', left: 'C3 G3' },
      'C3+C5:3/8 D5:1/8 E5:3/8 F5:1/8 G3+G5',
    ],
    [
      'both hands in sixteenths go together',
      'shortLong',
      { right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5', left: 'E3:1/4 D3:1/4 C3:1/4 B2:1/4 A2' },
      'E3+C5:1/8 D3+D5:3/8 C3+E5:1/8 B2+F5:3/8 A2+G5',
    ],
  ] as const)('%s (%s)', (_, form, sheet, expected) => {
    expect(varied(form, sheet)).toBe(expected)
  })

  test('at the coarsest resolution that holds the notes the rhythm is exact', () => {
    const score = writeScore({ right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5', ticksPerQuarter: 4 })
    const { chunk } = vary(score, 'longShort')
    expect(chunk.ticksPerQuarter).toBe(8)
    expect(chunk.onsets.map(({ start }) => start)).toEqual([0, 3, 4, 7, 8])
  })

  test('bars, time signatures and the lengths of groups are those of the score', () => {
    const score = writeScore({ right: `${eighths} C5 D5`, time: [6, 8] })
    expect(bars(vary(score, 'longShort'))).toBe('6/8@0 6/8@3 6/8@6')
  })

  test('a note held through the run is held as long as before', () => {
    const score = writeScore({ right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5', left: 'C3:2' })
    const { chunk } = vary(score, 'longShort')
    expect(chunk.onsets[0]?.notes.map(({ length }) => length / chunk.ticksPerQuarter)).toEqual([
      2, 0.375,
    ])
  })
})

describe('stops', () => {
  test.each([
    [
      'four sixteenths, the last held to the third beat: bars of 2/4',
      'stopAfter4',
      { right: sixteenths },
      'C5:1/4 D5:1/4 E5:1/4 F5:5/4 G5:1/4 A5:1/4 B5:1/4 C6:5/4 D6',
      '2/4@0 2/4@2 2/4@4',
    ],
    [
      'three sixteenths likewise',
      'stopAfter3',
      { right: sixteenths },
      'C5:1/4 D5:1/4 E5:3/2 F5:1/4 G5:1/4 A5:3/2 B5:1/4 C6:1/4 D6',
      '2/4@0 2/4@2 2/4@4',
    ],
    [
      'four eighths of 4/4 make bars of 3/4',
      'stopAfter4',
      { right: 'C5:1/2 D5:1/2 E5:1/2 F5:1/2 G5' },
      'C5:1/2 D5:1/2 E5:1/2 F5:3/2 G5',
      '3/4@0 3/4@3',
    ],
    [
      'three eighths of 6/8 keep bars of 6/8',
      'stopAfter3',
      { right: eighths, time: [6, 8] },
      'C5:1/2 D5:1/2 E5:2 F5:1/2 G5:1/2 A5:2 B5',
      '6/8@0 6/8@3 6/8@6',
    ],
    [
      'triplets',
      'stopAfter3',
      { right: triplets },
      'C5:1/3 D5:1/3 E5:4/3 F5:1/3 G5:1/3 A5:4/3 B5',
      '2/4@0 2/4@2 2/4@4',
    ],
    [
      'the other hand waits',
      'stopAfter4',
      { right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5', left: 'C3 G3' },
      'C3+C5:1/4 D5:1/4 E5:1/4 F5:5/4 G3+G5',
      '2/4@0 2/4@2',
    ],
  ] as const)('%s', (_, form, sheet, expected, metre) => {
    const variant = vary(writeScore(sheet), form)
    expect([showChunk(variant.chunk), bars(variant)]).toEqual([expected, metre])
  })

  test('the held note fills its bar', () => {
    const { chunk } = vary(writeScore({ right: sixteenths }), 'stopAfter4')
    const quarters = chunk.onsets.map(({ notes }) => notes[0].length / chunk.ticksPerQuarter)
    expect(quarters).toEqual([0.25, 0.25, 0.25, 1.25, 0.25, 0.25, 0.25, 1.25, 2])
  })

  test('from the middle of a piece, key and tempo go along', () => {
    const score: Score = {
      ...writeScore({ right: `C5:4 ${sixteenths}` }),
      keys: [
        { start: tick(0), fifths: 1, mode: 'major' },
        { start: tick(1920), fifths: -2, mode: 'minor' },
      ],
    }
    const written = cutChunk(score, tick(1920), score.end, 'right')
    const variant = written && writeVariant(score, written, 'stopAfter4')
    expect(variant?.score.keys).toEqual([{ start: 0, fifths: -2, mode: 'minor' }])
    expect(variant?.chunk).toMatchObject({ start: 0, barOffset: 0, barLength: 960, beat: 480 })
  })
})

describe('accents', () => {
  test.each([
    ['accentEvery3', 'C5 F5 B5'],
    ['accentEvery4', 'C5 G5 D6'],
  ] as const)('%s: on %s, and all at the written time', (form, accented) => {
    const score = writeScore({ right: sixteenths })
    const variant = vary(score, form)
    const struck = { ...variant.score, notes: variant.score.notes.filter((n) => n.accent) }
    expect(showChunk(wholeOf(struck)).replace(/:\S+/g, '')).toBe(accented)
    expect(showChunk(variant.chunk)).toBe(showChunk(wholeOf(score)))
  })
})

describe('blocked chords', () => {
  test.each([
    [
      'a broken chord of half a bar',
      { left: 'C3:1/2 G3:1/2 E3:1/2 G3:1/2 D3:1/2 G3:1/2 F3:1/2 G3:1/2' },
      'C3+E3+G3:2 D3+F3+G3',
    ],
    [
      'a whole bar where the hand can hold it',
      {
        left: 'C3:1/2 G3:1/2 E3:1/2 G3:1/2 C3:1/2 G3:1/2 E3:1/2 G3:1/2 D3:1/2 A3:1/2 F3:1/2 A3:1/2',
      },
      'C3+E3+G3:4 D3+F3+A3',
    ],
    [
      'a beat of an arpeggio that is wider than the hand',
      { right: 'C4:1/3 E4:1/3 G4:1/3 C5:1/3 E5:1/3 G5:1/3 C6' },
      'C4+E4+G4:1 C5+E5+G5:1 C6',
    ],
    [
      'bass and chords of a bar in 3/4',
      { left: 'C3 E3+G3 E3+G3 B2 D3+G3 D3+G3', time: [3, 4] },
      'C3+E3+G3:3 B2+D3+G3',
    ],
    [
      'a seventh chord has one second',
      { left: 'G3:1/4 B3:1/4 D4:1/4 F4:1/4 F4:1/4 D4:1/4 B3:1/4 G3:1/4 C4:1/4 E4:1/4 G4:1/4 C5' },
      'G3+B3+D4+F4:2 C4+E4+G4+C5',
    ],
    [
      'a melody above stays as written',
      {
        right: 'C5 D5 E5 F5',
        left: 'C3:1/2 G3:1/2 E3:1/2 G3:1/2 D3:1/2 A3:1/2 F3:1/2 A3:1/2',
      },
      'C3+E3+G3+C5:1 D5:1 D3+F3+A3+E5:1 F5',
    ],
  ] as const)('%s', (_, sheet, expected) => {
    expect(varied('blocked', sheet)).toBe(expected)
  })

  test('a hand that reaches a tenth takes more together', () => {
    const score = writeScore({ left: 'C3:1/2 G3:1/2 E4:1/2 G3:1/2 D3:1/2 A3:1/2 F4:1/2 A3:1/2' })
    expect(writeVariant(score, wholeOf(score), 'blocked')).toBe(undefined)
    expect(showChunk(vary(score, 'blocked', 'left', 16).chunk)).toBe('C3+G3+E4:2 D3+A3+F4')
  })

  test('the chord is held until the next, and each key has the name of its first note', () => {
    const { chunk } = vary(
      writeScore({ left: 'C3:1/2 G3:1/2 E3:1/2 G3:1/2 D3:1/2 A3:1/2 F3:1/2 A3:1/2' }),
      'blocked',
    )
    expect(chunk.onsets[0]?.notes.map(({ ids, length }) => [ids, length])).toEqual([
      [['n0k48'], 960],
      [['n1k52'], 960],
      [['n1_2k55'], 960],
    ])
  })
})

const offered = (sheet: Parameters<typeof writeScore>[0]): string => {
  const score = writeScore(sheet)
  return formsOf(score, wholeOf(score)).join(' ')
}

describe('only what makes sense is offered', () => {
  test.each([
    [
      'a scale in sixteenths',
      { right: sixteenths },
      'asWritten longShort shortLong stopAfter3 stopAfter4 accentEvery3 accentEvery4',
    ],
    ['a melody in quarters', { right: 'C5 D5 E5 C5 D5 E5' }, 'asWritten'],
    ['mixed values', { right: 'C5:3/4 D5:1/4 E5:1 F5:1/3 G5:2/3 A5' }, 'asWritten'],
    ['chords', { right: 'C5+E5 D5+F5 E5+G5' }, 'asWritten'],
    [
      'quintuplets go in no pairs',
      { right: 'C5:1/5 D5:1/5 E5:1/5 F5:1/5 G5:1/5 A5' },
      'asWritten stopAfter3 stopAfter4 accentEvery3 accentEvery4',
    ],
    ['three sixteenths', { right: 'C5:1/4 D5:1/4 E5:1/4' }, 'asWritten longShort shortLong'],
    [
      'three against two',
      { right: 'C5:1/3 D5:1/3 E5:1/3 F5', left: 'C3:1/2 D3:1/2 E3' },
      'asWritten',
    ],
    [
      'one broken chord alone would be one chord',
      { right: 'C5:1/4 E5:1/4 G5:1/4 C6:1/4' },
      'asWritten longShort shortLong stopAfter3 accentEvery3',
    ],
    ['one note', { right: 'C5' }, 'asWritten'],
  ] as const)('%s', (_, sheet, expected) => {
    expect(offered(sheet)).toBe(expected)
  })

  test('each form says in one line what it is for', () => {
    const lines = forms.map((form) => buildUpText.purposes[form])
    expect(new Set(lines).size).toBe(forms.length)
    for (const line of lines) expect(line).toMatch(/^[A-Z][^\n]{10,120}\.$/)
  })

  test('where loudness would have to be judged, the line says that it is not', () => {
    for (const form of forms)
      expect(buildUpText.purposes[form].includes('listen')).toBe(form.startsWith('accent'))
  })
})

describe('the name of a chunk in a form', () => {
  const written = chunkId('p1:0-7_2:right')

  test('is its own, and leads back', () => {
    const names = forms.map((form) => formedId(written, form))
    expect(names.slice(0, 2)).toEqual(['p1:0-7_2:right', 'p1:0-7_2:right~longShort'])
    expect(new Set(names).size).toBe(forms.length)
    expect(names.map(splitFormedId)).toEqual(forms.map((form) => ({ written, form })))
  })

  test.each(['p1:0-1:left~', 'p1:0-1:left~swung', 'p1:0-1:left~blocked~blocked'])(
    '%s names no form',
    (name) => {
      expect(splitFormedId(chunkId(name))).toBe(undefined)
    },
  )

  test('a word is a form or none', () => {
    expect([parseForm('blocked'), parseForm('Blocked')]).toEqual(['blocked', undefined])
  })

  test('does not depend on how a form changes places', () => {
    const score = writeScore({ right: `r:1/4 ${sixteenths}` })
    const whole = wholeOf(score)
    for (const form of formsOf(score, whole))
      expect(vary(score, form).chunk.id).toBe(formedId(whole.id, form))
  })
})
