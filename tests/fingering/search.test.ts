import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { spansOf } from '@/fingering/spans'
import { formatKey, isBlackKey } from '@/music/pitch'
import { key } from '@/music/units'
import { tellDifference, tellUnreachable } from '@/text/fingering'
import { costOf, digitsOf, finger, fingerNotes, fix, lineOf, mirrored } from './fingers'

/** Keys within a fifth of each other, so that fingers always reach. */
const nearKeys = fc.array(fc.integer({ min: 60, max: 67 }), { minLength: 2, maxLength: 4 })
const anyKeys = fc.array(fc.integer({ min: 48, max: 84 }), { minLength: 1, maxLength: 12 })

/** All rows of digits of a length. */
const everyWay = (length: number): string[] =>
  length === 0
    ? ['']
    : everyWay(length - 1).flatMap((digits) => ['1', '2', '3', '4', '5'].map((d) => digits + d))

describe('the search', () => {
  test('finds what trying every fingering finds', () => {
    fc.assert(
      fc.property(nearKeys, (keys) => {
        const notes = lineOf(keys)
        const found = fingerNotes(notes, { count: 3 })
        const practical = everyWay(keys.length)
          .map((digits) => fingerNotes(notes, { fixed: fix(notes, digits), count: 1 }).best)
          .filter((each) => each?.impractical === 0)
          .map((each) => each?.cost ?? NaN)
          .toSorted((a, b) => a - b)
        const costs = [found.best, ...found.alternatives].map((each) => each?.cost)
        expect(costs).toEqual(practical.slice(0, costs.length))
      }),
      { numRuns: 12 },
    )
  })

  test('gives a finger to every note, once', () => {
    fc.assert(
      fc.property(anyKeys, (keys) => {
        const notes = lineOf(keys)
        const { best } = fingerNotes(notes)
        expect(best?.notes.map(({ id }) => id)).toEqual(notes.map(({ id }) => id))
      }),
    )
  })

  test('gives the left hand what the right hand has in the mirror', () => {
    expect([61, 66].map((k) => isBlackKey(key(mirrored(k))))).toEqual([true, true])
    fc.assert(
      fc.property(nearKeys, (keys) => {
        const right = fingerNotes(lineOf(keys))
        const left = fingerNotes(lineOf(keys.map(mirrored), 'left'), { hand: 'left' })
        expect(left.best?.cost).toBe(right.best?.cost)
        expect(digitsOf(left.best?.notes ?? [])).toBe(digitsOf(right.best?.notes ?? []))
      }),
    )
  })

  test('says nothing where the hand has no notes', () => {
    const found = fingerNotes(lineOf([60, 62]), { hand: 'left' })
    expect(found).toEqual({ best: undefined, alternatives: [], unreachable: [] })
  })

  test('the costs of all onsets add up to the whole', () => {
    fc.assert(
      fc.property(anyKeys, (keys) => {
        const { best } = fingerNotes(lineOf(keys))
        const sum = best?.onsets.reduce((total, { cost }) => total + cost, 0)
        expect(sum).toBeCloseTo(best?.cost ?? NaN, 9)
      }),
    )
  })
})

describe('given digits', () => {
  test('are kept, whatever they are', () => {
    const digit = fc.constantFrom('.', '1', '2', '3', '4', '5')
    const some = anyKeys.chain((keys) =>
      fc.record({
        keys: fc.constant(keys),
        digits: fc.array(digit, { minLength: keys.length, maxLength: keys.length }),
      }),
    )
    fc.assert(
      fc.property(some, ({ keys, digits }) => {
        const notes = lineOf(keys)
        const { best } = fingerNotes(notes, { fixed: fix(notes, digits.join('')) })
        for (const [i, given] of digits.entries())
          if (given !== '.') expect(`${best?.notes[i]?.finger}`).toBe(given)
      }),
    )
  })
  test('stand above the scale table, in the whole run', () => {
    const keys = [60, 62, 64, 65, 67, 69, 71, 72]
    const notes = lineOf(keys)
    const { best } = fingerNotes(notes, { fixed: fix(notes, '...4') })
    expect(digitsOf(best?.notes ?? [])).toBe('12341234')
  })
  test('of the file are kept, and the person’s stand above them', () => {
    const notes = lineOf([60, 62, 64]).map((note) => ({ ...note, fingers: [2] as const }))
    const [first] = notes
    const fixed = new Map(first ? [[first.id, 1 as const]] : [])
    expect(digitsOf(fingerNotes(notes).best?.notes ?? [])).toBe('222')
    expect(digitsOf(fingerNotes(notes, { fixed }).best?.notes ?? [])).toBe('122')
  })
  test('that cross in a chord are kept', () => {
    const notes = lineOf([60, 64]).map((note) => ({
      ...note,
      start: lineOf([60])[0]?.start ?? note.start,
    }))
    const { best } = fingerNotes(notes, { fixed: fix(notes, '31') })
    expect(digitsOf(best?.notes ?? [])).toBe('31')
  })
})

