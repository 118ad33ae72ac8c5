import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { assessDifficulty, type Difficulty } from '@/difficulty/difficulty'
import { key, tick } from '@/music/units'
import { nameNotes } from '@/music/identity'
import { writeScore } from '../music/writeScore'
import { gradedKinds, grades, writeGraded, type Grade } from './graded'

/** Onsets of the right hand in each grade; the longest is some ten times the shortest. */
const lengths = {
  'longer with each grade': (grade: Grade) => 32 * 1.4 ** (grade - 1),
  'of one length': () => 128,
  'shorter with each grade': (grade: Grade) => 32 * 1.4 ** (8 - grade),
}

interface Assessed extends Difficulty {
  readonly grade: Grade
  readonly notes: number
}

const assessAll = (onsets: (grade: Grade) => number, at?: number): readonly Assessed[] =>
  gradedKinds.flatMap((kind) =>
    grades.map((grade) => {
      const score = writeGraded(kind, grade, 4 * Math.round(onsets(grade) / 4), at)
      return { grade, notes: score.notes.length, ...assessDifficulty(score) }
    }),
  )

/** Spearman's rank correlation with the grades: Pearson's of the ranks, equal ones sharing theirs. */
const rankCorrelation = (all: readonly Assessed[], of: (one: Assessed) => number): number => {
  const ranks = (values: readonly number[]): readonly number[] => {
    const sorted = values.toSorted((a, b) => a - b)
    return values.map((value) => (sorted.indexOf(value) + sorted.lastIndexOf(value)) / 2)
  }
  const [one, other] = [ranks(all.map(({ grade }) => grade)), ranks(all.map(of))]
  const middle = (all.length - 1) / 2
  const sum = (each: (i: number) => number): number => all.reduce((s, _, i) => s + each(i), 0)
  const [a, b] = [one, other].map((r) => (i: number) => (r[i] ?? NaN) - middle)
  if (!a || !b) return NaN
  return sum((i) => a(i) * b(i)) / Math.sqrt(sum((i) => a(i) ** 2) * sum((i) => b(i) ** 2))
}

describe.each(Object.entries(lengths))('exercises of eight grades, %s', (name, onsets) => {
  const all = assessAll(onsets)
  test('are ranked by their grades', () => {
    expect(rankCorrelation(all, ({ difficulty }) => difficulty)).toBeGreaterThan(0.93)
  })
  test('are so without what the length makes of it, too', () => {
    const bare = rankCorrelation(all, ({ difficulty, length }) => difficulty / length)
    expect(bare).toBeGreaterThan(0.95)
  })
  test.each(gradedKinds)('each %s is harder than that of the grade before', (kind) => {
    const k = gradedKinds.indexOf(kind) * grades.length
    const of = all.slice(k, k + grades.length).map(({ difficulty }) => difficulty)
    expect(of).toEqual(of.toSorted((a, b) => a - b))
  })
  test('differ from one grade to the next by no more than what it may be off', () => {
    for (const { difficulty, uncertainty } of all)
      expect(uncertainty).toBeGreaterThanOrEqual(0.4 * difficulty - 1e-9)
  })
  test('by their number of notes alone they are ranked as they were made', () => {
    const byNotes = rankCorrelation(all, ({ notes }) => notes)
    if (name === 'longer with each grade') expect(byNotes).toBeGreaterThan(0.95)
    if (name === 'of one length') expect(byNotes).toBeLessThan(0.7)
    if (name === 'shorter with each grade') expect(byNotes).toBeLessThan(-0.9)
  })
})

test('where the files say 120 quarters a minute of everything, the grades are found all the same', () => {
  for (const [name, least] of [
    ['longer with each grade', 0.94],
    ['of one length', 0.9],
  ] as const) {
    const all = assessAll(lengths[name], 120)
    const whole = rankCorrelation(all, ({ difficulty }) => difficulty)
    expect(whole).toBeGreaterThan(least)
    expect(whole).toBeGreaterThan(rankCorrelation(all, ({ local }) => local))
  }
})

test('what the length makes of a piece is told, and is never more than twice or less than half', () => {
  for (const [count, length] of [
    [4, 0.5],
    [300, 1],
    [4800, 2],
    [9000, 2],
  ] as const) {
    const score = writeScore({ right: Array.from({ length: count }, () => 'C5:1/4').join(' ') })
    const whole = assessDifficulty(score)
    expect(whole.length).toBeCloseTo(length, 9)
    const { difficulty, local, compass, signature } = whole
    expect(difficulty).toBeCloseTo(local ** 0.6 * length * compass * signature, 9)
  }
})

test('a note more is never easier', () => {
  const score = writeGraded('melody', 4, 48)
  const whole = assessDifficulty(score).difficulty
  const places = fc.record({
    at: fc.nat(score.notes.length - 1),
    up: fc.integer({ min: 3, max: 12 }),
  })
  fc.assert(
    fc.property(places, ({ at, up }) => {
      const note = score.notes[at]
      if (!note) throw new Error('there are so many notes')
      // A further key of the chord on the outer side of the hand, so that nothing else changes.
      const side = note.hand === 'right' ? 1 : -1
      const more = { ...note, key: key(note.key + side * up), start: tick(note.start) }
      const notes = [...score.notes, more].toSorted((a, b) => a.start - b.start || a.key - b.key)
      const named = nameNotes(notes, score.ticksPerQuarter)
      const denser = assessDifficulty({ ...score, notes: named }).difficulty
      expect(denser).toBeGreaterThanOrEqual(whole - 1e-9)
    }),
  )
})
