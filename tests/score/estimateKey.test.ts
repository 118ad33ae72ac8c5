import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import listed from '@samples/samples.json'
import { parseKey } from '@/music/pitch'
import { key, tick } from '@/music/units'
import { estimateKey } from '@/score/estimateKey'
import { readPiece } from '@/score/readPiece'
import { mark, smf } from './smf'
import { explainWarning } from '@/score/warning'

const quarters = (names: string) =>
  names.split(' ').map((name) => ({ key: parseKey(name) ?? key(0), length: tick(1) }))
const show = (names: string): string => {
  const found = estimateKey(quarters(names))
  return found ? `${found.fifths} ${found.mode}` : 'none'
}

/** Scales with their tonic chord: the signatures of the circle of fifths (common practice, no source). */
describe('the key signature that the notes suggest', () => {
  test.each([
    ['C4 D4 E4 F4 G4 A4 B4 C5 C4 E4 G4 C5', '0 major'],
    ['G4 A4 B4 C5 D5 E5 F#5 G5 G4 B4 D5 G5', '1 major'],
    ['E4 F#4 G#4 A4 B4 C#5 D#5 E5 E4 G#4 B4 E5', '4 major'],
    ['Eb4 F4 G4 Ab4 Bb4 C5 D5 Eb5 Eb4 G4 Bb4 Eb5', '-3 major'],
    ['A4 B4 C5 D5 E5 F5 G#5 A5 A4 C5 E5 A5', '0 minor'],
    ['D4 E4 F4 G4 A4 Bb4 C#5 D5 D4 F4 A4 D5', '-1 minor'],
    ['C4 D4 E4 F4 G4', 'none'],
    ['C4 C#4 D4 D#4 E4 F4 F#4 G4 G#4 A4 A#4 B4', 'none'],
  ])('%s -> %s', (names, expected) => {
    expect(show(names)).toBe(expected)
  })

  test.each(listed.map(({ file, title }) => [title, file]))(
    '%s: what its notes suggest is what its file says',
    (_, file) => {
      const read = readPiece(new Uint8Array(readFileSync(`sample-midi/${file}`)), file)
      if (!read.ok) throw new Error(file)
      const { keys, notes: all } = read.value.score
      expect(estimateKey(all)).toMatchObject({ fifths: keys[0]?.fifths, mode: keys[0]?.mode })
    },
  )

  test('transposing the notes transposes the key', () => {
    for (let up = 0; up < 12; up++) {
      const moved = quarters('C4 D4 E4 F4 G4 A4 B4 C5 C4 E4 G4 C5').map(({ key: k, length }) => ({
        key: key(k + up),
        length,
      }))
      const fifths = estimateKey(moved)?.fifths ?? NaN
      expect((((fifths * 7 - up) % 12) + 12) % 12).toBe(0)
    }
  })

  test('a file without one gets it, and says so; one with its own keeps it', () => {
    // A G major scale up and down in quarters of 96 ticks.
    const scale = '43 45 47 48 4A 4C 4E 4F 4E 4C 4A 48 47 45 43'
      .split(' ')
      .map((k) => `00 90 ${k} 40 60 80 ${k} 00`)
      .join(' ')
    const name = mark('03', 'right hand')
    const without = readPiece(smf([`${name} ${scale}`]), 'a.mid')
    const flats = readPiece(smf([`00 FF 59 02 FD 00 ${name} ${scale}`]), 'a.mid')
    if (!without.ok || !flats.ok) throw new Error('not read')
    expect(without.value.score.keys).toEqual([{ start: 0, fifths: 1, mode: 'major' }])
    expect(without.value.warnings.map(explainWarning)).toEqual([
      'The file has no key signature; one sharp is inferred from its notes.',
    ])
    expect(flats.value.score.keys).toEqual([{ start: 0, fifths: -3, mode: 'major' }])
  })
})
