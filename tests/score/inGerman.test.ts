/** What is told of files, in both languages: the same data, put into words when somebody reads them. */
import { afterEach, describe, expect, test } from 'vitest'
import { german } from '@/german/german'
import { explainReadProblem, type ReadProblem } from '@/score/readProblem'
import { readPiece } from '@/score/readPiece'
import { explainWarning, type Warning } from '@/score/warning'
import { speak } from '@/text/text'
import { middleC, smf } from './smf'

afterEach(() => speak('en'))

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)
const problemOf = (bytes: Uint8Array): ReadProblem => {
  const read = readPiece(bytes, 'x')
  if (read.ok) throw new Error('it was read')
  return read.reason
}

test('a problem that was found before is told in the language that is spoken now', () => {
  const found = problemOf(smf([middleC]).slice(0, 30))
  expect(explainReadProblem(found)).toMatch(/track 1 should go on for 4 more bytes/)
  speak('de', german)
  expect(explainReadProblem(found)).toBe(
    'Die Datei bricht ab: Sie endet bei Byte 30, wo Spur 1 noch um 4 Bytes weitergehen müsste; noch einmal kopieren oder exportieren.',
  )
})

describe('on Deutsch', () => {
  test.each<[string, Uint8Array, string]>([
    [
      'one track too few',
      smf([middleC], { announced: 2, format: 1 }),
      'Die Datei bricht ab: Sie endet bei Byte 34, wo noch 1 Spur folgen müsste; noch einmal kopieren oder exportieren.',
    ],
    [
      'two tracks too few',
      smf([middleC], { announced: 3, format: 1 }),
      'Die Datei bricht ab: Sie endet bei Byte 34, wo noch 2 Spuren folgen müssten; noch einmal kopieren oder exportieren.',
    ],
    [
      'a value over 127',
      smf(['00 90 3C 90']),
      'Die Datei ist beschädigt: Bei Byte 23 hat in Spur 1 ein Ereignis einen Wert über 127; noch einmal kopieren oder exportieren.',
    ],
    [
      'typed music with a German pitch name',
      bytesOf('passagework 1 x\nC4 H4'),
      'Der Text ist ab Zeile 2, Spalte 4 nicht mehr zu verstehen: „H4“ ist kein Tonname: Buchstabe von A bis G, wo nötig # oder b, und die Oktave, wie C4 oder F#5 (das deutsche H heißt hier B, das deutsche B heißt Bb).',
    ],
    [
      'a bar of typed music that is too short',
      bytesOf('passagework 1 x\ntime 3/4\nleft: C3:1 D3:1/2 | C3'),
      'Der Text ist ab Zeile 3, Spalte 19 nicht mehr zu verstehen: Dieser Takt der linken Hand hat 1 1/2 Viertel, und ein 3/4-Takt fasst 3 Viertel.',
    ],
  ])('%s', (_, bytes, sentence) => {
    speak('de', german)
    expect(explainReadProblem(problemOf(bytes))).toBe(sentence)
  })

  test.each<[Warning, string]>([
    [
      { kind: 'guessedKey', fifths: 1 },
      'Die Datei hat keine Vorzeichnung; ein Kreuz ist aus ihren Noten erschlossen.',
    ],
    [
      { kind: 'guessedKey', fifths: -3 },
      'Die Datei hat keine Vorzeichnung; 3 B sind aus ihren Noten erschlossen.',
    ],
    [{ kind: 'drums', notes: 1 }, '1 Note auf dem Schlagzeugkanal (10) weggelassen.'],
    [{ kind: 'drums', notes: 7 }, '7 Noten auf dem Schlagzeugkanal (10) weggelassen.'],
    [
      { kind: 'partsTaken', taken: ['Klavier'], left: ['', 'Flöte'] },
      'Aus der Datei genommen: Klavier; weggelassen: ohne Namen, Flöte.',
    ],
    [
      { kind: 'damagedMark', track: 2, mark: 'key' },
      'Spur 2 hat eine beschädigte Vorzeichnung; sie ist weggelassen.',
    ],
  ])('%j', (warning, sentence) => {
    speak('de', german)
    expect(explainWarning(warning)).toBe(sentence)
  })
})
