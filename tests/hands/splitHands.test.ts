import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { splitHands } from '@/hands/splitHands'
import { key, noteId, tick } from '@/music/units'
import { astray, type Written } from './sharing'

const times = (count: number, ...words: readonly string[]): string =>
  Array.from({ length: count }, () => words.join(' ')).join(' ')

/** What the hands play in pieces of common kinds; our own inventions. */
const written: Readonly<Record<string, Written>> = {
  'a melody over an Alberti bass': {
    left: [times(4, 'C3/.5 G3/.5 E3/.5 G3/.5 D3/.5 G3/.5 F3/.5 G3/.5')],
    right: [times(2, 'E5/2 D5 B4 C5 D5 E5/1.5 D5/.5 G5/2 F5/2 E5/4')],
  },
  'an Alberti bass that rises above middle C': {
    left: [times(3, 'G3/.5 D4/.5 B3/.5 D4/.5 G3/.5 E4/.5 C4/.5 E4/.5')],
    right: [times(3, 'G5/2 A5/2')],
  },
  'a melody over chords': {
    left: [times(3, 'C3 E3+G3+C4 G2 F3+G3+B3')],
    right: [times(3, 'E5 C5 D5/.5 E5/.5 F5')],
  },
  'repeated chords below a melody': {
    left: [times(8, 'A3+C4+E4/.5 A3+C4+E4/.5')],
    right: [times(2, 'A4/1.5 B4/.5 C5/2 E5/1.5 D5/.5 C5/2')],
  },
  'chords of both hands': {
    left: [times(2, 'C3+G3 F2+C3 G2+G3 C3+E3')],
    right: [times(2, 'E4+G4+C5 F4+A4+C5 F4+G4+B4 E4+G4+C5')],
  },
  'octaves of the right hand over tenths of the left': {
    left: [times(2, 'C3+E4 D3+F4 E3+G4 F3+A4')],
    right: [times(2, 'G4+G5 A4+A5 C5+C6 D5+D6')],
  },
  'both hands in the treble': {
    left: [times(3, 'C5/.5 G5/.5 E5/.5 G5/.5 B4/.5 G5/.5 D5/.5 G5/.5')],
    right: [times(3, 'C6/2 D6/2')],
  },
  'both hands in the bass': {
    left: [times(3, 'C2/2 G1/2')],
    right: [times(3, 'E3/.5 G3/.5 C4/.5 G3/.5 D3/.5 F3/.5 B3/.5 F3/.5')],
  },
  'two voices in the right hand': {
    left: [times(2, 'C3/2 G3/2 A2/2 E3/2')],
    right: [times(2, 'G5 F5 E5 D5 E5 D5 C5 B4'), times(2, 'E5/2 C5/2 C5/2 G4/2')],
  },
  'a run that the left hand gives to the right one in the middle': {
    left: ['C2/.25 D2/.25 E2/.25 F2/.25 G2/.25 A2/.25 B2/.25 C3/.25 r/8 C2/2'],
    right: ['r/2 C5/.25 D5/.25 E5/.25 F5/.25 G5/.25 A5/.25 B5/.25 C6/.25 C6/2'],
  },
  'a left hand that goes on below middle C while the right one rests': {
    left: [times(4, 'C3/.5 E3/.5 G3/.5 C4/.5 G3/.5 E3/.5 C3/.5 G3/.5')],
    right: ['E5/4 r/8 G5/4'],
  },
  'hands that come near after a long time far apart': {
    left: [`${times(30, 'C2 E2 G2 F2')} ${times(2, 'C3/.5 G3/.5 E4/.5 G3/.5')}`],
    right: [`${times(30, 'C6 A5 G5 B5')} ${times(2, 'E5/2')}`],
  },
  'an accompaniment that passes over a held note': {
    left: [times(4, 'C3/.5 G3/.5 E4/.5 G3/.5 C3/.5 A3/.5 F4/.5 A3/.5')],
    right: [times(4, 'D4/4')],
  },
}

describe('notes come back to the hand that they were written for', () => {
  test.for(Object.entries(written))('%s', ([, hands]) => {
    expect(astray(hands)).toEqual([])
  })
})

interface Struck {
  readonly start: number
  readonly length: number
  readonly key: number
}

/** L or R for each note; sixteenths. */
const share = (notes: readonly Struck[], ticksPerQuarter = 4): readonly ('L' | 'R')[] => {
  const times = ticksPerQuarter / 4
  const hands = splitHands(
    notes.map((note, i) => ({
      id: noteId(`n${i}`),
      start: tick(note.start * times),
      length: tick(note.length * times),
      key: key(note.key),
    })),
    ticksPerQuarter,
  )
  return notes.map((_, i) => (hands[i] === 'left' ? 'L' : 'R'))
}

const sorted = (notes: readonly Struck[]): readonly Struck[] =>
  notes.toSorted((a, b) => a.start - b.start || a.key - b.key)

const anyNotes = fc
  .array(
    fc.record({
      start: fc.integer({ min: 0, max: 30 }),
      length: fc.integer({ min: 1, max: 20 }),
      key: fc.integer({ min: 21, max: 108 }),
    }),
    { minLength: 1, maxLength: 80 },
  )
  .map(sorted)

/** The keys of each onset by hand. */
const onsetsOf = (notes: readonly Struck[]): readonly Record<'L' | 'R', number[]>[] => {
  const hands = share(notes)
  const onsets = new Map<number, Record<'L' | 'R', number[]>>()
  for (const [i, note] of notes.entries()) {
    const onset = onsets.get(note.start) ?? { L: [], R: [] }
    onset[hands[i] ?? 'R'].push(note.key)
    onsets.set(note.start, onset)
  }
  return [...onsets.values()]
}

const isReached = (keys: readonly number[]): boolean =>
  keys.length <= 5 && (keys.at(-1) ?? 0) - (keys[0] ?? 0) <= 16

describe('whatever the notes', () => {
  test('in an onset no key of the left hand lies above one of the right', () => {
    fc.assert(
      fc.property(anyNotes, (notes) => {
        for (const { L, R } of onsetsOf(notes))
          expect(Math.max(...L, 0)).toBeLessThanOrEqual(Math.min(...R, 127))
      }),
    )
  })
  test('no hand strikes more than five keys or beyond a tenth where both can share them', () => {
    fc.assert(
      fc.property(anyNotes, (notes) => {
        for (const { L, R } of onsetsOf(notes)) {
          const keys = [...L, ...R]
          const can = keys.some((_, i) => isReached(keys.slice(0, i)) && isReached(keys.slice(i)))
          if (can) expect([isReached(L), isReached(R)]).toEqual([true, true])
        }
      }),
    )
  })
  test('the resolution of the file is of no account', () => {
    fc.assert(
      fc.property(anyNotes, (notes) => {
        expect(share(notes, 960)).toEqual(share(notes, 4))
      }),
    )
  })
})

test('keys held without end, and more keys at once than there are fingers, are all shared', () => {
  const held = Array.from({ length: 3000 }, (_, i) => ({
    start: i >> 1,
    length: 1e6,
    key: 40 + (i % 2) * 24 + (i % 11),
  }))
  const all = Array.from({ length: 3000 }, (_, i) => ({ start: 2000, length: 4, key: i % 128 }))
  const hands = share(sorted([...held, ...all]))
  expect(hands.filter((hand) => hand === 'L').length).toBeGreaterThan(1500)
  expect(hands.filter((hand) => hand === 'R').length).toBeGreaterThan(1500)
})
