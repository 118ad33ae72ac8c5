import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { german } from '@/german/german'
import { parseDay } from '@/journal/day'
import { compareShares, estimateShare, type ShareTrend } from '@/review/proportion'
import type { Period, PeriodStep } from '@/review/periods'
import { dateWords } from '@/text/dates'
import { grouped } from '@/text/numbers'
import { reviewText } from '@/text/review'
import { speak } from '@/text/text'
import {
  amountWords,
  describeShares,
  describeTrend,
  flawTimes,
  timeWords,
} from '@/views/reviewWords'

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

describe('in German', () => {
  beforeEach(() => speak('de', german))
  afterEach(() => speak('en'))

  test('the picture of the clean share is told by days, weeks and months', () => {
    const of = (from: string) => [period(from, 6, 4), period('2026-03-09', 8, 2)]
    expect(sharesTold([period('2026-01', 6, 4), period('2026-03', 8, 2)], 'month')).toBe(
      'Fehlerfreier Anteil von Januar 2026 bis März 2026: am niedrigsten 60 % im Januar 2026, am höchsten 80 % im März 2026, zuletzt 80 % im März 2026.',
    )
    expect(sharesTold(of('2026-03-02'), 'week')).toMatch(
      /^Fehlerfreier Anteil von der Woche ab dem 2\. März 2026 bis zu der ab dem 9\. März 2026: /,
    )
    expect(sharesTold(of('2026-03-02'), 'day')).toContain('60 % am 2. März 2026')
    expect(sharesTold([period('2026-03-09', 8, 2)], 'week')).toMatch(
      /^Bisher nur eine Woche: 80 % \(\d+ bis \d+\) fehlerfrei in der Woche ab dem 9\. März 2026\.$/,
    )
  })

  test.each([
    [
      30,
      70,
      70,
      30,
      /^70 % fehlerfrei .* 30 % an denen davor: besser, um \d+ bis \d+ von 100 Durchgängen\.$/,
    ],
    [70, 30, 30, 70, /schlechter, um \d+ bis \d+ /],
    [50, 50, 52, 48, /: Ob sich etwas geändert hat, ist unklar \(zwischen −/],
  ])('from %i of %i to %i of %i', (clean, flawed, then, thenFlawed, said) => {
    expect(
      trendTold(compareShares({ clean, flawed }, { clean: then, flawed: thenFlawed })),
    ).toMatch(said)
  })

  test.each([
    [{ repetitions: 1, minutes: 0.2, days: 1 }, '1 Durchgang, weniger als eine Minute, an 1 Tag.'],
    [
      { repetitions: 1234, minutes: 61, days: 12 },
      '1\u202f234 Durchgänge, 1 Stunde 1 Minute, an 12 Tagen.',
    ],
  ])('%j is %s', (figures, is) => expect(amountWords(figures)).toBe(is))

  test('counts agree with their nouns', () => {
    const states = (n: number): string =>
      reviewText.states
        .all(n, `${n}`, { slipped: '0', secure: `${n}`, kept: '0', practised: '0' })
        .join('')
    expect(states(1)).toBe('1 Ausschnitt: 0 wieder unsicher, 1 sicher, 0 behalten, 0 geübt.')
    expect(states(2)).toBe('2 Ausschnitte: 0 wieder unsicher, 2 sicher, 0 behalten, 0 geübt.')
    expect(reviewText.where.most(5, '5', 1, 9, '5').join('')).toBe(
      '5 Fehler in 1 Takt, die meisten in Takt 9: 5.',
    )
    expect([flawTimes('extra', 1), flawTimes('drift', 2), flawTimes('hesitation', 14)]).toEqual([
      'eine Taste zu viel, einmal',
      'Tempo verändert sich, zweimal',
      'gestockt, 14-mal',
    ])
  })
})
