import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt, parseDay } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { recordedFlawKinds, recordedVerdicts } from '@/journal/words'
import type { Score } from '@/music/music'
import { chunkId, key, noteId, pieceId, tempo } from '@/music/units'
import { reviewAllTime } from '@/review/allTime'
import { daysOf, type Asked, type Known } from '@/review/asked'
import { chunkStateNames, coldChecksOf, standingsOf } from '@/review/chunkStates'
import { barsIn, locateIn, placeFlaws } from '@/review/flawBars'
import { joinPeriods } from '@/review/periods'
import { reviewPiece } from '@/review/pieceReview'
import { listRepetitions, type ListedDay } from '@/review/repetitions'
import { writeScore } from '../music/writeScore'
import { drillBegun, overruled, repetition, secure, sumsOf } from './session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
const noon = 43_200
const daySeconds = 86_400

/** The two notes of the flaws below, each in a bar of its own. */
const noteIds = new Map([
  [0, noteId('n0C4')],
  [4, noteId('n1D4')],
])
const written = writeScore({ right: 'C4:1 C4:1 C4:1 C4:1 D4:1 D4:1 D4:1 D4:1' })
const score: Score = {
  ...written,
  notes: written.notes.map((note, i) => ({ ...note, id: noteIds.get(i) ?? note.id })),
}

const knownOf = (events: readonly JournalEvent[]): Known => ({
  locate: locateIn(score, []),
  barOf: barsIn(score),
  checks: coldChecksOf(sumsOf(events).chunks),
  standings: standingsOf(sumsOf(events).chunks),
})

/** As the program does it: the days from the sums, then the events of those days alone. */
const follow = (events: readonly JournalEvent[], asked: Asked): readonly ListedDay[] => {
  const known = knownOf(events)
  return daysOf(asked, sumsOf(events), known).flatMap((day) =>
    listRepetitions(
      events.filter(({ atEpochMs }) => dayOf(atEpochMs) === day),
      dayOf,
      asked,
      known,
    ),
  )
}
const count = (events: readonly JournalEvent[], asked: Asked): number =>
  follow(events, asked).reduce((n, { repetitions }) => n + repetitions.length, 0)

const flaws = ['wrong 0 C4 C#4', 'wrong 0 C4 D4', 'wrong 1 D4 E4', 'missing 1 D4', 'hesitation 2']

/** Some days of two chunks: repetitions, decisions, and now and then a chunk made secure. */
const anyPractice: fc.Arbitrary<readonly JournalEvent[]> = fc
  .array(
    fc.record({
      day: fc.nat(12),
      chunk: fc.constantFrom('a', 'b'),
      what: fc.constantFrom('c', 'c', 'c', 'f', 'f', 'b', 'secure', 'raise', 'pause' as const),
      flaws: fc.uniqueArray(fc.constantFrom(...flaws), { minLength: 1, maxLength: 3 }),
    }),
    { minLength: 1, maxLength: 60 },
  )
  .map((all) =>
    all.map(({ day, chunk, what, flaws: of }, i): JournalEvent => {
      const at = day * daySeconds + noon + i * 10
      switch (what) {
        case 'secure':
          return secure(at, chunk)
        case 'raise':
        case 'pause':
          return overruled(at, what, chunk)
        case 'c':
        case 'f':
        case 'b':
          return repetition(what, at, { chunk, rung: 120, flaws: what === 'f' ? of : [] })
      }
    }),
  )

