import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayAt, daysAfter, weekOf, type Day } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { byNeed, hardBars, hardChunks, pieceOnPage, type Span } from '@/review/teacherPage'
import { writeScore } from '../music/writeScore'
import { drillBegun, overruled, repetition, secure } from './session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
/** Noon of so many days after Thursday, 1 January 2026, in the seconds of the fixtures. */
const noon = (day: number): number => day * 86_400 + 43_200

/** 'ccf': repetitions of a chunk, ten seconds apart from noon on. */
const practise = (day: number, letters: string, chunk = 'a', rung = 72): JournalEvent[] => [
  drillBegun(noon(day), chunk),
  ...[...letters].map((letter, i) =>
    repetition(letter as 'c' | 'f' | 'b', noon(day) + (i + 1) * 10, {
      chunk,
      rung,
      flaws: letter === 'f' ? ['wrong 2 D4 D#4'] : [],
    }),
  ),
]

const page = (events: readonly JournalEvent[], span: Span) => {
  const sums = sumDays(events, dayOf)
  return pieceOnPage(
    sums.flatMap(({ chunks }) => chunks),
    sums.flatMap(({ pieces }) => pieces),
    span,
  )
}
const week = (first: string): Span => ({
  from: weekOf(first as Day),
  to: daysAfter(weekOf(first as Day), 6),
})
const newYear = week('2026-01-01')
const epiphany = week('2026-01-06')

const learnt = [
  ...practise(0, 'fccccc', 'a', 120),
  secure(noon(0) + 100),
  ...practise(1, 'c', 'a', 120),
  overruled(noon(1) + 50, 'raise'),
  ...practise(5, 'fb', 'a', 120),
  ...practise(5, 'b', 'b'),
]

test('the figures are of the span alone, how far a chunk has come follows from all days before its end', () => {
  const first = page(learnt, newYear)
  expect([first.tally, first.days]).toEqual([{ clean: 6, flawed: 1, brokenOff: 0 }, 2])
  expect(first.chunks.map(({ chunk, state }) => [chunk, state])).toEqual([['a', 'kept']])
  expect(first.overruled).toEqual([{ what: 'raise', times: 1 }])
  const second = page(learnt, epiphany)
  expect(second.tally).toEqual({ clean: 0, flawed: 1, brokenOff: 2 })
  expect(second.chunks.map(({ chunk, state }) => [chunk, state])).toEqual([
    ['a', 'slipped'],
    ['b', 'practised'],
  ])
  expect(second.overruled).toEqual([])
})

test('what became secure, was confirmed cold and slipped is told of the span in which it did', () => {
  expect(page(learnt.slice(0, 8), newYear).changes).toEqual({
    secure: ['a'],
    kept: [],
    slipped: [],
  })
  expect(page(learnt, newYear).changes).toEqual({ secure: [], kept: ['a'], slipped: [] })
  expect(page(learnt, epiphany).changes).toEqual({ secure: [], kept: [], slipped: ['a'] })
  // Neither right nor wrong: a cold repetition broken off confirms nothing.
  const asked = page([...learnt.slice(0, 9), ...practise(5, 'b', 'a', 120)], epiphany)
  expect(asked.changes).toEqual({ secure: [], kept: [], slipped: [] })
})

test('whatever was played, its weeks come to the whole', () => {
  const letters = fc.string({ unit: fc.constantFrom('c', 'f', 'b'), maxLength: 6 })
  fc.assert(
    fc.property(
      fc.array(fc.tuple(letters, fc.constantFrom('a', 'b')), { maxLength: 24 }),
      (days) => {
        const events = days.flatMap(([played, chunk], day) => practise(day, played, chunk))
        const weeks = [0, 7, 14, 21, 28].map((n) =>
          page(events, week(daysAfter('2026-01-01' as Day, n))),
        )
        const whole = page(events, { from: '2025-01-01' as Day, to: '2027-01-01' as Day })
        const sum = (of: (each: typeof whole) => number) =>
          weeks.reduce((n, each) => n + of(each), 0)
        expect(sum(({ repetitions }) => repetitions)).toBe(whole.repetitions)
        expect(sum(({ days: played }) => played)).toBe(whole.days)
        const flaws = ({ places }: typeof whole) => places.reduce((n, { times }) => n + times, 0)
        expect(sum(flaws)).toBe(flaws(whole))
      },
    ),
  )
})

test('bars of chunks that are not yet secure come first, then those with most flaws', () => {
  const score = writeScore({ right: 'C4 D4 E4 F4 G4 A4 B4 C5' })
  const wrong = (day: number, at: number, times: number, chunk: string): JournalEvent[] =>
    Array.from({ length: times }, (_, i) => {
      const { id, key } = score.notes[at] ?? { id: undefined, key: undefined }
      return {
        ...repetition('f', noon(day) + i * 10 + 5, { chunk }),
        flaws: id === undefined ? [] : [{ kind: 'wrong', onset: 0, notes: [id], written: key }],
      }
    })
  const events = [...wrong(0, 1, 9, 'a'), secure(noon(0) + 300, 'a'), ...wrong(1, 5, 4, 'b')]
  const review = page(events, newYear)
  expect(
    hardBars(score, review).map(({ barIndex, times, state }) => [barIndex, times, state]),
  ).toEqual([
    [1, 4, 'practised'],
    [0, 9, 'secure'],
  ])
  expect(hardChunks(review).map(({ chunk, times }) => [chunk.chunk, times])).toEqual([
    ['b', 4],
    ['a', 9],
  ])
})

test('a lesson asks for what slipped, then for what is least clean', () => {
  const { chunks } = page(
    [...learnt, ...practise(5, 'ccf', 'c'), ...practise(6, 'cff', 'd')],
    epiphany,
  )
  expect(byNeed(chunks).map(({ chunk }) => chunk)).toEqual(['a', 'b', 'd', 'c'])
})
