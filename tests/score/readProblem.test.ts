import { describe, expect, test } from 'vitest'
import { explainReadProblem, type ReadProblem } from '@/score/readProblem'
import { readPiece } from '@/score/readPiece'
import { hex, middleC, smf, specificationExample } from './smf'

const problemOf = (bytes: Uint8Array): ReadProblem => {
  const piece = readPiece(bytes, 'x.mid')
  if (piece.ok) throw new Error('it was read')
  return piece.reason
}
const text = (s: string): Uint8Array => Uint8Array.from(s, (c) => c.charCodeAt(0))

describe('a file that cannot be read gets one sentence', () => {
  test.each<[string, Uint8Array, string]>([
    ['empty', hex(''), 'The file is empty (0 bytes): copy or export it again.'],
    [
      'a text',
      text('Dear pianist, this is no music.'),
      'This is neither a Standard MIDI File nor MusicXML (it begins with neither “MThd” nor “<”): export the piece as MusicXML (.musicxml, .mxl) or as a MIDI file (.mid) and choose that.',
    ],
    [
      'a header and no more',
      hex('4D 54 68 64 00 00'),
      'The file is cut short: it ends at byte 6, where the header should go on; copy or export it again.',
    ],
    [
      'of format 2',
      smf([middleC], { format: 2 }),
      'This MIDI file is of format 2, which holds separate sequences instead of one piece: export the piece as format 0 or 1.',
    ],
    [
      'of an unknown format',
      smf([middleC], { format: 7 }),
      'The file is damaged: at byte 8 the header names an unknown format (7); copy or export it again.',
    ],
    [
      'with no length for a quarter',
      smf([middleC], { division: 0 }),
      'The file is damaged: at byte 12 the header gives a quarter note no length; copy or export it again.',
    ],
    [
      'with 17 frames a second',
      smf([middleC], { division: 0xef28 }),
      'The file is damaged: at byte 12 the header gives an unknown frame rate; copy or export it again.',
    ],
    [
      'with a track too few',
      smf([middleC], { announced: 2, format: 1 }),
      'The file is cut short: it ends at byte 34, where 1 more track should follow; copy or export it again.',
    ],
    [
      'cut inside a track',
      smf([middleC]).slice(0, 30),
      'The file is cut short: it ends at byte 30, where track 1 should go on for 4 more bytes; copy or export it again.',
    ],
    [
      'with a value over 127',
      smf(['00 90 3C 90']),
      'The file is damaged: at byte 23 an event has a value over 127 in track 1; copy or export it again.',
    ],
    [
      'with a value before any event',
      smf(['00 3C 40']),
      'The file is damaged: at byte 23 a value stands without an event in track 1; copy or export it again.',
    ],
    [
      'with a time of five bytes',
      smf(['81 80 80 80 00 90 3C 40']),
      'The file is damaged: at byte 22 a time in track 1 does not end; copy or export it again.',
    ],
    [
      'without notes',
      smf(['00 FF 51 03 07 A1 20']),
      'The file is without a single note: choose another, or export the piece with its notes.',
    ],
    [
      'with drums only',
      smf(['00 99 24 40 10 99 24 00']),
      'The file has notes for drums only (channel 10, or without pitch): choose a file with a piano part.',
    ],
    [
      'with the first note after weeks',
      smf(['FF FF FF 7F 90 3C 40 10 3C 00'], { division: 1 }),
      'The last note stands more than 20000 bars after the beginning, so a time in the file must be wrong: export it again.',
    ],
  ])('%s', (_, bytes, sentence) => {
    expect(explainReadProblem(problemOf(bytes))).toBe(sentence)
  })

  test('over 32 MB', () => {
    expect(explainReadProblem(problemOf(new Uint8Array(32 * 1024 * 1024 + 1)))).toBe(
      'The file is 33 MB large and at most 32 MB can be read: export the piece alone, without sound.',
    )
  })
  test('of millions of events', () => {
    const bytes = smf([])
    const count = 2_000_001
    const track = new Uint8Array(count * 3 + 1)
    for (let i = 0; i < count; i++) track.set([0, 0x3c, i % 2 ? 0 : 64], 1 + i * 3)
    track.set([0, 0x90])
    const size = [24, 16, 8, 0].map((shift) => (track.length >>> shift) & 0xff)
    const file = Uint8Array.from([...bytes.slice(0, 11), 1, 0, 96, 0x4d, 0x54, 0x72, 0x6b, ...size])
    const whole = new Uint8Array(file.length + track.length)
    whole.set(file)
    whole.set(track, file.length)
    expect(problemOf(whole)).toEqual({ kind: 'tooManyEvents', limit: 2_000_000 })
  })
})

describe('damage of any kind', () => {
  const wholes = [
    specificationExample.format0,
    specificationExample.format1,
    smf([`00 FF 03 05 52 69 67 68 74 ${middleC}`, `00 F0 02 01 F7 ${middleC}`, middleC]),
  ]

  test.each(wholes.map((whole, i) => [i, whole] as const))(
    'a file cut short anywhere is refused (%i)',
    (_, whole) => {
      for (let length = 0; length < whole.length; length++) {
        const reason = problemOf(whole.slice(0, length))
        expect(reason.kind).toBe(
          length === 0 ? 'empty' : length < 4 ? 'unknownFormat' : 'truncated',
        )
      }
    },
  )
})
