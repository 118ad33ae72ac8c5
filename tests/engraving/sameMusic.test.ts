/**
 * The notation of a MIDI file against the MusicXML of the same music: what a program prints from
 * printed values (verovio's own reading of the MusicXML) we must find again from keys and times.
 */
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { writeMei } from '@/engraving/mei'
import { cutStretch } from '@/engraving/stretch'
import { openEngraverHere } from '../support/toolkit'
import { hands, type KeySignature, type Score } from '@/music/music'
import { tick } from '@/music/units'
import { readPiece } from '@/score/readPiece'
import { writeMidiFile } from '@/score/writeMidiFile'
import { attributes, backup, piano, readText, voice } from '../score/musicXmlText'
import { printed } from './printed'

let toolkit: VerovioToolkit
beforeAll(async () => {
  toolkit = await openEngraverHere()
})

/** Each bar: the voices of the right hand, then the left hand; durations in twelfths of a quarter. */
interface Music {
  readonly name: string
  readonly time: string
  readonly fifths: number
  readonly mode?: KeySignature['mode']
  readonly bars: readonly {
    readonly right: readonly [string, string?]
    readonly left: string
  }[]
}

const divisions = 12

const music: readonly Music[] = [
  {
    name: 'a song in three with dots, a tie over the bar and accidentals',
    time: '3/4',
    fifths: -1,
    bars: [
      { right: ['F5/18 G5/6 A5/12'], left: 'F3/12 A3+C4/12 A3+C4/12' },
      { right: ['Bb5/24 A5/12~'], left: 'G3/12 Bb3+D4/12 Bb3+D4/12' },
      { right: ['~A5/12 G5/12 F#5/12'], left: 'C#4/12 A3/12 D4/12' },
      { right: ['G5/36'], left: 'C3/12 E3/12 Bb3/12' },
      { right: ['C5/6 r/6 E5/6 r/6 G5/12'], left: 'C3/36' },
      { right: ['F5/9 E5/3 F5/24'], left: 'F2+F3/36' },
    ],
  },
  {
    name: 'runs, triplets and syncopations in four',
    time: '4/4',
    fifths: 1,
    bars: [
      { right: ['G5/3 A5/3 B5/3 C6/3 D6/6 B5/6 G5/12 r/12'], left: 'G3/24 B3/24' },
      { right: ['G5/4 F#5/4 E5/4 D5/12 C#5/4 D5/4 E5/4 D5/12'], left: 'D3/12 F#3/12 A3/12 C4/12' },
      { right: ['B4/6 D5/12 G5/6~ ~G5/6 B5/12 D6/6'], left: 'G3/48' },
      { right: ['E5/12 D5/24 C5/12'], left: 'C3/6 G3/6 E4/6 G3/6 D3/6 A3/6 F#4/6 A3/6' },
      { right: ['B4+D5+G5/48'], left: 'G2/24 G3/24' },
    ],
  },
  {
    name: 'two voices for the right hand',
    time: '4/4',
    fifths: -3,
    bars: [
      { right: ['Eb5/24 F5/24', 'Bb4/12 C5/12 Ab4/12 Bb4/12'], left: 'Eb3/24 D3/24' },
      { right: ['G5/48', 'Bb4/12 Ab4/12 G4/24'], left: 'Eb3/12 Bb2/12 Eb2/24' },
      { right: ['Ab5/12 G5/12 F5/12 Eb5/12'], left: 'C3/12 B2/12 C3/12 A2/12' },
      { right: ['D5/24 Eb5/24', 'Ab4/24 G4/12 Ab4/12'], left: 'Bb2/24 Eb3/24' },
    ],
  },
  {
    name: 'six eighths in a minor key with its raised seventh',
    time: '6/8',
    fifths: 0,
    mode: 'minor',
    bars: [
      { right: ['A5/6 G#5/6 A5/6 B5/12 C6/6'], left: 'A2/6 E3/6 A3/6 C4/6 A3/6 E3/6' },
      { right: ['B5/18 G#5/18'], left: 'E3/18 E2/18' },
      { right: ['A5/9 B5/3 A5/6 E5/18'], left: 'F3/6 A3/6 C4/6 C#4/6 A3/6 E3/6' },
      { right: ['D5/12 D#5/6 E5/18'], left: 'D3/12 F3/6 E3/18' },
      { right: ['A4/36'], left: 'A2/18 r/6 A2/12' },
    ],
  },
]

