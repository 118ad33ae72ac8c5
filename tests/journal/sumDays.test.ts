import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import { substitutionsIn } from '@/journal/flawCounts'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { pieceId } from '@/music/units'
import { anyEvent } from '../support/anyEvent'
import {
  drillBegun,
  exerciseDone,
  overruled,
  pieceAdded,
  repetition,
  repetitions,
  secure,
} from '../review/session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
const noon = 12 * 3600
const sum = (events: readonly JournalEvent[]) => sumDays(events, dayOf)

describe('a day', () => {
  test('counts verdicts, streaks of one chunk, and flaws that were not forgiven', () => {
    const [day] = sum([
      ...repetitions('ccfcccb'),
      repetition('f', 90, { chunk: 'b', flaws: ['wrong 2 D4 D#4', 'extra 0 - C5 forgiven'] }),
    ])
    expect(day?.total).toMatchObject({
      tally: { clean: 5, flawed: 2, brokenOff: 1 },
      longestStreak: 3,
      flaws: { wrong: 1 },
    })
  })

  test('lasts until four in the morning', () => {
    const [yesterday, today] = sum([pieceAdded('Morning Steps'), drillBegun(noon)])
    expect([yesterday?.total.day, today?.total.day]).toEqual(['2025-12-31', '2026-01-01'])
    expect(yesterday?.pieces[0]?.title).toBe('Morning Steps')
  })
})

test('what was decided otherwise is counted for the day and for its piece', () => {
  const [day] = sum([
    ...repetitions('cc'),
    overruled(30, 'raise'),
    overruled(40, 'raise'),
    { ...overruled(50, 'pause'), piece: pieceId('p2') },
  ])
  expect(day?.total.overruled).toEqual({ raise: 2, pause: 1 })
  expect(day?.pieces.map(({ piece, overruled }) => [piece, overruled])).toEqual([
    ['p1', { raise: 2 }],
    ['p2', { pause: 1 }],
  ])
})

describe('a chunk on a day', () => {
  const rows = sum([
    drillBegun(noon - 1, 'a', 96),
    repetition('f', noon, { flaws: ['wrong 2 D4 D#4'] }),
    repetition('c', noon + 10),
    repetition('c', noon + 20, { rung: 76 }),
    secure(noon + 21),
    repetition('b', noon + 40, { chunk: 'b', rung: 60 }),
    repetition('f', noon + 640, { flaws: ['wrong 2 D4 D#4', 'extra 0 - C5 forgiven'] }),
  ])[0]
  const [a, b] = rows?.chunks ?? []

  test('has its cold repetition, with the goal tempo of its drill', () => {
    expect(a?.cold).toMatchObject({ rung: 72, goalTempo: 96, verdict: 'flawed' })
    expect(b?.cold).toMatchObject({ rung: 60, verdict: 'brokenOff' })
    expect(b?.cold && 'goalTempo' in b.cold).toBe(false)
  })

  test('has each rung with its tally and time, the slow ones first', () => {
    expect(a?.rungs.map(({ rung, tally, ms }) => [rung, tally.clean, tally.flawed, ms])).toEqual([
      [72, 1, 2, 2_000 + 10_000 + 2_000],
      [76, 1, 0, 10_000],
    ])
    expect([a?.lastRung, a?.secureAt, b?.secureAt]).toEqual([72, 120, undefined])
  })

  test('tells the highest rung at which an exercise was done, secure or on the way', () => {
    const doneAt = (events: readonly JournalEvent[]) => sum(events)[0]?.chunks[0]?.doneAt
    expect(doneAt([exerciseDone(1, 84), exerciseDone(2, 60)])).toBe(84)
    expect(doneAt([exerciseDone(noon, 84), secure(noon + 2)])).toBe(120)
    expect(doneAt([repetition('c', noon)])).toBeUndefined()
  })

  test('has its flaws by place, and what was played for what', () => {
    expect(a?.places.map(({ kind, onset, times }) => [kind, onset, times])).toEqual([
      ['wrong', 2, 2],
    ])
    expect(a?.places[0]?.played).toEqual([{ key: 63, times: 2 }])
    expect(substitutionsIn(a?.places ?? [])).toEqual([{ written: 62, played: 63, times: 2 }])
    expect(a?.flaws).toEqual({ wrong: 2 })
  })

  test('has with each place the keys that were struck there, and which way the tempo went', () => {
    const flawed = repetition('f', noon, {
      flaws: ['extra 0 - C5', 'extra 0 - E5', 'wrong 1 D4 E4', 'missing 1 D4', 'drift 3 - - -90'],
    })
    const again = repetition('f', noon + 5, {
      flaws: ['extra 0 - E5', 'wrong 1 D4 F4', 'drift 3 - - 120', 'drift 3 - - -40'],
    })
    const places = sum([flawed, again])[0]?.chunks[0]?.places ?? []
    const told = places.map(({ kind, times, played = [], faster }) =>
      [kind, times, ...played.map(({ key, times: n }) => `${key}×${n}`), faster].join(' ').trim(),
    )
    expect(told).toEqual(['extra 3 76×2 72×1', 'drift 3 2', 'wrong 2 64×1 65×1', 'missing 1'])
  })

  test('times of chunks add up to those of the piece and of the day', () => {
    expect((a?.ms ?? 0) + (b?.ms ?? 0)).toBe(rows?.total.ms)
    expect(rows?.pieces[0]?.ms).toBe(rows?.total.ms)
    expect(rows?.total.ms).toBe(2_000 + 10_000 + 10_000 + 20_000 + 2_000)
  })

  test('is one of its piece: the same name in another piece is another row', () => {
    const elsewhere = { ...repetition('c', noon + 5), piece: pieceId('p2') }
    const chunks = sum([repetition('c', noon), elsewhere])[0]?.chunks
    expect(chunks?.map(({ piece, tally }) => [piece, tally.clean])).toEqual([
      ['p1', 1],
      ['p2', 1],
    ])
  })
})

test('sums do not depend on the order of the events, and leave out no repetition', () => {
  const journal = fc.uniqueArray(anyEvent, { selector: ({ id }) => id, maxLength: 25 })
  const shuffled = journal.chain((events) =>
    fc.tuple(fc.constant(events), fc.shuffledSubarray(events, { minLength: events.length })),
  )
  fc.assert(
    fc.property(shuffled, ([events, other]) => {
      expect(sum(other)).toEqual(sum(events))
      const count = (verdict: 'clean' | 'flawed' | 'brokenOff') =>
        sum(events)
          .flatMap(({ chunks }) => chunks)
          .reduce((n, { tally }) => n + tally[verdict], 0)
      expect(count('clean') + count('flawed') + count('brokenOff')).toBe(
        events.filter(({ kind }) => kind === 'repetition').length,
      )
    }),
  )
})
