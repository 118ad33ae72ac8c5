import { describe, expect, test } from 'vitest'
import type { Day } from '@/journal/day'
import type { ChunkDay } from '@/journal/sums'
import { tempo, type ChunkId } from '@/music/units'
import { planDay } from '@/plan/day'
import { sayReason } from '@/plan/itemReason'
import { paceFrom } from '@/plan/pace'
import { planPiece, type PiecePlan } from '@/plan/plan'
import { recordFrom } from '@/plan/record'
import { layoutOf, pieceOf } from './pieces'
import { dayNumber } from './practise'

const layout = layoutOf(pieceOf(3))
const { whole } = layout
if (!whole) throw new Error('a piece without notes')
const passages = layout.places.filter(({ kind }) => kind === 'passage')
const [first, second, third] = passages
if (!first || !second || !third) throw new Error('fewer passages than phrases')

const row = (chunk: ChunkId, day: Day, more: Partial<ChunkDay> = {}): ChunkDay => ({
  day,
  piece: layout.piece,
  chunk,
  tally: { clean: 5, flawed: 0, brokenOff: 0 },
  ms: 60_000,
  longestStreak: 5,
  flaws: {},
  cold: { atEpochMs: 0, rung: tempo(120), goalTempo: tempo(120), verdict: 'clean' },
  rungs: [],
  places: [],
  ...more,
})

/** A run-through with slips at the onsets that lie in a place. */
const runThrough = (day: Day, at: { readonly from: number; readonly to: number }): ChunkDay => {
  const onset = whole.starts.findIndex((start) => start >= at.from)
  return row(whole.chunk, day, {
    tally: { clean: 0, flawed: 1, brokenOff: 0 },
    places: [{ kind: 'wrong', onset, notes: [], times: 2 }],
  })
}

const planned = (rows: readonly ChunkDay[]): PiecePlan => {
  const record = recordFrom(rows)
  return planPiece(layout, record, paceFrom(record, [layout]))
}
const slips = (plan: PiecePlan): readonly number[] =>
  passages.map(({ id }) => plan.places.find((place) => place.id === id)?.slips ?? -1)

describe('a run-through is listened to', () => {
  test('what went wrong in it is told of the place where it stands', () => {
    expect(slips(planned([runThrough(dayNumber(3), second)]))).toEqual([0, 2, 0])
  })

  test('only the last one counts', () => {
    const rows = [runThrough(dayNumber(3), second), runThrough(dayNumber(4), third)]
    expect(slips(planned(rows))).toEqual([0, 0, 2])
  })

  test('what is met again on a later day is no longer told', () => {
    const met = [runThrough(dayNumber(3), second), row(second.id, dayNumber(4))]
    expect(slips(planned(met))).toEqual([0, 0, 0])
    const before = [row(second.id, dayNumber(3)), runThrough(dayNumber(3), second)]
    expect(slips(planned(before))).toEqual([0, 2, 0])
  })

  test('the next day begins with it, before what was only begun', () => {
    const rows = [
      row(first.id, dayNumber(2)),
      row(second.id, dayNumber(2)),
      row(third.id, dayNumber(2)),
      runThrough(dayNumber(3), third),
    ]
    const { items } = planDay({
      day: dayNumber(4),
      minutes: 8,
      seed: 1,
      pieces: [planned(rows)],
      lowered: false,
    })
    const work = items.find((item) => item.kind !== 'rest' && item.kind !== 'warmUp')
    expect(work && sayReason(work.reason)).toContain('went wrong in the run-through')
    expect(work && 'passage' in work ? work.passage?.from : undefined).toBe(third.place.from)
  })

  test('what is secure and went wrong in it is met cold the next day', () => {
    const secure = row(second.id, dayNumber(0), { secureAt: tempo(120), doneAt: tempo(120) })
    const kept = row(second.id, dayNumber(1))
    const check = (rows: readonly ChunkDay[]) =>
      planned(rows).places.find(({ id }) => id === second.id)?.check
    expect(check([secure, kept])).toMatchObject({ since: dayNumber(1), interval: 2 })
    expect(check([secure, kept, runThrough(dayNumber(1), second)])).toMatchObject({
      since: dayNumber(1),
      interval: 1,
    })
  })
})
