import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { assessDifficulty, type DifficultySettings } from '@/difficulty/difficulty'
import type { Score } from '@/music/music'
import { tempo } from '@/music/units'
import { writeScore } from '../music/writeScore'
import { line, whiteKey } from './exercises'

const whole = (score: Score, settings: DifficultySettings = {}): number =>
  assessDifficulty(score, settings).difficulty
const ofLine = (chords: readonly (readonly number[])[], length = '1/2'): number =>
  whole(writeScore({ right: line(chords, length) }))

/** Melodies on white keys that move by up to a sixth. */
const melody = fc
  .array(fc.integer({ min: -5, max: 5 }), { minLength: 8, maxLength: 40 })
  .map((moves) => {
    let step = 7
    return moves.map((move) => {
      step = Math.max(0, Math.min(14, step + move))
      return step
    })
  })

/** Each run assesses several pieces. */
const few = { numRuns: 30 }

describe('never easier', () => {
  test('when it is faster, as a whole and at the hardest place', () => {
    const factor = fc.double({ min: 1, max: 3, noNaN: true })
    fc.assert(
      fc.property(melody, melody, factor, (right, left, by) => {
        const score = writeScore({
          right: line(right.map((s) => [whiteKey(s)])),
          left: line(
            left.map((s) => [whiteKey(s - 14)]),
            '1/2',
          ),
        })
        const slow = assessDifficulty(score, { tempo: tempo(80) })
        const fast = assessDifficulty(score, { tempo: tempo(80 * by) })
        expect(fast.difficulty).toBeGreaterThanOrEqual(slow.difficulty - 1e-9)
        const peak = ({ spots }: typeof slow): number => Math.max(...spots.map((s) => s.difficulty))
        expect(peak(fast)).toBeGreaterThanOrEqual(peak(slow) - 1e-9)
      }),
      few,
    )
  })
  test('with a third added to each note', () => {
    fc.assert(
      fc.property(melody, (steps) => {
        const single = ofLine(steps.map((s) => [whiteKey(s)]))
        const double = ofLine(steps.map((s) => [whiteKey(s), whiteKey(s + 2)]))
        expect(double).toBeGreaterThanOrEqual(single)
      }),
      few,
    )
  })
  test('with more notes in each chord', () => {
    fc.assert(
      fc.property(melody, (steps) => {
        const chords = [1, 2, 3, 4].map((size) =>
          ofLine(steps.map((s) => [0, 7, 2, 4].slice(0, size).map((above) => whiteKey(s + above)))),
        )
        expect(chords).toEqual(chords.toSorted((a, b) => a - b))
      }),
      few,
    )
  })
  test('with twice as many notes in the same time', () => {
    fc.assert(
      fc.property(melody, (steps) => {
        const notes = steps.map((s) => [whiteKey(s)])
        expect(ofLine([...notes, ...notes], '1/4')).toBeGreaterThanOrEqual(ofLine(notes, '1/2'))
      }),
      few,
    )
  })
  test('with the other hand besides', () => {
    fc.assert(
      fc.property(melody, melody, (right, left) => {
        const alone = { right: line(right.map((s) => [whiteKey(s)])) }
        const both = {
          ...alone,
          left: line(
            left.slice(0, 8).map((s) => [whiteKey(s - 14)]),
            '1/8',
          ),
        }
        expect(whole(writeScore(both))).toBeGreaterThanOrEqual(whole(writeScore(alone)))
      }),
      few,
    )
  })
  test('when a leap to and fro is wider', () => {
    const leaps = [9, 11, 14, 16, 18, 21, 25, 28].map((steps) =>
      ofLine(Array.from({ length: 24 }, (_, i) => [whiteKey(i % 2 === 0 ? 0 : steps)])),
    )
    expect(leaps).toEqual(leaps.toSorted((a, b) => a - b))
  })
  test('when the chords are wider', () => {
    const chords = [4, 5, 6, 7, 8, 9].map((steps) =>
      ofLine(Array.from({ length: 16 }, () => [whiteKey(0), whiteKey(steps)])),
    )
    expect(chords).toEqual(chords.toSorted((a, b) => a - b))
  })
  test('for a smaller hand', () => {
    fc.assert(
      fc.property(melody, (steps) => {
        const score = writeScore({ right: line(steps.map((s) => [whiteKey(s), whiteKey(s + 7)])) })
        const [small, medium, large] = (['small', 'medium', 'large'] as const).map((span) =>
          whole(score, { span }),
        )
        expect(small).toBeGreaterThanOrEqual(medium ?? NaN)
        expect(medium).toBeGreaterThanOrEqual(large ?? NaN)
      }),
      few,
    )
  })
})

test('whatever stands in a score, the difficulty is a number and the spots lie in the piece', () => {
  const chord = fc.array(fc.integer({ min: 21, max: 108 }), { minLength: 1, maxLength: 6 })
  const part = fc.array(chord, { minLength: 1, maxLength: 20 })
  const length = fc.constantFrom('1/8', '1/3', '1/2', '1', '3')
  fc.assert(
    fc.property(part, part, length, length, (right, left, rightLength, leftLength) => {
      const score = writeScore({ right: line(right, rightLength), left: line(left, leftLength) })
      const { difficulty, uncertainty, spots } = assessDifficulty(score)
      expect([difficulty > 0, uncertainty > 0, spots.length > 0]).toEqual([true, true, true])
      expect(Number.isFinite(difficulty + uncertainty)).toBe(true)
      for (const { from, to, reasons } of spots) {
        expect([from >= 0, from < to, to <= score.end]).toEqual([true, true, true])
        expect(reasons.length).toBeGreaterThan(0)
      }
    }),
  )
})
