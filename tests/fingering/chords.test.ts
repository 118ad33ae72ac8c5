import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatKey } from '@/music/pitch'
import { key, noteId, tick } from '@/music/units'
import { tellUnreachable } from '@/text/fingering'
import { writeScore } from '../music/writeScore'
import { finger, fingerNotes, showDigits } from './fingers'

describe('chords', () => {
  // The usual fingers of triads and octaves: common practice, no source.
  test.each([
    ['C4+E4+G4', '135'],
    ['C4+E4+G4+C5', '1235'],
    ['E4+G4+C5+E5', '1245'],
    ['C4+C5', '15'],
    ['C4+E4', '13'],
    ['C4+G4', '15'],
  ])('%s alone is taken by %s', (line, digits) => {
    const score = writeScore({ right: line })
    const { best, alternatives } = fingerNotes(score.notes)
    const cheap = [best, ...alternatives].filter(
      (each) => (each?.cost ?? NaN) <= (best?.cost ?? NaN) + 1,
    )
    expect(cheap.map((each) => each?.notes.map((note) => note.finger).join(''))).toContain(digits)
  })
  test('scales in thirds use other fingers for each', () => {
    expect(finger('C4+E4:1/2 D4+F4:1/2 E4+G4:1/2 F4+A4:1/2 G4+B4:1/2 A4+C5:1/2')).toBe(
      '13 24 35 13 24 35',
    )
  })
  test('scales in octaves keep thumb and little finger on white keys', () => {
    expect(finger('C4+C5 D4+D5 E4+E5 F4+F5 G4+G5')).toBe('15 15 15 15 15')
  })
  test('the same chord again keeps its fingers', () => {
    const digits = finger('C4+E4+G4 C4+E4+G4 C4+E4+G4').split(' ')
    expect(new Set(digits).size).toBe(1)
  })
  test('the left hand holds the mirror image: the little finger is below', () => {
    expect(finger('C3+E3+G3+C4', { hand: 'left' })).toBe('5321')
  })
  test('fingers of a chord lie in the order of the keys, the thumb inside', () => {
    const chord = fc.uniqueArray(fc.integer({ min: 60, max: 72 }), { minLength: 2, maxLength: 5 })
    fc.assert(
      fc.property(fc.array(chord, { minLength: 1, maxLength: 6 }), (chords) => {
        const notes = chords.flatMap((keys, i) =>
          keys.map((k) => ({
            id: noteId(`n${i}k${k}`),
            key: key(k),
            start: tick(i * 480),
            length: tick(480),
            hand: 'right' as const,
          })),
        )
        const found = fingerNotes(notes.map((note) => ({ ...note, handFrom: 'file', barIndex: 0 })))
        const fingers = new Map(found.best?.notes.map((each) => [each.id, each.finger]))
        for (const [i, keys] of chords.entries()) {
          const row = keys.toSorted((a, b) => a - b).map((k) => fingers.get(noteId(`n${i}k${k}`)))
          expect(row).toEqual([...new Set(row)].toSorted((a, b) => (a ?? 0) - (b ?? 0)))
        }
      }),
    )
  })
})

describe('two voices in a hand', () => {
  test('the little finger holds while the others move below it', () => {
    const score = writeScore({ right: 'C5:4', left: 'E4 F4 G4 F4' })
    const notes = score.notes.map((note) => ({ ...note, hand: 'right' as const }))
    const found = fingerNotes(notes)
    expect(found.best?.impractical).toBe(0)
    const [bottom, top, ...moving] = found.best?.notes.map((each) => each.finger) ?? []
    expect([bottom, top]).toEqual([1, 5])
    expect(moving.every((digit) => digit < 5)).toBe(true)
  })
  test('a note that only overlaps the next is not held', () => {
    const score = writeScore({ right: 'C4 E4 G4' })
    const overlapping = score.notes.map((note) => ({ ...note, length: tick(600) }))
    const both = [score.notes, overlapping].map((notes) => fingerNotes(notes).best?.cost)
    expect(both[0]).toBe(both[1])
  })
  test('two voices that meet on a key share the finger', () => {
    const [note] = writeScore({ right: 'C4' }).notes
    if (!note) throw new Error('there is a note')
    const twin = { ...note, id: noteId('n0k60b') }
    const found = fingerNotes([note, twin])
    expect(found.best?.notes.map(({ finger: digit }) => digit)).toEqual([1, 1])
  })
  test('grace notes come one by one before their main note', () => {
    const score = writeScore({ right: '(D4) C4 E4' })
    const [main, grace, next] = showDigits(score, fingerNotes(score.notes)).split(' ')
    expect([Number(main) < Number(grace), Number(main) < Number(next)]).toEqual([true, true])
  })
})

describe('what the hand does not hold', () => {
  // An octave, a ninth, a tenth: the widest spans of small, medium and large hands in Balliauw et al. 2017.
  test.each([
    ['small', 'C4+C5', 0],
    ['small', 'C4+D5', 1],
    ['medium', 'C4+D5', 0],
    ['medium', 'C4+E5', 1],
    ['large', 'C4+E5', 0],
    ['large', 'C4+F5', 1],
  ] as const)('a %s hand at %s: %d chords too wide', (span, line, count) => {
    const { unreachable } = fingerNotes(writeScore({ right: line }).notes, { span })
    expect(unreachable).toHaveLength(count)
    for (const { why } of unreachable)
      expect(tellUnreachable(why, formatKey)).toMatch(/: roll it, or give a note/)
  })
  test('six keys for five fingers: the thumb takes two, and it is said', () => {
    const score = writeScore({ right: 'C4+D4+E4+F4+G4+A4' })
    const found = fingerNotes(score.notes)
    expect(showDigits(score, found)).toBe('112345')
    expect(found.unreachable.map(({ why }) => tellUnreachable(why, formatKey))).toEqual([
      'the chord has 6 keys for five fingers: roll it, or give a note to the other hand',
    ])
  })
})