const musicXml = ({ time, fifths, bars }: Music): string => {
  const [beats = 4, beatType = 4] = time.split('/').map(Number)
  const length = (beats * 4 * divisions) / beatType
  return piano(
    ...bars.map(({ right: [upper, lower], left }, i) =>
      [
        i === 0 ? attributes({ divisions, time, staves: 2, fifths }) : '',
        voice(upper, { divisions, staff: 1, voice: 1 }),
        backup(length),
        lower ? voice(lower, { divisions, staff: 1, voice: 2 }) + backup(length) : '',
        voice(left, { divisions, staff: 2, voice: 5 }),
      ].join(''),
    ),
  )
}

/** How a MIDI file holds it: the share of each length that sounds, and by how many ticks of 480 keys come early or late. */
interface Playing {
  readonly share: number
  readonly late: readonly number[]
}

const midiOf = (score: Score, piece: Music, { share, late }: Playing): Score => {
  const { ticksPerQuarter } = score
  const [beats = 4, beatType = 4] = piece.time.split('/').map(Number)
  const scale = 480 / ticksPerQuarter
  const bytes = writeMidiFile({
    title: piece.name,
    ticksPerQuarter: 480,
    tempos: score.tempos,
    times: [{ start: tick(0), time: { beats, beatType } }],
    keys: [{ start: tick(0), fifths: piece.fifths, mode: piece.mode ?? 'major' }],
    tracks: hands.toReversed().map((hand) => ({
      name: `${hand} hand`,
      notes: score.notes
        .filter((note) => note.hand === hand)
        .map(({ key, start, length }, i) => ({
          key,
          start: tick(Math.max(0, Math.round(start * scale) + (late[i % late.length] ?? 0))),
          length: tick(Math.round(length * scale * share)),
        })),
    })),
  })
  const read = readPiece(bytes, 'same.mid')
  if (!read.ok) throw new Error(read.reason.kind)
  return read.value.score
}

const meiOf = (score: Score): string => {
  const stretch = cutStretch(score, tick(0), score.end, 'both')
  if (!stretch) throw new Error('no such stretch')
  return writeMei(stretch).mei
}

const byVerovio = (xml: string): string => {
  toolkit.setOptions({ inputFrom: 'musicxml' })
  expect(toolkit.loadData(xml)).toBe(1)
  return toolkit.getMEI()
}

const playings: readonly (readonly [string, Playing])[] = [
  ['exact', { share: 1, late: [0] }],
  ['detached', { share: 0.9, late: [0] }],
  ['played', { share: 0.88, late: [0, 9, -7, 4, 11, -10, 2] }],
]

describe.each(music)('$name', (piece) => {
  const xml = musicXml(piece)

  test('verovio reads from the MusicXML what we print from it', () => {
    const { score } = readText(xml)
    expect(printed(meiOf(score), { beams: false })).toEqual(printed(byVerovio(xml)))
  })

  test.each(playings)(
    '%s: pitches, values, ties, tuplets and voices of the MIDI file',
    (_, how) => {
      const midi = midiOf(readText(xml).score, piece, how)
      expect(printed(meiOf(midi), { beams: false })).toEqual(printed(byVerovio(xml)))
    },
  )

  test.each(playings)('%s: beams too are those of the MusicXML', (_, how) => {
    const { score } = readText(xml)
    expect(printed(meiOf(midiOf(score, piece, how)))).toEqual(printed(meiOf(score)))
  })
})

test('an octave-shift of MusicXML and the MIDI file of it have the same octave line', () => {
  const high = 'C7/12 E7/12 G7/12 E7/12'
  const shift = (type: string): string =>
    `<direction><direction-type><octave-shift type="${type}" size="8"/></direction-type><staff>1</staff></direction>`
  const xml = piano(
    attributes({ divisions, staves: 2 }) +
      voice('C5/48', { divisions, staff: 1 }) +
      backup(48) +
      voice('C3/48', { divisions, staff: 2, voice: 5 }),
    shift('down') +
      voice(high, { divisions, staff: 1 }) +
      shift('stop') +
      backup(48) +
      voice('C3/48', { divisions, staff: 2, voice: 5 }),
  )
  const { score } = readText(xml)
  const piece: Music = { name: 'High', time: '4/4', fifths: 0, bars: [] }
  const [ours, midi] = [meiOf(score), meiOf(midiOf(score, piece, { share: 1, late: [0] }))]
  // MusicXML 4.0, “octave-shift”: pitches are those that sound.
  expect(midi).toMatch(/<note [^>]*pname="c" oct="6" oct.ges="7"/)
  expect(midi.match(/<octave [^>]*>/g)).toEqual([
    expect.stringContaining('dis="8" dis.place="above"'),
  ])
  expect(midi.match(/<octave [^>]*>/g)).toEqual(ours.match(/<octave [^>]*>/g))
  expect(printed(midi)).toEqual(printed(ours))
})
