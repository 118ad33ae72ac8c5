import { describe, expect, test } from 'vitest'
import { parseDay } from '@/journal/day'
import { compareShares, estimateShare, type ShareTrend } from '@/review/proportion'
import type { Period, PeriodStep } from '@/review/periods'
import { dateWords } from '@/text/dates'
import { grouped } from '@/text/numbers'
import { describeShares, describeTrend, timeWords } from '@/views/reviewWords'

const period = (from: string, clean: number, flawed: number): Period => {
  const share = estimateShare(clean, clean + flawed)
  const firstDay = parseDay(from.length === 7 ? `${from}-01` : from)
  if (!firstDay) throw new Error(`${from} is no day`)
  return {
    from,
    firstDay,
    lastDay: firstDay,
    at: 0,
    tally: { clean, flawed, brokenOff: 0 },
    ...(share ? { share } : {}),
    repetitions: clean + flawed,
    minutes: 1,
    longestStreak: 1,
    flaws: [],
  }
}

const sharesTold = (periods: readonly Period[], step: PeriodStep): string =>
  describeShares(periods, step, (_, words) => words).join('')
const trendTold = (trend: ShareTrend | undefined): string =>
  describeTrend(trend, (_, words) => words).join('')

describe('what is said of the clean share', () => {
  test('a picture is told by its lowest, its highest and its last', () => {
    const periods = [period('2026-01', 6, 4), period('2026-02', 5, 5), period('2026-03', 8, 2)]
    expect(sharesTold(periods, 'month')).toBe(
      'Clean share by month, from January 2026 to March 2026: lowest 50 % in February 2026, highest 80 % in March 2026, last 80 % in March 2026.',
    )
    expect(sharesTold([period('2026-01-05', 0, 0)], 'day')).toMatch(/came to its end/)
  })

  test.each([
    // Intervals after Newcombe 1998, method 10, as the review gives them.
    [30, 70, 70, 30, 'better, by '],
    [70, 30, 30, 70, 'worse, by '],
    [50, 50, 52, 48, 'unclear whether it changed (between −'],
  ])('from %i of %i to %i of %i', (clean, flawed, then, thenFlawed, said) => {
    const trend = compareShares({ clean, flawed }, { clean: then, flawed: thenFlawed })
    expect(trendTold(trend)).toContain(said)
  })

  test('without days to compare no trend is claimed', () => {
    expect(trendTold(undefined)).toMatch(/^Not enough days yet/)
  })
})

test.each([
  ['2026-05-03', '3 May 2026', '3 May'],
  ['2026-12', 'December 2026', 'Dec'],
])('%s is written %s, or %s', (date, long, short) => {
  expect([dateWords(date), dateWords(date, 'short')]).toEqual([long, short])
})

test.each([
  [0.4, 'less than a minute'],
  [1, '1 minute'],
  [61, '1 hour 1 minute'],
  [120, '2 hours'],
])('%f minutes are %s', (minutes, said) => {
  expect(timeWords(minutes)).toBe(said)
})

test('thousands are set apart', () => {
  expect([7, 1234, 1234567].map(grouped)).toEqual(['7', '1\u202f234', '1\u202f234\u202f567'])
})
