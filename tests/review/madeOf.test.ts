import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { chunkId } from '@/music/units'
import { allPage, piecePage } from '@/review/pages'
import { daysOf, type Asked, type Known } from '@/review/asked'
import { chunkStateNames, coldChecksOf, standingsOf } from '@/review/chunkStates'
import { barsIn, locateIn, placeFlaws } from '@/review/flawBars'
import { reviewPiece } from '@/review/pieceReview'
import { listRepetitions, type Listed } from '@/review/repetitions'
import { writeScore } from '../music/writeScore'
import { drillBegun, repetition, secure, sumsOf } from './session'

/** Figures that are no counts of repetitions: each is made of those that its address finds. */

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
const noon = 43_200
const daySeconds = 86_400
const score = writeScore({ right: 'C4:1 D4:1 E4:1 F4:1 G4:1 A4:1 B4:1 C5:1' })

const follow = (events: readonly JournalEvent[], asked: Asked): readonly Listed[] => {
  const sums = sumsOf(events)
  const known: Known = {
    locate: locateIn(score, reviewPiece(sums.chunks).chunks),
    barOf: barsIn(score),
    checks: coldChecksOf(sums.chunks),
    standings: standingsOf(sums.chunks),
  }
  return daysOf(asked, sums, known)
    .flatMap((day) =>
      listRepetitions(
        events.filter(({ atEpochMs }) => dayOf(atEpochMs) === day),
        dayOf,
        asked,
        known,
      ),
    )
    .flatMap(({ repetitions }) => repetitions)
}

/** Days of two chunks as a drill makes them: secure comes right after a clean repetition at the goal. */
const anyPractice: fc.Arbitrary<readonly JournalEvent[]> = fc
  .array(
    fc.record({
      day: fc.nat(9),
      chunk: fc.constantFrom('a', 'b'),
      letter: fc.constantFrom('c', 'c', 'c', 'f', 'b' as const),
      rung: fc.constantFrom(72, 96, 120, 120),
      isSecure: fc.boolean(),
      way: fc.constantFrom('-80', '90'),
    }),
    { minLength: 1, maxLength: 50 },
  )
  .map((all) => [
    drillBegun(noon - 2, 'a'),
    drillBegun(noon - 1, 'b'),
    ...all.flatMap(({ day, chunk, letter, rung, isSecure, way }, i): JournalEvent[] => {
      const at = day * daySeconds + noon + i * 10
      const flaws = letter === 'f' ? [`drift 3 - - ${way}`] : []
      const played = repetition(letter, at, { chunk, rung, flaws })
      return letter === 'c' && rung === 120 && isSecure ? [played, secure(at + 1, chunk)] : [played]
    }),
  ])

const shareOf = (listed: readonly Listed[]): number | undefined =>
  listed.length === 0
    ? undefined
    : listed.filter(({ repetition: { verdict } }) => verdict === 'clean').length / listed.length

describe('every figure that is no count leads to what it is made of', () => {
  test('a clean share: of all time, a piece, a period, a chunk; and before and after of the trend', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const { totals, pieces, chunks } = sumsOf(events)
        const all = allPage(totals, pieces)
        const holds = (asked: Asked, share: number | undefined): void =>
          expect(shareOf(follow(events, { ...asked, ended: true }))).toBe(share)
        holds({}, all.share?.value)
        for (const { piece, share } of all.pieces) holds({ piece }, share?.value)
        for (const { firstDay, lastDay, share } of all.periods.week)
          holds({ from: firstDay, to: lastDay }, share?.value)
        for (const { chunk, share } of piecePage(chunks, pieces).chunks)
          holds({ chunk }, share?.value)
      }),
    )
  })

  test('the trend: each of its two shares', () => {
    const events = Array.from({ length: 40 }, (_, i) =>
      repetition(i % 3 === 0 ? 'f' : i % 11 === 0 ? 'b' : 'c', i * 2 * daySeconds + noon),
    )
    const { totals, pieces } = sumsOf(events)
    const { trend } = allPage(totals, pieces)
    if (!trend) throw new Error('no trend')
    for (const side of ['before', 'after'] as const) {
      const { from, to } = trend.days[side]
      expect(shareOf(follow(events, { from, to, ended: true }))).toBe(trend[side].value)
    }
  })

  test('tempi of a day, and the day that was the last', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        for (const { chunk, days } of reviewPiece(sumsOf(events).chunks).chunks) {
          for (const { day, lowestRung, highestRung, lastRung } of days)
            for (const rung of [lowestRung, highestRung, lastRung]) {
              const found = follow(events, { chunk, from: day, to: day, rung })
              expect(found.length).toBeGreaterThan(0)
              expect(new Set(found.map(({ repetition: each }) => each.rung))).toEqual(
                new Set([rung]),
              )
            }
          const last = days.at(-1)?.day
          if (last === undefined) continue
          const found = follow(events, { chunk, from: last, to: last })
          expect(found[0]?.repetition.id).toBe(follow(events, { chunk })[0]?.repetition.id)
        }
      }),
    )
  })

  test('chunks that are secure, kept, slipped, practised: one repetition of each, the one that made it so', () => {
    fc.assert(
      fc.property(anyPractice, (events) => {
        const { states } = reviewPiece(sumsOf(events).chunks)
        for (const state of chunkStateNames) {
          const found = follow(events, { state })
          expect(found).toHaveLength(states[state])
          expect(new Set(found.map(({ repetition: { chunk } }) => chunk)).size).toBe(states[state])
          for (const { isCold, repetition: each } of found) {
            if (state === 'kept') expect([isCold, each.verdict]).toEqual([true, 'clean'])
            if (state === 'slipped') expect([isCold, each.verdict]).toEqual([true, 'flawed'])
            if (state === 'secure') expect([each.verdict, each.rung]).toEqual(['clean', 120])
            if (state === 'practised')
              expect(each.id).toBe(follow(events, { chunk: each.chunk })[0]?.repetition.id)
          }
        }
      }),
    )
  })
})

