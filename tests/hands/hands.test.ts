import { describe, expect, test } from 'vitest'
import { inferHands } from '@/hands/hands'
import { nameNotes } from '@/music/identity'
import type { Note, Score } from '@/music/music'
import { parseKey } from '@/music/pitch'
import { pieceId, tick } from '@/music/units'

/** 'C4 E4+G4 A4': quarters of 4 ticks after each other, + within a chord, lowest first; a capital L or R: the file says so. */
const score = (text: string): Score => {
  const notes = text.split(' ').flatMap((chord, i) =>
    chord.split('+').map((name): Omit<Note, 'id'> => {
      const [, known, pitch = ''] = /^([LR]?)(.*)$/.exec(name) ?? []
      const key = parseKey(pitch)
      if (key === undefined) throw new Error(pitch)
      return {
        start: tick(i * 4),
        length: tick(4),
        key,
        barIndex: 0,
        hand: known === 'L' ? 'left' : 'right',
        handFrom: known ? 'file' : 'inferred',
      }
    }),
  )
  const bar = { number: 1, start: tick(0), length: tick(16), time: { beats: 4, beatType: 4 } }
  return {
    id: pieceId('p'),
    title: '',
    ticksPerQuarter: 4,
    bars: [bar],
    tempos: [],
    keys: [],
    notes: nameNotes(notes, 4),
    end: tick(16),
  }
}
const hands = (text: string): string =>
  inferHands(score(text))
    .notes.map((n) => n.hand[0])
    .join('')

describe('where the file does not say the hand', () => {
  test('each onset is split, the lower keys to the left hand', () => {
    expect(hands('C3+C5 E3+D5 G3+E5')).toBe('lrlrlr')
  })
  test('chords of close keys are not torn apart', () => {
    expect(hands('C3+G4+B4+D5 G2+G4+C5+E5')).toBe('lrrrlrrr')
  })
  test('a hand keeps its line when it passes middle C', () => {
    expect(hands('C3+E4 C3+D4 C3+C4 C3+B3 C3+A3')).toBe('lrlrlrlrlr')
  })
  test('a low line alone is for the left hand, a high one for the right', () => {
    expect(hands('C2 G2 C3 E3')).toBe('llll')
    expect(hands('C5 G5 C6 E6')).toBe('rrrr')
  })
  test('a thousand keys at once are split at once', () => {
    const cluster = Array.from({ length: 500 }, () => 'C3+C5').join('+')
    expect(hands(`${cluster} ${cluster}`)).toHaveLength(2000)
  })
})

test('what the file says stays, and names stay', () => {
  const before = score('LC5+RC3 LC5+RC3')
  expect(inferHands(before)).toBe(before)
  expect(hands('LC6+C2+C6')).toBe('llr')
  const open = score('C3+C5')
  expect(inferHands(open).notes.map((n) => n.id)).toEqual(open.notes.map((n) => n.id))
})