describe('repeated groups', () => {
  test.each([
    ['C4 E4 G4 E4 C4 E4 G4 E4 C4 E4 G4 E4 C4 E4 G4 E4', 4],
    ['E5 C#5 D5 F#5 E5 C#5 D5 F#5 E5 C#5 D5 F#5', 4],
    ['C5 D5 E5 G4 F4 A4 C5 D5 E5 G4 F4 A4', 6],
  ])('%s has the same digits each time', (line, size) => {
    const digits = finger(line).split(' ')
    for (const [i, digit] of digits.entries()) expect(digit).toBe(digits[i % size])
  })
  test('have them pages apart, too', () => {
    const group = 'C5 Eb5 D5 F#5 G5 E5 Bb4 C5'
    const digits = finger(`G4 ${group} A4 B4 E4 D4 F5 E5 ${group} D5`).split(' ')
    expect(digits.slice(1, 9)).toEqual(digits.slice(15, 23))
  })
  test('differ where the same digits could not go on', () => {
    const { best } = fingerNotes(lineOf([72, 74, 76, 77, 79, 76, 60, 72, 74, 76, 77, 79, 91]))
    expect(best?.impractical).toBe(0)
  })
})

describe('the hand', () => {
  test('the spans of the three hands include each other', () => {
    const fingers = [1, 2, 3, 4, 5] as const
    const [small, medium, large] = [spansOf('small'), spansOf('medium'), spansOf('large')]
    for (const a of fingers)
      for (const b of fingers) {
        const [s, m, l] = [small.between(a, b), medium.between(a, b), large.between(a, b)]
        expect([s.maxPractical <= m.maxPractical, m.maxPractical <= l.maxPractical]).toEqual([
          true,
          true,
        ])
        expect([s.minPractical >= m.minPractical, m.minPractical >= l.minPractical]).toEqual([
          true,
          true,
        ])
        expect([
          s.maxComfortable <= m.maxComfortable,
          m.maxComfortable <= l.maxComfortable,
        ]).toEqual([true, true])
        expect([s.maxRelaxed <= m.maxRelaxed, m.maxRelaxed <= l.maxRelaxed]).toEqual([true, true])
      }
  })
  test('a larger hand never pays more', () => {
    fc.assert(
      fc.property(nearKeys, (keys) => {
        const cost = (span: 'small' | 'medium' | 'large'): number =>
          fingerNotes(lineOf(keys), { span }).best?.cost ?? NaN
        expect(cost('small')).toBeGreaterThanOrEqual(cost('medium'))
        expect(cost('medium')).toBeGreaterThanOrEqual(cost('large'))
      }),
    )
  })
  test('is never asked for what it cannot where the notes lie within a fifth', () => {
    fc.assert(
      fc.property(nearKeys, (keys) => {
        const found = fingerNotes(lineOf(keys), { span: 'small' })
        expect([found.best?.impractical, found.unreachable]).toEqual([0, []])
      }),
    )
  })
  test('is lifted at a leap, which is said', () => {
    const found = fingerNotes(lineOf([60, 84, 86, 88]))
    expect(digitsOf(found.best?.notes.slice(1) ?? [])).toBe('123')
    expect(found.unreachable.map(({ why }) => tellUnreachable(why, formatKey))).toEqual([
      'C4 to C6 is no step for one place of the hand: lift it',
    ])
  })
  test('settles anew after a rest', () => {
    expect(finger('G5 r C4 D4 E4 F4 G4').slice(2)).toBe('1 2 3 4 5')
  })
  test('costs more with a worse fingering', () => {
    expect(costOf([60, 62, 64, 65, 67], '12121')).toBeGreaterThan(
      costOf([60, 62, 64, 65, 67], '12345'),
    )
  })
})

describe('alternatives', () => {
  test('say how they differ from the best', () => {
    const { best, alternatives } = fingerNotes(lineOf([60, 62, 64, 65, 67]))
    expect(digitsOf(best?.notes ?? [])).toBe('12345')
    expect(alternatives.map(({ notes }) => digitsOf(notes))).toEqual(['12312', '12313', '12314'])
    expect(tellDifference(alternatives[0]?.difference ?? [])).toBe(
      'uses the weak fingers less, moves the hand more, draws the fingers together more',
    )
  })
  test('are as many as asked for, each another way', () => {
    const { best, alternatives } = fingerNotes(lineOf([60, 64, 67, 72, 67]), { count: 6 })
    const all = [best, ...alternatives].map((each) => digitsOf(each?.notes ?? []))
    expect([all.length, new Set(all).size]).toEqual([6, 6])
  })
  test('stand beside the usual digits of a scale though the model counts them cheaper', () => {
    const { best, alternatives } = fingerNotes(lineOf([63, 65, 67, 68, 70, 72, 74, 75]))
    expect(digitsOf(best?.notes ?? [])).toBe('31234123')
    expect(alternatives[0]?.cost).toBeLessThan(best?.cost ?? NaN)
  })
})
