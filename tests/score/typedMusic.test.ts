import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatKey } from '@/music/pitch'
import { key, tempo, tick } from '@/music/units'
import { parseTypedMusic } from '@/score/parseTypedMusic'
import { readPiece } from '@/score/readPiece'
import { explainReadProblem } from '@/score/readProblem'
import { scoreTyped, writeTypedFile } from '@/score/readTypedPiece'
import type { PieceRead } from '@/score/score'
import {
  formatTypedMusic,
  quarterParts,
  type TypedMusic,
  type TypedProblem,
} from '@/score/typedMusic'
import { writeMidiFile } from '@/score/writeMidiFile'
import { readingText } from '@/text/reading'
import { tell } from '@/text/told'
import { findUnsound } from './soundScore'

const sentenceOf = ({ flaw }: TypedProblem): string => tell(readingText.typed, flaw)

const music = (text: string): TypedMusic => {
  const read = parseTypedMusic(text)
  if (!read.ok)
    throw new Error(`${read.reason.line}:${read.reason.column} ${sentenceOf(read.reason)}`)
  return read.value
}
const piece = (text: string): PieceRead => {
  const read = scoreTyped(music(text), 'Untitled')
  if (!read.ok) throw new Error(read.reason.kind)
  return read.value
}
/** Each note as hand, pitch, start and length in quarters: 'r C4 0 1'. */
const notesOf = (text: string): string =>
  piece(text)
    .score.notes.map(
      ({ hand, key: k, start, length }) =>
        `${hand.charAt(0)} ${formatKey(k)} ${start / quarterParts} ${length / quarterParts}`,
    )
    .join(', ')

describe('what is typed sounds as it says', () => {
  test.each([
    ['C4 D4', 'r C4 0 1, r D4 1 1'],
    ['right: C4:1/2 D4 E4:1', 'r C4 0 0.5, r D4 0.5 0.5, r E4 1 1'],
    ['left: C3:0.5 r E3:1.5', 'l C3 0 0.5, l E3 1 1.5'],
    ['[C4 E4 G4]:2 r:1 f#4', 'r C4 0 2, r E4 0 2, r G4 0 2, r F#4 3 1'],
    ['C4:4 | -:2 D4', 'r C4 0 6, r D4 6 2'],
    ['right: C5\nleft: C3:2\nright: D5', 'l C3 0 2, r C5 0 1, r D5 1 1'],
    ['right: C5\n  D5\n\nleft: E3\nF3', 'l E3 0 1, r C5 0 1, l F3 1 1, r D5 1 1'],
    ['Bb3 B♭4 F♯4 Fx4 Cb5', 'r A#3 0 1, r A#4 1 1, r F#4 2 1, r G4 3 1, r B4 4 1'],
    ['C4:1/4 D4:.25 E4:3/2', 'r C4 0 0.25, r D4 0.25 0.25, r E4 0.5 1.5'],
    ['time 3/4\n| C4:3 | D4:1 E4 F4 ||', 'r C4 0 3, r D4 3 1, r E4 4 1, r F4 5 1'],
  ])('%j', (text, expected) => {
    expect(notesOf(text)).toBe(expected)
  })

  test('settings: time, key, tempo in the beat, and a pickup', () => {
    const { score } = piece('time 6/8  key D minor  tempo 60  pickup 1/2\nA4:1/2 | D5:3 | A4')
    expect(score.bars.map(({ number, length }) => [number, length / quarterParts])).toEqual([
      [0, 0.5],
      [1, 3],
      [2, 3],
    ])
    expect(score.bars[0]?.time).toEqual({ beats: 6, beatType: 8 })
    expect(score.keys).toEqual([{ start: 0, fifths: -1, mode: 'minor' }])
    expect(score.tempos).toEqual([{ start: 0, tempo: 90 }])
  })

  test('a note keeps the spelling that was typed', () => {
    expect(piece('Cb5 B4').score.notes.map(({ spelling }) => spelling)).toEqual(['Cb5', 'B4'])
  })

  test.each([
    ['key G', 1, 'major'],
    ['key Bb major', -2, 'major'],
    ['key F# minor', 3, 'minor'],
    ['key Em', 1, 'minor'],
    ['key C#', 7, 'major'],
    ['key Abm', -7, 'minor'],
  ])('%s has %i sharps (circle of fifths)', (text, fifths, mode) => {
    expect(music(`${text}\nC4`)).toMatchObject({ fifths, mode })
  })
})

