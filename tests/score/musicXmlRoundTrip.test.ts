/** Random scores written as MusicXML, read back, and read by verovio, an independent reader. */
import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import type { VerovioToolkit } from 'verovio/esm'
import { openEngraverHere } from '../support/toolkit'
import { readPiece } from '@/score/readPiece'
import { anyScore, asMidi, asMusicXml, divisionsOfAny, notesIn, type AnyScore } from './anyScore'
import { attributes, backup, forward, piano, readText, voice } from './musicXmlText'
import { byUs, byVerovio } from './timeMap'

const sounding = anyScore.filter((score) => notesIn(score).length > 0)

describe('a random score', () => {
  test('written as MusicXML and read back is the same: places, lengths, keys, hands', () => {
    fc.assert(
      fc.property(sounding, (score) => {
        const { score: read, warnings } = readText(asMusicXml(score))
        const toDivisions = (ticks: number): number =>
          (ticks * divisionsOfAny) / read.ticksPerQuarter
        const lines = (
          all: readonly { start: number; length: number; key: number; hand: string }[],
        ) => all.map((n) => `${n.start}+${n.length} ${n.key} ${n.hand}`).toSorted()
        expect(
          lines(
            read.notes.map((n) => ({
              ...n,
              start: toDivisions(n.start),
              length: toDivisions(n.length),
            })),
          ),
        ).toEqual(lines(notesIn(score)))
        expect(warnings).toEqual([])
      }),
      { numRuns: 100 },
    )
  })

  test('has the same id as the Standard MIDI File of the same music, and the same names of notes', () => {
    fc.assert(
      fc.property(sounding.filter(noUnison), (score) => {
        const xml = readText(asMusicXml(score)).score
        const midi = readPiece(asMidi(score), 'any.mid')
        if (!midi.ok) throw new Error(midi.reason.kind)
        expect(midi.value.score.id).toBe(xml.id)
        expect(midi.value.score.notes.map((n) => n.id)).toEqual(xml.notes.map((n) => n.id))
      }),
      { numRuns: 100 },
    )
  })
})

/** Voices of a hand that meet on one key are one note of a MIDI file, or end each other. */
const noUnison = (score: AnyScore): boolean => {
  const notes = notesIn(score)
  return notes.every((a) =>
    notes.every(
      (b) =>
        a === b ||
        a.key !== b.key ||
        a.hand !== b.hand ||
        a.start >= b.start + b.length ||
        b.start >= a.start + a.length,
    ),
  )
}

describe('verovio’s time map', () => {
  let toolkit: VerovioToolkit
  beforeAll(async () => {
    toolkit = await openEngraverHere()
  })

  const begin = attributes()
  const two = attributes({ staves: 2 })
  test.each<[string, string]>([
    ['accidentals', piano(begin + voice('F#4/4 Bb4/4 Cb5/4 B#3/4'))],
    ['a chord and ties over bars', piano(begin + voice('C4+E4/16~'), voice('~C4+~E4/8 G4/8'))],
    ['voices', piano(begin + voice('C5/8 D5/8') + backup(16) + voice('E4/4 F4/12', { voice: 2 }))],
    [
      'a voice that begins later',
      piano(
        two +
          voice('C5/16', { staff: 1 }) +
          backup(16) +
          forward(8) +
          voice('C3/8', { voice: 5, staff: 2 }),
      ),
    ],
    [
      'triplets',
      piano(
        attributes({ divisions: 6 }) + voice('C4/2 D4/2 E4/2 F4/3 G4/3 A4/12', { divisions: 6 }),
      ),
    ],
    ['a pickup', piano(`|${begin}${voice('G4/4')}`, voice('C5/16'))],
    ['a divided bar', piano(begin + voice('C5/8'), `|${voice('D5/8')}`, voice('E5/16'))],
    [
      'divisions that change',
      piano(
        begin + voice('C4/8 D4/8'),
        '<attributes><divisions>8</divisions></attributes>' +
          voice('E4/16 F4/16', { divisions: 8 }),
      ),
    ],
    [
      'an octave shift',
      piano(
        begin +
          '<direction><direction-type><octave-shift type="down" size="8"/></direction-type><staff>1</staff></direction>' +
          voice('C6/8 D6/8') +
          '<direction><direction-type><octave-shift type="stop" size="8"/></direction-type><staff>1</staff></direction>',
      ),
    ],
    [
      'a change of time',
      piano(
        begin + voice('C4/16'),
        '<attributes><time><beats>3</beats><beat-type>8</beat-type></time></attributes>' +
          voice('D4/6'),
        voice('E4/6'),
      ),
    ],
  ])('agrees on %s', (_, text) => {
    expect(byUs(text)).toEqual(byVerovio(toolkit, text))
  })

  test('agrees on any score', () => {
    fc.assert(
      fc.property(sounding, (score) => {
        const text = asMusicXml(score)
        expect(byUs(text)).toEqual(byVerovio(toolkit, text))
      }),
      { numRuns: 40 },
    )
  })
})
