import { describe, expect, test } from 'vitest'
import { readPiece } from '@/score/readPiece'
import {
  attributes,
  backup,
  bytesOf,
  partwise,
  readText,
  voice,
  type PartText,
} from './musicXmlText'
import { explainWarning } from '@/score/warning'

/** A part of one note on each of its staves. */
const part = (name: string, key: string, { staves = 1, more = '' } = {}): PartText => ({
  name,
  more,
  measures: [
    attributes({ staves }) +
      voice(`${key}/16`, { staff: 1 }) +
      (staves > 1 ? backup(16) + voice('C2/16', { voice: 5, staff: 2 }) : ''),
  ],
})
const taken = (...parts: readonly PartText[]) => {
  const { score, warnings } = readText(partwise(parts))
  return [score.notes.map((n) => `${n.key} ${n.hand}`).join(', '), ...warnings.map(explainWarning)]
}
const sound = (name: string): string =>
  `<score-instrument id="I"><instrument-name>x</instrument-name><instrument-sound>${name}</instrument-sound></score-instrument>`

describe('of several parts', () => {
  test('the piano is taken, on two staves, and the rest named in a warning', () => {
    expect(
      taken(
        part('Voice', 'A4'),
        part('Harp', 'B4', { staves: 2 }),
        part('Piano', 'C5', { staves: 2 }),
      ),
    ).toEqual(['36 left, 72 right', 'Taken from the file: Piano; left out: Voice, Harp.'])
  })
  test.each([
    ['Klavier', ''],
    ['Pianoforte', ''],
    ['Pno.', ''],
    ['', sound('keyboard.piano.grand')],
  ])('the piano is known by its name or sound: %s%s', (name, more) => {
    expect(taken(part('Flute', 'A5'), part(name, 'C5', { more }))[0]).toBe('72 right')
  })
  test('without a piano’s name the first on two staves is taken', () => {
    expect(taken(part('Voice', 'A4'), part('', 'C5', { staves: 2 }))).toEqual([
      '36 left, 72 right',
      'Taken from the file: unnamed; left out: Voice.',
    ])
  })
  test('two on one staff that are named for the hands are taken together', () => {
    expect(taken(part('Voice', 'A4'), part('Left hand', 'C3'), part('Right hand', 'C5'))[0]).toBe(
      '48 left, 72 right',
    )
  })
  test('two named Piano are its two staves: the higher one is the right hand’s', () => {
    expect(taken(part('Piano', 'C3'), part('Piano', 'C5'))[0]).toBe('48 left, 72 right')
  })
  test('without any piano all are taken together, and that is said', () => {
    expect(taken(part('Viola', 'C4'), part('Violin', 'C5'), part('Cello', 'C2'))).toEqual([
      '36 left, 60 right, 72 right',
      'The file has 3 parts and none for a piano alone; all are taken together.',
      'The file has 3 parts; which hand plays what was inferred from how the notes lie.',
    ])
  })
  test('one with drums only does not count', () => {
    const drums = part('Drums', 'C4')
    const unpitched = drums.measures.map((m) => m.replace(/<pitch>.*<\/pitch>/, '<unpitched/>'))
    expect(taken({ ...drums, measures: unpitched }, part('Horn', 'C4'))[0]).toBe('60 right')
  })
  test('the person can choose others, from those offered', () => {
    const bytes = bytesOf(partwise([part('Voice', 'A4'), part('Piano', 'C5', { staves: 2 })]))
    const piece = readPiece(bytes, 'x', [0])
    if (!piece.ok) throw new Error(piece.reason.kind)
    expect(piece.value.score.notes.map((n) => n.key)).toEqual([69])
    expect(piece.value.parts).toEqual([
      { name: 'Voice', notes: 1, taken: true },
      { name: 'Piano', notes: 2, taken: false },
    ])
  })
  test('a bar is as long as in the longest of them, also of those left out', () => {
    const { score } = readText(
      partwise([
        { name: 'Voice', measures: [attributes() + voice('A4/16'), voice('A4/16')] },
        { name: 'Piano', measures: [attributes() + voice('C5/4'), voice('C5/4')] },
      ]),
    )
    expect(score.notes.map((n) => n.start / score.ticksPerQuarter)).toEqual([0, 4])
  })
})