describe('what cannot be read is shown at its place', () => {
  test.each([
    ['', '1:1+1', 'There is no note in it yet.'],
    ['r r', '1:1+1', 'There is no note in it yet.'],
    ['C4 H4 D4', '1:4+2', '“H4” is no pitch'],
    ['C4\nright: C4 D', '2:11+1', '“D” is no pitch'],
    ['C4 C9', '1:4+2', '“C9” is beyond the piano'],
    ['C4:0 D4', '1:4+1', '“0” is no length'],
    ['C4:1/11', '1:4+4', '1/11 of a quarter cannot be counted'],
    ['C4:half', '1:4+4', '“half” is no length'],
    ['C4 :1/2', '1:4+1', 'A length stands right after its note'],
    ['C4 [E4 G4', '1:4+6', 'The chord is not closed'],
    ['[] C4', '1:1+2', 'The chord is empty'],
    ['[C4 B#3]', '1:5+3', 'B#3 and C4 are the same key'],
    ['C4 ] D4', '1:4+1', '“]” is no pitch'],
    ['- C4', '1:1+1', 'There is nothing before “-”'],
    ['time 3/4\nC4 D4 | E4', '2:7+1', 'has 2 quarters, and 3/4 holds 3 quarters.'],
    ['time 3/4\nleft: C3:3 | D3:1/2 |', '2:21+1', 'left hand has 1/2 of a quarter, and 3/4'],
    ['time 3/4 pickup 1\nC4:2 | D4', '2:6+1', 'has 2 quarters, and the pickup is 1 quarter.'],
    ['time 3/4 pickup 3\nC4', '1:17+1', 'A pickup is shorter than a bar of 3/4'],
    ['time 3/5\nC4', '1:6+3', '“3/5” is no time signature'],
    ['time\nC4', '1:1+4', 'Something must follow time, as in time 3/4.'],
    ['time key G\nC4', '1:1+4', 'Something must follow time'],
    ['time 3/4 time 2/4\nC4', '1:10+4', 'The time stands there already'],
    ['key H\nC4', '1:5+1', '“H” is no key'],
    ['key G# C4', '1:5+2', '“G#” is no key'],
    ['tempo 1000\nC4', '1:7+4', '“1000” is no tempo'],
    ['tempo 80 loud\nC4', '1:10+4', '“loud” is none of time, key, tempo, pickup'],
    ['C4\ntempo 80', '2:1+5', 'The tempo must stand before the first note'],
    ['passagework 2\nC4', '1:1+13', 'newer version'],
  ])('%j at %s', (text, place, sentence) => {
    const read = parseTypedMusic(text)
    if (read.ok) throw new Error('it was read')
    const { line, column, width } = read.reason
    expect(`${line}:${column}+${width}`).toBe(place)
    expect(sentenceOf(read.reason)).toContain(sentence)
    expect(sentenceOf(read.reason)).toMatch(/^[A-Z“1-9].*\.$/)
  })
})

const pitch = fc
  .tuple(
    fc.constantFrom(...'CDEFGAB'),
    fc.constantFrom('', '#', 'b'),
    fc.integer({ min: 1, max: 7 }),
  )
  .map(([letter, sign, octave]) => `${letter}${sign}${octave}`)
const length = fc.constantFrom('1', '1/2', '1/3', '1/4', '3/2', '2', '1/5', '5/7', '4')
const event = fc
  .tuple(fc.uniqueArray(pitch, { maxLength: 3 }), length)
  .map(([names, l]) => (names.length === 0 ? `r:${l}` : `[${names.join(' ')}]:${l}`))
const hand = fc.array(event, { maxLength: 20 }).map((events) => events.join(' '))
const anyMusic = fc
  .record({
    time: fc.constantFrom('4/4', '3/4', '6/8', '2/2', '5/8'),
    keyName: fc.constantFrom('C', 'Eb', 'F# minor', 'Cb', 'A minor'),
    tempo: fc.integer({ min: 10, max: 400 }),
    pickup: fc.constantFrom('', 'pickup 1', 'pickup 1/2', 'pickup 3/2'),
    right: hand,
    left: hand,
  })
  .map((m) =>
    parseTypedMusic(
      `time ${m.time} key ${m.keyName} tempo ${m.tempo} ${m.pickup}\nright: ${m.right}\nleft: ${m.left}`,
    ),
  )
  .filter((read) => read.ok)
  .map((read) => read.value)

