import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parseKey } from '@/music/pitch'
import type { Hand } from '@/music/music'
import { digitsOf, finger, fingerNotes, lineOf } from './fingers'

/**
 * Two octaves upward, both hands: major scales and broken chords from Beringer & Dunhill, "Manual of
 * Scales, Arpeggios and Broken Chords", 1900; minor scales and a few more are common practice.
 */
const rows = readFileSync(new URL('scaleFingerings.tsv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [tonic = '', mode = '', kind = '', hand = '', digits = '', notes = ''] = line.split('\t')
    return {
      name: `${tonic} ${mode} ${kind}`,
      hand: hand === 'left' ? 'left' : 'right',
      digits,
      notes,
    } as const
  })

/** The keys of 'C E G C' upward from the octave of middle C. */
const upward = (notes: string): number[] => {
  const keys: number[] = []
  for (const name of notes.split(' ')) {
    let key = parseKey(`${name}3`) ?? NaN
    while (key <= (keys.at(-1) ?? 0)) key += 12
    keys.push(key)
  }
  return keys
}

const fingersOf = (keys: readonly number[], hand: Hand): string =>
  digitsOf(fingerNotes(lineOf(keys, hand), { hand }).best?.notes ?? [])

describe('a run over two octaves', () => {
  test('stands in the table in both hands', () => {
    expect(rows).toHaveLength(164)
  })
  test.each(rows)('$name, $hand hand, goes up with $digits', ({ hand, digits, notes }) => {
    expect(fingersOf(upward(notes), hand)).toBe(digits)
  })
  test.each(rows)(
    '$name, $hand hand, goes down with the same backwards',
    ({ hand, digits, notes }) => {
      expect(fingersOf(upward(notes).toReversed(), hand)).toBe([...digits].toReversed().join(''))
    },
  )
  test.each(rows)('$name, $hand hand, turns at the top', ({ hand, digits, notes }) => {
    const keys = upward(notes)
    const down = [...digits].toReversed().join('').slice(1)
    expect(fingersOf([...keys, ...keys.toReversed().slice(1)], hand)).toBe(digits + down)
  })
})

describe('shorter and longer runs', () => {
  // Common practice, no source.
  test.each([
    ['an octave of C', 'right', 'C4 D4 E4 F4 G4 A4 B4 C5', '1 2 3 1 2 3 4 5'],
    ['an octave of C', 'left', 'C3 D3 E3 F3 G3 A3 B3 C4', '5 4 3 2 1 3 2 1'],
    ['an octave of B flat', 'right', 'Bb3 C4 D4 Eb4 F4 G4 A4 Bb4', '2 1 2 3 1 2 3 4'],
    ['a broken chord of an octave', 'right', 'C4 E4 G4 C5', '1 2 3 5'],
    [
      'two octaves and more of C',
      'right',
      'C4 D4 E4 F4 G4 A4 B4 C5 D5 E5 F5 G5 A5 B5 C6 D6 E6 F6',
      '1 2 3 1 2 3 4 1 2 3 1 2 3 4 1 2 3 4',
    ],
    ['semitones', 'right', 'D4 D#4 E4 F4 F#4 G4 G#4 A4 A#4 B4', '1 3 1 2 3 1 3 1 3 1'],
    ['semitones', 'left', 'D3 D#3 E3 F3 F#3 G3 G#3 A3 A#3 B3', '1 3 2 1 3 1 3 1 3 2'],
  ] as const)('%s, %s hand', (_, hand, line, digits) => {
    expect(finger(line, { hand })).toBe(digits)
  })
  test('five neighbouring notes are no run and take the five fingers', () => {
    expect(finger('C4 D4 E4 F4 G4')).toBe('1 2 3 4 5')
  })
  test('a rest ends a run', () => {
    expect(finger('C4 D4 E4 F4 G4 r A4 B4 C5 D5 E5')).toBe('1 2 3 4 5 1 2 3 4 5')
  })
})
