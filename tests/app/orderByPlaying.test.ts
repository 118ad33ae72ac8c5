import { describe, expect, test } from 'vitest'
import { layOut } from '@/app/layOut'
import { orderByPlaying } from '@/app/orderByPlaying'
import { spotPlace } from '@/app/spotList'
import type { Day } from '@/journal/day'
import { recordPlace } from '@/journal/record'
import type { ChunkDay } from '@/journal/sums'
import { tempo } from '@/music/units'
import { analyse } from '@/plan/analyse'
import type { PieceLayout, PlanPlace } from '@/plan/layOut'
import { sampleScore } from '../support/monthOfPractice'

const score = sampleScore('ferry-at-dusk.mid')
const layout = layOut(score, tempo(72), { said: [], order: [] }, 'medium')
const passages = layout.places.filter(({ kind }) => kind === 'passage')
const last = passages.at(-1)
if (!last || passages.length < 3) throw new Error('too few passages to put in order')

/** A day on which a place was played so many times, most of them flawed at its second onset. */
const day = (
  { id, piece, chunk, place }: PlanPlace,
  [clean, flawed]: readonly [clean: number, flawed: number],
  more: Partial<ChunkDay> = {},
): ChunkDay => ({
  day: '2026-05-01' as Day,
  piece,
  chunk: id,
  tally: { clean, flawed, brokenOff: 0 },
  ms: 600_000,
  longestStreak: 1,
  flaws: { wrong: flawed },
  cold: { atEpochMs: 0, rung: tempo(60), verdict: 'flawed' },
  rungs: [],
  begun: {
    place: recordPlace(chunk, place.fromBar, place.toBar),
    form: 'asWritten',
    time: { beats: 4, beatType: 4 },
    goalTempo: tempo(72),
  },
  places: [{ kind: 'wrong', onset: 1, notes: chunk.onsets[1]?.notes[0].ids ?? [], times: flawed }],
  ...more,
})

const kinds = ({ places }: PieceLayout) => places.map(({ kind, id }) => `${kind} ${id}`)
const rankOf = ({ places }: PieceLayout, { id }: PlanPlace) =>
  places.filter(({ kind }) => kind === 'passage').findIndex((each) => each.id === id)

describe('the order of practice', () => {
  test('without a record is as it was laid out', () => {
    expect(kinds(orderByPlaying(score, layout, []))).toEqual(kinds(layout))
  })

  test('where flaws pile up the place comes earlier, and tells it; no place is lost', () => {
    const ordered = orderByPlaying(score, layout, [day(last, [2, 38])])
    expect(rankOf(ordered, last)).toBeLessThan(rankOf(layout, last))
    const found = ordered.places.find(({ id }) => id === last.id)
    expect(found).toEqual({ ...last, played: { flawed: 38, of: 40 } })
    expect(kinds(ordered).toSorted()).toEqual(kinds(layout).toSorted())
  })

  test('parts come before what they are parts of all the same', () => {
    const ordered = orderByPlaying(score, layout, [day(last, [2, 38])])
    const index = (id: string) => ordered.places.findIndex((place) => place.id === id)
    for (const { id, parts } of ordered.places)
      for (const part of parts) expect(index(part)).toBeLessThan(index(id))
  })

  test.each([
    ['a handful of repetitions', day(last, [0, 9])],
    [
      'what is secure by now',
      day(last, [2, 38], { secureAt: tempo(72), doneAt: tempo(72), lastRung: tempo(72) }),
    ],
  ])('%s changes nothing', (_, row) => {
    expect(kinds(orderByPlaying(score, layout, [row]))).toEqual(kinds(layout))
  })

  test('the person’s own ranking stands above the record', () => {
    const spots = analyse(score, tempo(72)).spots.map((spot) => spotPlace(score, spot))
    const words = { said: [], order: spots.toReversed() }
    const ranked = layOut(score, tempo(72), words, 'medium')
    const ranks = orderByPlaying(score, ranked, [day(last, [2, 38])])
      .places.filter(({ kind }) => kind === 'passage')
      .map(({ rank = Infinity }) => rank)
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
    expect(new Set(ranks).size).toBeGreaterThan(1)
  })
})
