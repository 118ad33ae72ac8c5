import { expect, test } from 'vitest'
import { sumDays } from '@/journal/sumDays'
import { dayAt } from '@/journal/day'
import { chunkId } from '@/music/units'
import { placeFlaws } from '@/review/flawBars'
import { joinPeriods } from '@/review/periods'
import { reviewPiece } from '@/review/pieceReview'
import { writeScore } from '../music/writeScore'
import { drillBegun, repetition } from './session'

const noon = 12 * 3_600
const day = 24 * 3_600
const dayOf = (epochMs: number) => dayAt(epochMs, 0)

/** The sessions begin on Thursday, 1 January 2026. */
const totalsOf = (...played: readonly (readonly [letter: 'c' | 'f' | 'b', day: number])[]) =>
  sumDays(
    played.map(([letter, n], i) => repetition(letter, noon + n * day + i)),
    dayOf,
  ).map(({ total }) => total)

test.each([
  ['day', '2026-01-01@0 1/1, 2026-01-04@3 1/0, 2026-01-05@4 0/1, 2026-03-01@59 1/0'],
  ['week', '2025-12-29@0 2/1, 2026-01-05@1 0/1, 2026-02-23@8 1/0'],
  ['month', '2026-01@0 2/2, 2026-03@2 1/0'],
] as const)('sums are joined by %s, and times without practice stay a gap', (step, said) => {
  const totals = totalsOf(['c', 0], ['f', 0], ['c', 3], ['f', 4], ['c', 59])
  const periods = joinPeriods(totals.toReversed(), step)
  const words = periods.map(({ from, at, tally }) => `${from}@${at} ${tally.clean}/${tally.flawed}`)
  expect(words.join(', ')).toBe(said)
})

test('without practice there is no period', () => {
  expect(joinPeriods([], 'week')).toEqual([])
})

test('flaws are told by the bar of their note, over all chunks, the bar with most first', () => {
  const score = writeScore({ right: 'C5:1 D5:1 E5:1 F5:1 G5:1 A5:1 B5:1 C6:1' })
  const noteAt = (i: number) => score.notes[i]?.id ?? score.notes[0]?.id
  const wrongAt = (i: number) => {
    const [id] = [noteAt(i)].filter((each) => each !== undefined)
    return { kind: 'wrong', onset: i, ...(id === undefined ? {} : { notes: [id] }) } as const
  }
  const flawed = (seconds: number, chunk: string, note: number) => ({
    ...repetition('f', seconds, { chunk }),
    flaws: [wrongAt(note)],
  })
  const stop = repetition('f', 9, { chunk: 'c', flaws: ['hesitation 1 - -'] })
  const events = [
    flawed(1, 'a', 0),
    flawed(2, 'a', 5),
    flawed(3, 'b', 5),
    flawed(4, 'b', 5),
    flawed(5, 'b', 4),
    drillBegun(8, 'c'),
    stop,
  ]
  const rows = sumDays(events, dayOf).flatMap(({ chunks }) => chunks)
  const bars = placeFlaws(score, reviewPiece(rows))
  const bar = (i: number) => score.bars[i]?.number
  expect(bars.map((each) => [each.bar.number, each.times, each.chunk])).toEqual([
    [bar(1), 4, chunkId('b')],
    [bar(0), 2, chunkId('a')],
  ])
  expect(bars[0]?.notes).toEqual([
    { note: noteAt(5), kind: 'wrong', times: 3 },
    { note: noteAt(4), kind: 'wrong', times: 1 },
  ])
  // The stop names no note: it is the second onset of its chunk.
  expect(bars[1]?.notes).toContainEqual({ note: noteAt(1), kind: 'hesitation', times: 1 })
})