describe('a drift', () => {
  const first = score.notes[0]?.id
  const [last, end] = [score.notes[3]?.id, score.notes[7]?.id]
  const place = (chunk: string, to: string): JournalEvent => {
    const begun = drillBegun(noon - 1, chunk)
    return begun.kind === 'drillBegun' ? { ...begun, place: { ...begun.place, to } } : begun
  }
  // One bar and both: they begin at one note.
  const events = [
    place('a', '3'),
    place('b', '7'),
    repetition('f', noon + 10, { flaws: ['drift 3 F4 - -80', 'wrong 0 C4 D4'] }),
    repetition('f', noon + 20, { flaws: ['drift 2 E4 - 70'] }),
    repetition('f', noon + 30, { flaws: ['drift 3 F4 - -60'] }),
    repetition('f', noon + 40, { chunk: 'b', flaws: ['drift 7 C5 - 90'] }),
  ]
  const review = reviewPiece(sumsOf(events).chunks)
  const drifts = placeFlaws(score, review).flatMap(({ barIndex, notes }) =>
    notes.filter(({ kind }) => kind === 'drift').map((each) => ({ barIndex, ...each })),
  )

  test('stands over its whole chunk, wherever it was found, and mostly one way', () => {
    expect(drifts).toEqual([
      { barIndex: 0, note: first, until: last, kind: 'drift', times: 3, faster: 2 },
      { barIndex: 0, note: first, until: end, kind: 'drift', times: 1, faster: 0 },
    ])
  })

  test('of each stretch leads to its own repetitions', () => {
    for (const { note, until, times } of drifts)
      expect(
        follow(events, { flaw: 'drift', note, ...(until === undefined ? {} : { until }) }),
      ).toHaveLength(times)
    expect(follow(events, { bar: 0, flaw: 'drift' })).toHaveLength(4)
  })

  test('is none of the flaws at the note where its stretch begins', () => {
    const of = [place('a', '3'), repetition('f', noon + 10, { flaws: ['drift 3 - - 80'] })]
    const slip = repetition('f', noon + 20, { flaws: ['hesitation 0'] })
    const found = follow([...of, slip], first === undefined ? {} : { note: first })
    expect(found.map(({ repetition: { id } }) => id)).toEqual([slip.id])
  })

  test('of a chunk as chords stands over its notes too, though its onsets have other numbers', () => {
    const begun = place('a', '3')
    const asChords: JournalEvent =
      begun.kind === 'drillBegun' ? { ...begun, form: 'blocked' } : begun
    const of = [asChords, repetition('f', noon, { flaws: ['drift 1 - - -80', 'hesitation 1'] })]
    const bars = placeFlaws(score, reviewPiece(sumsOf(of).chunks))
    expect(
      bars.flatMap(({ notes }) => notes.map(({ kind, note, until }) => [kind, note, until])),
    ).toEqual([['drift', first, last]])
  })
})

test('the keys that were too many are told of each note, the most frequent first', () => {
  const events = [
    drillBegun(noon - 1),
    repetition('f', noon, { flaws: ['extra 1 - D#4', 'extra 1 - G4'] }),
    repetition('f', noon + 10, { flaws: ['extra 1 - G4'] }),
    repetition('f', noon + 20, { chunk: chunkId('a'), flaws: ['extra 1 - C4 forgiven'] }),
  ]
  const [bar] = placeFlaws(score, reviewPiece(sumsOf(events).chunks))
  expect(bar?.notes).toEqual([
    {
      note: score.notes[1]?.id,
      kind: 'extra',
      times: 3,
      played: [
        { key: 67, times: 2 },
        { key: 63, times: 1 },
      ],
    },
  ])
})
