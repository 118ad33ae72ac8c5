import type { Score } from '@/music/music'
import { tempo, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'
import { line } from './exercises'

/** Exercises of eight grades by rule. What each grade asks for is the order of method books and of examination boards: from memory. */
export const grades = [1, 2, 3, 4, 5, 6, 7, 8] as const
export type Grade = (typeof grades)[number]

export const gradedKinds = [
  'scale',
  'brokenChord',
  'melody',
  'chorale',
  'twoVoices',
  'doubleNotes',
] as const
export type GradedKind = (typeof gradedKinds)[number]

/** Onsets a second of the quicker hand; each grade a quarter faster, from two to ten. */
const speedOf = (grade: Grade): number => 2 * 1.26 ** (grade - 1)
/** Steps of the scale that the right hand moves over: a fifth at first, four octaves in the end. */
const rangeOf = (grade: Grade): number => [5, 8, 12, 15, 18, 22, 25, 29][grade - 1] ?? 29
const sharpsOf = (grade: Grade): number => [0, 1, 1, 2, 3, 4, 5, 6][grade - 1] ?? 6

const major = [0, 2, 4, 5, 7, 9, 11]
/** The key so many steps above a tonic of a major key, that below middle C where the range is wide. */
const stepIn = (sharps: number, step: number): number =>
  (sharps < 4 ? 60 : 48) +
  ((sharps * 7) % 12) +
  12 * Math.floor(step / 7) +
  (major[((step % 7) + 7) % 7] ?? 0)

const toAndFro = (range: number, i: number): number => {
  const place = i % (2 * range)
  return place <= range ? place : 2 * range - place
}

/** Always the same numbers, from 0 up to 1. */
const scatter = (i: number): number => (((Math.sin(i * 12.9898) * 43758.5453) % 1) + 1) % 1

type Steps = readonly (readonly number[])[]
interface Hands {
  readonly right: Steps
  readonly left: Steps
  /** How many onsets of the right hand come on one of the left. */
  readonly each: number
}

/** Some steps of each hand, as many onsets of the right as are asked for. */
const write: Readonly<Record<GradedKind, (grade: Grade, onsets: number) => Hands>> = {
  scale: (grade, onsets) => {
    const steps = rows(onsets, (i) => [toAndFro(rangeOf(grade), i)])
    return { right: steps, left: grade < 3 ? [] : down(steps, 14), each: 1 }
  },
  brokenChord: (grade, onsets) => {
    const steps = rows(onsets, (i) => {
      const place = toAndFro(Math.ceil(rangeOf(grade) / 2), i)
      return [7 * Math.floor(place / 3) + 2 * (place % 3)]
    })
    return { right: steps, left: grade < 4 ? [] : down(steps, 14), each: 1 }
  },
  melody: (grade, onsets) => {
    const each = grade < 3 ? 4 : grade < 6 ? 2 : 1
    const wide = grade < 4 ? 4 : 4 + 2 * (grade - 3)
    return {
      right: rows(onsets, (i) => [wander(i, rangeOf(grade))]),
      left: rows(onsets / each, (i) => [(i % 2 === 0 ? 0 : i % 4 === 1 ? wide : 2) - 14]),
      each,
    }
  },
  chorale: (grade, onsets) => {
    const chord = [0, 2, 4, 7].slice(0, Math.ceil(grade / 2))
    const roots = (i: number): number => wander(i, 4 + grade)
    return {
      right: rows(onsets / 2, (i) => chord.map((above) => roots(i) + above)),
      left: rows(onsets / 2, (i) =>
        [0, 7].slice(0, grade > 4 ? 2 : 1).map((a) => roots(i + 9) + a - 14),
      ),
      each: 1,
    }
  },
  twoVoices: (grade, onsets) => ({
    right: rows(onsets, (i) => [wander(i, rangeOf(grade))]),
    left: rows(onsets / (grade < 4 ? 2 : 1), (i) => [wander(i + 31, rangeOf(grade)) - 14]),
    each: grade < 4 ? 2 : 1,
  }),
  doubleNotes: (grade, onsets) => {
    const wide = grade < 4 ? 2 : grade < 6 ? 5 : 7
    return {
      right: rows(onsets, (i) => [0, wide].map((above) => toAndFro(rangeOf(grade), i) + above)),
      left: rows(onsets / 4, (i) => [wander(i, 5) - 14]),
      each: 4,
    }
  },
}

const rows = (count: number, at: (i: number) => readonly number[]): Steps =>
  Array.from({ length: Math.ceil(count) }, (_, i) => at(i))

const down = (steps: Steps, by: number): Steps => steps.map((row) => row.map((step) => step - by))

/** A line that goes by steps and small leaps within a range. */
const wander = (i: number, range: number): number =>
  Math.round(toAndFro(range, i * 2) * 0.5 + scatter(i) * range * 0.5)

/** An exercise with so many onsets in the right hand; at a tempo of its own, or at that. */
export const writeGraded = (kind: GradedKind, grade: Grade, onsets: number, at?: number): Score => {
  const { right, left, each } = write[kind](grade, onsets)
  const sharps = sharpsOf(grade)
  const keysOf = (steps: Steps): number[][] => steps.map((row) => row.map((s) => stepIn(sharps, s)))
  // In eighths at first, in sixteenths later, as it is written in such books.
  const value = grade < 4 ? 2 : 4
  return {
    ...writeScore({
      right: line(keysOf(right), `1/${value}`),
      left: line(keysOf(left), `${each}/${value}`),
      tempos: [{ start: tick(0), tempo: tempo(at ?? (speedOf(grade) * 60) / value) }],
    }),
    keys: [{ start: tick(0), fifths: sharps, mode: 'major' }],
  }
}