describe('every figure of the review is as many as the repetitions behind it', () => {
  test('verdicts, of all time, of a chunk and of a day', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const { chunks, ...sums } = sumsOf(events)
        for (const verdict of recordedVerdicts) {
          expect(count(events, { verdict })).toBe(
            reviewAllTime(sums.totals, sums.pieces).tally[verdict],
          )
          for (const { chunk, days } of reviewPiece(chunks).chunks)
            for (const { day, tally } of days)
              expect(count(events, { chunk, from: day, to: day, verdict })).toBe(tally[verdict])
        }
      }),
    )
  })

  test('flaws by kind, by note and by the two keys', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const review = reviewPiece(sumsOf(events).chunks)
        // No two flaws of a repetition are alike here, but for two keys in place of one.
        const times = (asked: Asked): number =>
          follow(events, asked)
            .flatMap(({ repetitions }) => repetitions)
            .flatMap(({ repetition: { flaws: of } }) => of)
            .filter((each) => asked.flaw === undefined || each.kind === asked.flaw)
            .filter((each) => asked.note === undefined || each.notes?.[0] === asked.note).length
        for (const flaw of recordedFlawKinds)
          expect(times({ flaw })).toBe(review.flaws.find(({ kind }) => kind === flaw)?.times ?? 0)
        for (const { kind, chunk, notes, times: n } of review.places)
          if (notes[0]) expect(times({ chunk, flaw: kind, note: notes[0] })).toBe(n)
        for (const { written, played, times: n } of review.substitutions)
          expect(count(events, { written, played })).toBe(n)
      }),
    )
  })

  test('flaws by bar', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const bars = placeFlaws(score, reviewPiece(sumsOf(events).chunks))
        for (const [barIndex, at] of [...noteIds.values()].entries()) {
          const times = follow(events, { bar: barIndex })
            .flatMap(({ repetitions }) => repetitions)
            .map(({ repetition: { flaws: of } }) => of.filter(({ notes }) => notes?.[0] === at))
          expect(times.every(({ length }) => length > 0)).toBe(true)
          expect(times.flat()).toHaveLength(
            bars.find((each) => each.barIndex === barIndex)?.times ?? 0,
          )
        }
      }),
    )
  })

  test('the longest streak, of all time, of a piece, a chunk, a day and a week', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const { totals, pieces, chunks } = sumsOf(events)
        const all = reviewAllTime(totals, pieces)
        const holds = (asked: Asked, longest: number): void => {
          const found = follow(events, { ...asked, streak: true }).flatMap((of) => of.repetitions)
          expect(found).toHaveLength(longest)
          const [last] = found
          if (!last) return
          // All clean, and nothing else of that chunk between them on that day.
          const { repetition: at, day } = last
          const ofChunk = follow(events, { chunk: at.chunk, from: day, to: day })
            .flatMap((of) => of.repetitions)
            .map(({ repetition: { id, verdict } }) => `${id} ${verdict}`)
          const begin = ofChunk.indexOf(`${at.id} clean`)
          expect(found.map(({ repetition: { id } }) => `${id} clean`)).toEqual(
            ofChunk.slice(begin, begin + longest),
          )
        }
        holds({}, all.longestStreak)
        for (const { piece, longestStreak } of all.pieces) holds({ piece }, longestStreak)
        for (const { chunk, longestStreak, days } of reviewPiece(chunks).chunks) {
          holds({ chunk }, longestStreak)
          for (const each of days)
            holds({ chunk, from: each.day, to: each.day }, each.longestStreak)
        }
        for (const step of ['day', 'week'] as const)
          for (const { firstDay, lastDay, longestStreak } of joinPeriods(totals, step))
            holds({ from: firstDay, to: lastDay }, longestStreak)
      }),
    )
  })

  test('days and repetitions, of all time and of a piece; minutes are of the same repetitions', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const { totals, pieces } = sumsOf(events)
        const all = reviewAllTime(totals, pieces)
        const withSome = (asked: Asked): readonly ListedDay[] =>
          follow(events, asked).filter(({ repetitions }) => repetitions.length > 0)
        expect(withSome({})).toHaveLength(all.days)
        expect(count(events, {})).toBe(all.repetitions)
        for (const { piece, days } of all.pieces) expect(withSome({ piece })).toHaveLength(days)
        for (const { firstDay, lastDay, minutes } of joinPeriods(totals, 'week')) {
          const found = follow(events, { from: firstDay, to: lastDay }).flatMap((of) =>
            of.repetitions.map(({ repetition: each }) => each),
          )
          const ms = sumDays(found, dayOf).reduce((sum, { total }) => sum + total.ms, 0)
          expect(ms / 60_000).toBeCloseTo(minutes)
        }
      }),
    )
  })

  test('cold checks, and what the person decided otherwise', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const { chunks, totals, pieces } = sumsOf(events)
        const checks = coldChecksOf(chunks)
        expect(count(events, { cold: true })).toBe(checks.length)
        for (const verdict of recordedVerdicts)
          expect(count(events, { cold: true, verdict })).toBe(
            checks.filter((check) => check.verdict === verdict).length,
          )
        for (const { what, times } of reviewAllTime(totals, pieces).overruled) {
          const days = follow(events, { overruled: what })
          const after = days.flatMap(({ repetitions }) =>
            repetitions.flatMap((each) => each.overruled.filter((word) => word === what)),
          )
          expect(after.length + days.reduce((n, { unplayed }) => n + unplayed, 0)).toBe(times)
        }
      }),
    )
  })

  test('whatever is asked for together, no day is missed and no other repetition found', () => {
    const asked: fc.Arbitrary<Asked> = fc.record(
      {
        verdict: fc.constantFrom(...recordedVerdicts),
        ended: fc.constant(true as const),
        rung: fc.constantFrom(tempo(72), tempo(120)),
        state: fc.constantFrom(...chunkStateNames),
        chunk: fc.constantFrom(chunkId('a'), chunkId('b')),
        flaw: fc.constantFrom('wrong' as const, 'missing' as const),
        written: fc.constantFrom(key(60), key(62)),
        bar: fc.constantFrom(0, 1),
        cold: fc.constant(true as const),
        overruled: fc.constantFrom('raise' as const, 'pause' as const),
        piece: fc.constantFrom(pieceId('p1'), pieceId('p2')),
      },
      { requiredKeys: [] },
    )
    // A missing note is written, but no key was played for it.
    const seen = [repetition('f', noon, { flaws: ['missing 1 D4'] }), repetition('c', noon + 10)]
    fc.assert(
      fc.property(anyPractice, asked, (events, each) => {
        const all = listRepetitions(events, dayOf, each, knownOf(events))
        const found = follow(events, each)
        const ids = (days: readonly ListedDay[]) =>
          days.flatMap(({ repetitions }) => repetitions.map(({ repetition: { id } }) => id))
        expect(ids(found)).toEqual(ids(all))
      }),
      { numRuns: 400, examples: [[seen, { flaw: 'missing', written: key(62) }]] },
    )
  })
})

