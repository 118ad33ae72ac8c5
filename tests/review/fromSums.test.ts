import { describe, expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { formatKey } from '@/music/pitch'
import { reviewAllTime } from '@/review/allTime'
import { reviewPiece } from '@/review/pieceReview'
import { reviewEvents } from '@/review/review'
import { drillBegun, pieceAdded, repetition, secure } from './session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)

/** 'ccf | cb': repetitions of a chunk by day, ten seconds apart from noon on; a rung for each day. */
const practise = (text: string, rungs: readonly number[] = [], chunk = 'a'): JournalEvent[] =>
  text.split('|').flatMap((letters, day) =>
    [...letters.trim()].map((letter, i) =>
      repetition(letter as 'c' | 'f' | 'b', day * 86_400 + 43_200 + i * 10, {
        chunk,
        rung: rungs[day] ?? 72,
        flaws: letter === 'f' ? ['wrong 2 D4 D#4'] : [],
      }),
    ),
  )

const allTime = (events: readonly JournalEvent[]) => {
  const sums = sumDays(events, dayOf)
  return reviewAllTime(
    sums.map(({ total }) => total),
    sums.flatMap(({ pieces }) => pieces),
  )
}
const piece = (events: readonly JournalEvent[]) =>
  reviewPiece(sumDays(events, dayOf).flatMap(({ chunks }) => chunks))

describe('all time from sums', () => {
  const events = [pieceAdded('Morning Steps'), ...practise('ccf | | cb | f'), drillBegun(5)]

  test('is what the events themselves come to', () => {
    const [fromSums, fromEvents] = [allTime(events), reviewEvents(events)]
    expect(fromSums.tally).toEqual(fromEvents.tally)
    expect(fromSums.share?.value).toBe(fromEvents.cleanShare)
    expect(fromSums.minutes).toBeCloseTo(fromEvents.minutes, 10)
    expect(fromSums.repetitions).toBe(fromEvents.repetitions)
  })

  test('counts the days on which something was played, by month', () => {
    expect(allTime(events).days).toBe(3)
    const months = allTime([...events, ...practise('c'.repeat(2) + '|'.repeat(40) + 'f', [], 'b')])
    expect(months.months.map(({ month, repetitions }) => [month, repetitions])).toEqual([
      ['2026-01', 8],
      ['2026-02', 1],
    ])
  })

  test('has each piece with its title, first and last day', () => {
    expect(allTime(events).pieces).toMatchObject([
      { title: 'Morning Steps', firstDay: '2026-01-01', lastDay: '2026-01-04', days: 3 },
    ])
  })

  test('claims no trend while there is nothing before to compare', () => {
    expect(allTime(events).trend).toBeUndefined()
    const long = practise([...Array(28).fill('cf'), ...Array(28).fill('ccf')].join('|'))
    expect(allTime(long).trend?.verdict).toBe('better')
    const short = practise([...Array(28).fill('f'), ...Array(1).fill('c')].join('|'))
    expect(allTime(short).trend?.verdict).toBe('unclear')
  })
})

describe('a piece from sums', () => {
  test('has for each chunk its state, its days and where it went wrong', () => {
    const review = piece([
      drillBegun(43_199),
      ...practise('ccfc | c', [60, 120]),
      secure(43_300),
      ...practise('f', [], 'b'),
    ])
    expect(review.chunks.map(({ chunk, state }) => [chunk, state])).toEqual([
      ['a', 'kept'],
      ['b', 'practised'],
    ])
    expect(review.chunks[0]?.drill?.place.hand).toBe('right')
    expect(review.chunks[0]?.days.map(({ day, lastRung }) => [day, lastRung])).toEqual([
      ['2026-01-01', 60],
      ['2026-01-02', 120],
    ])
    expect(review.places.map(({ chunk, kind, times }) => [chunk, kind, times])).toEqual([
      ['a', 'wrong', 1],
      ['b', 'wrong', 1],
    ])
    expect(review.substitutions.map((s) => `${formatKey(s.played)} ${s.times}`)).toEqual(['D#4 2'])
    expect(review.coldChecks.map(({ after }) => after)).toEqual(['kept'])
  })

  const curveOf = (text: string, rungs: readonly number[] = []) =>
    piece(practise(text, rungs)).chunks[0]?.curve?.verdict

  test.each([
    [
      'errors that fall',
      'ffffffff|fcfcfcfc|fcccfccc|fccccccc|cccccccccccccccc|cccccccccccccccccccc',
      'improving',
    ],
    ['as many errors day after day', Array(8).fill('cfcfcfcfcf').join('|'), 'plateau'],
    ['up and down', 'cccccc|ffffff|cccccc|ffffff|cccccc', 'unclear'],
    ['four days', 'cf|cf|cf|cf', undefined],
  ])('says of %s: %s is %s', (_, text, verdict) => {
    expect(curveOf(text)).toBe(verdict)
  })

  test('as many errors at ever new tempi are no plateau', () => {
    const text = Array(8).fill('cfcfcfcfcf').join('|')
    expect(curveOf(text, [60, 63, 66, 69, 72, 76, 80, 84])).toBeUndefined()
    expect(curveOf(text, [60, 63, 66, 66, 66, 66, 66, 66])).toBe('plateau')
  })
})
