import { describe, expect, test } from 'vitest'
import { parseKey } from '@/music/pitch'
import { tick } from '@/music/units'
import type { Part } from '@/score/part'
import { giveHands } from '@/score/partHands'
import { handOfName } from '@/score/partNames'
import { explainWarning } from '@/score/warning'

/** 'C4 E4+G4 A4': quarters of 4 ticks after each other, + within a chord. */
const part = (notes: string, name = '', program = 0): Part => ({
  name,
  program,
  notes: notes.split(' ').flatMap((chord, i) =>
    chord.split('+').map((pitch) => {
      const key = parseKey(pitch)
      if (key === undefined) throw new Error(pitch)
      return { start: tick(i * 4), length: tick(4), key }
    }),
  ),
})
/** The hands in the order of the parts' notes, one letter each, capital when the file says so. */
const hands = (...parts: Part[]): string =>
  giveHands(parts)
    .notes.map((n) => (n.handFrom === 'file' ? n.hand[0]?.toUpperCase() : n.hand[0]))
    .join('')

describe('names of parts (common practice, no source)', () => {
  test.each([
    ['right hand', 'right'],
    ['Piano RH', 'right'],
    ['R.H.', 'right'],
    ['Treble', 'right'],
    ['Main droite', 'right'],
    ['upper staff', 'right'],
    ['left', 'left'],
    ['LH', 'left'],
    ['l. h.', 'left'],
    ['Bass clef', 'left'],
    ['lower_2', 'left'],
    ['linke Hand', 'left'],
    ['Piano', undefined],
    ['', undefined],
    ['Bright Strings', undefined],
    ['Rhodes', undefined],
    ['left and right', undefined],
  ])('%j tells %s', (name, hand) => {
    expect(handOfName(name)).toBe(hand)
  })
})

describe('two parts', () => {
  test('go by their names, even when they lie the other way round', () => {
    expect(hands(part('C3', 'right'), part('C5', 'left'))).toBe('RL')
  })
  test('of which one has a name: the other takes the other hand', () => {
    expect(hands(part('C3', ''), part('C5', 'left hand'))).toBe('RL')
  })
  test('without names, or with the same one, go by which lies higher', () => {
    expect(hands(part('C3'), part('C5'))).toBe('LR')
    expect(hands(part('C5', 'treble'), part('C6', 'treble'))).toBe('LR')
  })
})

describe('one part', () => {
  test('with a name belongs to that hand', () => {
    expect(hands(part('C3 D3', 'right hand'))).toBe('RR')
  })
  test('without one is left to inference, and stands at a split at middle C', () => {
    expect(hands(part('B3+C4'))).toBe('lr')
  })
})

describe('more parts', () => {
  test('that all name hands are all taken', () => {
    expect(hands(part('C5', 'RH 1'), part('A4', 'RH 2'), part('C3', 'LH'))).toBe('RRL')
  })
  test('of other instruments are left out when a piano is there, with a warning', () => {
    const parts = [part('C6', 'Flute', 73), part('C5', 'Piano'), part('C3', 'Piano')]
    expect(hands(...parts)).toBe('RL')
    expect(giveHands(parts).warnings.map(explainWarning)).toEqual([
      'Parts of other instruments left out: Flute.',
    ])
  })
  test('without names are taken together and left to inference, with a warning', () => {
    const parts = [part('C5'), part('G4'), part('E3'), part('C3')]
    expect(
      hands(...parts)
        .split('')
        .toSorted()
        .join(''),
    ).toBe('llrr')
    expect(giveHands(parts).warnings).toHaveLength(1)
  })
  test('without notes do not count', () => {
    const silent: Part = { name: 'left hand', program: 0, notes: [] }
    expect(hands(silent, part('C3'), part('C5'))).toBe('LR')
    expect(hands(silent)).toBe('')
  })
})