describe('the list', () => {
  const evening = [
    drillBegun(noon - 1),
    overruled(noon, 'lower'),
    repetition('f', noon + 10, { flaws: ['wrong 0 C4 C#4'] }),
    repetition('c', noon + 20),
    overruled(noon + 21, 'raise'),
    repetition('c', noon + 30, { chunk: 'b' }),
    repetition('b', noon + daySeconds),
  ]

  test('has the last day and the last repetition first, with what stands around each', () => {
    const days = follow(evening, {})
    expect(days.map(({ day }) => day)).toEqual(['2026-01-02', '2026-01-01'])
    expect(
      days[1]?.repetitions.map(({ repetition: { verdict, chunk }, isCold, drill, ...rest }) =>
        [verdict, chunk, isCold, drill?.place.fromBar, ...rest.overruled].join(' '),
      ),
    ).toEqual(['clean b true ', 'clean a false 1 raise', 'flawed a true 1 lower'])
  })

  test('a decision in a drill in which nothing was played is counted by itself', () => {
    expect(follow([overruled(noon, 'skip')], { overruled: 'skip' })).toEqual([
      { day: '2026-01-01', repetitions: [], unplayed: 1 },
    ])
  })

  test('a span of days holds both its ends', () => {
    const [from, to] = [parseDay('2026-01-02'), parseDay('2026-01-02')]
    if (!from || !to) throw new Error('no day')
    expect(follow(evening, { from, to }).map(({ day }) => day)).toEqual(['2026-01-02'])
  })
})
