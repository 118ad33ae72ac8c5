import { describe, expect, test } from 'vitest'
import { compareFingerings, findImpossible } from '@/fingering/compare'
import { spansOf, type HandReach } from '@/fingering/spans'
import type { Finger } from '@/music/music'
import { formatKey } from '@/music/pitch'
import type { NoteId } from '@/music/units'
import { tellDifference, tellImpossible, tellUnreachable } from '@/text/fingering'
import { writeScore } from '../music/writeScore'
import { costOf, fingerNotes, fix, toFinger } from './fingers'

/** 'C4 E4+G4' with '1 2+5': a dot leaves a note open. */
const impossible = (line: string, digits: string, span: HandReach = 'medium'): string => {
  const { notes, ticksPerQuarter } = writeScore({ right: line })
  const given = digits.split(/[ +]/)
  const fixed = new Map<NoteId, Finger>(
    notes.flatMap(({ id }, i) =>
      given[i] === '.' ? [] : [[id, toFinger(given[i] ?? '')] as const],
    ),
  )
  return findImpossible(notes, { hand: 'right', ticksPerQuarter, span }, fixed)
    .map(({ why }) => tellImpossible(why))
    .join('; ')
}

// Beyond the practical spans of Parncutt et al. 1997, table 1: 2-3 five semitones, 1-5 fifteen, 3-4 four.
describe('what cannot be is pointed out', () => {
  test.each([
    ['C4+E4', '1+3', '', 'a third by 1 and 3'],
    ['C4+E4', '3+3', '3 on two keys at once', 'one finger twice in a chord'],
    ['C4+G4', '2+3', '2 and 3 over 7 semitones, where they span 5', 'a stretch beyond two fingers'],
    ['C4+E4', '3+1', '', 'the thumb under a finger is narrow, but can be'],
    ['C4+G4', '3+2', '3 and 2 over 7 semitones, where they span 5', 'crossed and far'],
    ['C4+D4', '3+2', '3 and 2 would have to cross', 'crossed'],
    ['C4 G4', '2 3', '2 and 3 over 7 semitones, where they span 5', 'from one note to the next'],
    ['C4 C5', '5 1', '5, then 1: the hand has to jump', 'the hand moves within its own reach'],
    ['C4 C6', '5 1', '', 'a leap: the hand is lifted, whatever the fingers'],
    ['E4 F4', '3 1', '', 'the thumb goes under'],
    ['C4 D4', '2 2', '', 'one finger on two keys in turn'],
    ['C4+G4', '.+3', '', 'what has no digit'],
  ])('%s by %s: %s (%s)', (line, digits, expected) => {
    expect(impossible(line, digits)).toBe(expected)
  })
  test('by the reach of the person: a ninth for a hand that was measured at an octave', () => {
    expect(impossible('C4+D5', '1+5')).toBe('')
    expect(impossible('C4+D5', '1+5', 12)).toBe('1 and 5 over 14 semitones, where they span 12')
  })
})

describe('versions beside each other', () => {
  const { notes, ticksPerQuarter } = writeScore({ right: 'C4 D4 E4 F4 G4 A4 B4 C5' })
  const settings = { hand: 'right', ticksPerQuarter } as const
  const compare = (...digits: readonly string[]): readonly string[] =>
    compareFingerings(
      notes,
      settings,
      digits.map((each) => fix(notes, each)),
    ).map(({ difference }) => tellDifference(difference ?? []))

  test('the first costs the same as itself, others are said to differ in words', () => {
    const [own, other] = compare('12312345', '12345345')
    expect(own).toBe('costs the hand the same')
    expect(other).toMatch(/stretches more/)
    expect(other).toMatch(/uses the weak fingers more/)
  })
  test('open notes take the best digits that go with those that stand', () => {
    expect(compare('12312345', '123.....')).toEqual([
      'costs the hand the same',
      'costs the hand the same',
    ])
  })
  test('the digits of the file do not speak for another version', () => {
    const bare = notes.map((note) => ({ ...note, fingers: [toFinger(5)] }))
    expect(compareFingerings(bare, settings, [fix(notes, '12312345'), new Map()])[1]).toEqual({
      difference: [],
      impossible: [],
    })
  })
  test('the words go with the costs of the model', () => {
    const keys = notes.map(({ key }) => key)
    expect(costOf(keys, '12345345')).toBeGreaterThan(costOf(keys, '12312345'))
  })
})

// The sizes of Balliauw et al. 2017; what was measured lies between them.
test.each([
  [11, 11],
  [13, 13],
  [14, 14],
  [19, 19],
] as const)('a hand that was measured at %i semitones is asked for no more', (reach, widest) => {
  const spans = spansOf(reach)
  expect(spans.widestChord).toBe(widest)
  const pairs = ([1, 2, 3, 4] as const).flatMap((one) =>
    ([2, 3, 4, 5] as const)
      .filter((two) => two > one)
      .map((two) => spans.between(one, two).maxPractical),
  )
  expect(Math.max(...pairs)).toBeLessThanOrEqual(reach)
})

test('what is wider than the measured hand is told, with a way out', () => {
  const { notes } = writeScore({ right: 'C4+D5' })
  const { unreachable } = fingerNotes(notes, { span: 12 })
  expect(unreachable.map(({ why }) => tellUnreachable(why, formatKey))).toEqual([
    'the chord spans 14 semitones, more than an octave: roll it, or give a note to the other hand',
  ])
  expect(fingerNotes(notes, { span: 14 }).unreachable).toEqual([])
})