describe('for any music and any text', () => {
  test('what is written out is read back the same', () => {
    fc.assert(
      fc.property(anyMusic, (written) => {
        expect(music(formatTypedMusic(written))).toEqual(written)
      }),
    )
  })

  test('it gives a sound score, and the same piece as the MIDI file of the same notes', () => {
    fc.assert(
      fc.property(anyMusic, (written) => {
        const read = scoreTyped(written, 'x')
        if (!read.ok) throw new Error(read.reason.kind)
        const { score } = read.value
        expect(findUnsound(score)).toBeUndefined()
        const file = readPiece(asMidi(written), 'x.mid')
        expect(file.ok && file.value.score.id).toBe(score.id)
      }),
      { numRuns: 60 },
    )
  })

  test('noise is refused at a place inside the text, never with an exception', () => {
    const words = fc.constantFrom(
      ...'time 3/4 key G tempo 80 pickup right: left: C4 F#5: [ ] | - r :1/2 [C4 ]:2 passagework 1 ~ 9'.split(
        ' ',
      ),
      '\n',
      '\r\n',
      '\t',
      '\uD800',
      '𝄞',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(words).map((all) => all.join(' ')),
        ),
        (text) => {
          const read = parseTypedMusic(text)
          if (read.ok) return
          const { line, column, width } = read.reason
          const lines = text.split(/\r\n|\r|\n/)
          expect(line).toBeLessThanOrEqual(lines.length)
          expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1)
          expect(width).toBeGreaterThan(0)
          expect(sentenceOf(read.reason)).toMatch(/^[^\n]+\.$/)
        },
      ),
      { numRuns: 2000 },
    )
  })
})

/** The same notes as a Standard MIDI File, by way of quarters of 3360 ticks. */
const asMidi = (written: TypedMusic): Uint8Array => {
  const full = { start: tick(written.pickup), time: written.time }
  const pickup = {
    start: tick(0),
    time: { beats: (written.pickup * 8) / quarterParts, beatType: 32 },
  }
  return writeMidiFile({
    title: 'x',
    ticksPerQuarter: quarterParts,
    tempos: [{ start: tick(0), tempo: tempo(100) }],
    times: written.pickup > 0 ? [pickup, full] : [full],
    keys: [],
    tracks: (['right', 'left'] as const)
      .map((name) => {
        let at = 0
        const notes = written[name].flatMap(({ pitches, length: l }) => {
          const start = tick(at)
          at += l
          return pitches.map(({ key: k }) => ({ start, length: tick(l), key: k }))
        })
        return { name: `${name} hand`, notes }
      })
      .filter(({ notes }) => notes.length > 0),
  })
}

describe('as a file', () => {
  test('the text that is kept is read again, title and all, whatever the file is called', () => {
    const text = 'time 3/4\nC4 D4 E4 |'
    const read = readPiece(writeTypedFile('Étude  for\n2 hands', text), 'x.txt')
    if (!read.ok) throw new Error(read.reason.kind)
    expect(read.value.score.title).toBe('Étude for 2 hands')
    expect(read.value.score.id).toBe(piece(text).score.id)
    expect(read.value.score.notes.map(({ handFrom }) => handFrom)).toEqual(['file', 'file', 'file'])
  })

  test('the title is that of the file where the text has none', () => {
    const read = readPiece(writeTypedFile('', 'C4'), 'five fingers.txt')
    expect(read.ok && read.value.score.title).toBe('five fingers')
  })

  test('a damaged one is refused with line and column in one sentence', () => {
    const read = readPiece(writeTypedFile('x', 'C4 D4\nleft: C4 H3'), 'x.txt')
    expect(read.ok ? '' : explainReadProblem(read.reason)).toMatch(
      /^The text stops making sense at line 3, column 10: “H3” is no pitch: .*\.$/,
    )
  })

  test('half a letter in the title does no harm', () => {
    expect(readPiece(writeTypedFile('a\uD800b', 'C4 \uD800'), 'x.txt').ok).toBe(false)
    expect(readPiece(writeTypedFile('a\uD800b', 'C4'), 'x.txt').ok).toBe(true)
  })

  test('middle C is key 60 (scientific pitch notation, as in MIDI 1.0)', () => {
    expect(piece('C4').score.notes[0]?.key).toBe(key(60))
  })
})
