import { expect, test } from 'vitest'
import { dayAt, type Day } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { reviewPiece } from '@/review/pieceReview'
import { standingSince, standPieces } from '@/review/standings'
import { drillBegun, pieceAdded, repetition, secure } from './session'

/** Noon of so many days after 1 January 2026, in the seconds of the fixtures. */
const noon = (day: number): number => day * 86_400 + 43_200

const practise = (day: number, letters: string, chunk: string, rung: number): JournalEvent[] => [
  drillBegun(noon(day), chunk, 120),
  ...[...letters].map((letter, i) =>
    repetition(letter as 'c' | 'f' | 'b', noon(day) + (i + 1) * 10, { chunk, rung }),
  ),
]

const events = [
  pieceAdded('Morning Steps'),
  ...practise(0, 'ccccc', 'a', 120),
  secure(noon(0) + 100, 'a'),
  ...practise(1, 'c', 'a', 120),
  ...practise(4, 'f', 'a', 120),
  ...practise(4, 'fcb', 'b', 90),
  ...practise(9, 'ff', 'c', 60),
]
const sums = sumDays(events, (at) => dayAt(at, 0))
const chunks = sums.flatMap((day) => day.chunks)
const [standing, ...others] = standPieces(
  sums.flatMap(({ pieces }) => pieces),
  chunks,
)
const since = (day?: string) => standing && standingSince(standing, day as Day | undefined)

test('over all time a piece stands as in its review', () => {
  expect(others).toEqual([])
  const [all, review] = [since(), reviewPiece(chunks)]
  expect(all).toMatchObject({ title: 'Morning Steps', days: 4, lastDay: '2026-01-10' })
  expect(all?.tally).toEqual(review.tally)
  expect(all?.share).toEqual(review.share)
  expect(all?.minutes).toBeCloseTo(review.minutes, 10)
  expect(all?.repetitions).toBe(review.repetitions)
})

test('counted from a day on, that day included', () => {
  expect(since('2026-01-05')?.tally).toEqual({ clean: 1, flawed: 4, brokenOff: 1 })
  expect(since('2026-01-06')?.tally).toEqual({ clean: 0, flawed: 2, brokenOff: 0 })
  expect(since('2026-01-11')).toBeUndefined()
})

test('the tempo is the last one as a part of the goal: of the slowest chunk, the one in the middle, the fastest', () => {
  expect(standing?.tempo).toEqual({ least: 0.5, middle: 0.75, most: 1 })
})

test('chunks are counted by how far they have come', () => {
  expect(standing?.chunks).toEqual({ practised: 2, secure: 0, kept: 0, slipped: 1 })
})

test('a piece that was only added does not stand there', () => {
  const added = sumDays([pieceAdded('Later')], (at) => dayAt(at, 0))
  expect(
    standPieces(
      added.flatMap(({ pieces }) => pieces),
      [],
    ),
  ).toEqual([])
})
