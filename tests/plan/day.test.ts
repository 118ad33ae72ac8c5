import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { daysBetween } from '@/journal/day'
import { tempo } from '@/music/units'
import { planDay, type DayPlan } from '@/plan/day'
import { daysOverdue } from '@/plan/due'
import { sayReason } from '@/plan/itemReason'
import type { PlanItem } from '@/plan/items'
import { paceFrom } from '@/plan/pace'
import { isSettled, planPiece, type PiecePlan, type PlacePlan } from '@/plan/plan'
import { areNearIdentical } from '@/plan/similar'
import { writeScore } from '../music/writeScore'
import { layoutOf, pieceOf } from './pieces'
import { dayNumber, emptyRecord } from './practise'

const today = 100
const layouts = [2, 4, 7].map((times) => layoutOf(pieceOf(times)))
const fresh = layouts.map((layout) =>
  planPiece(layout, emptyRecord, paceFrom(emptyRecord, layouts)),
)

interface Word {
  readonly state: PlacePlan['state']
  readonly since: number
  readonly interval: number
  readonly begun: boolean
  readonly playable: boolean
}

/** A place as some record would have it. */
const told = (place: PlacePlan, { state, since, interval, begun, playable }: Word): PlacePlan => {
  const settled = state === 'secure' || state === 'kept'
  const due = state === 'untouched' || state === 'practised'
  return {
    ...place,
    state,
    begun: begun || state !== 'untouched',
    playable: playable && state !== 'untouched',
    left: settled ? [] : place.exercises.slice(-1),
    ...(due ? {} : { check: { since: dayNumber(today - since), interval, rung: tempo(120) } }),
  }
}

const words = fc.record<Word>({
  state: fc.constantFrom('untouched', 'practised', 'secure', 'kept', 'slipped'),
  since: fc.integer({ min: 1, max: 60 }),
  interval: fc.constantFrom(1, 2, 4, 7, 14, 28),
  begun: fc.boolean(),
  playable: fc.boolean(),
})

/** One to three pieces with whatever states. */
const anyPieces = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.infiniteStream(words))
  .map(([count, states]) =>
    fresh.slice(0, count).map((piece): PiecePlan => {
      const places = piece.places.map((place) => told(place, states.next().value))
      return { ...piece, places, finished: places.every(({ state }) => state === 'kept') }
    }),
  )

const anyDay = fc.record({
  day: fc.constant(dayNumber(today)),
  minutes: fc.integer({ min: 5, max: 180 }),
  seed: fc.integer({ min: 0, max: 1000 }),
  pieces: anyPieces,
  lowered: fc.boolean(),
})

const played = ({ items }: DayPlan): readonly PlanItem[] =>
  items.flatMap((item) => (item.kind === 'rest' ? [] : [item]))

const placeOf = (pieces: readonly PiecePlan[], item: PlanItem): PlacePlan | undefined =>
  pieces
    .flatMap(({ places }) => places)
    .find(
      ({ id, exercises }) => id === item.chunk || exercises.some((e) => e.chunk.id === item.chunk),
    )

const order = ['warmUp', 'coldCheck', 'problemSpot', 'newGroup', 'join', 'runThrough'] as const

describe('a plan for any journal', () => {
  test('keeps the minutes within a tenth while there is something to work at, and never exceeds them by more', () => {
    let full = 0
    fc.assert(
      fc.property(anyDay, (choices) => {
        const plan = planDay(choices)
        expect(plan.minutes).toBeLessThanOrEqual(1.1 * choices.minutes)
        const works = played(plan).some(({ kind }) =>
          ['problemSpot', 'newGroup', 'join'].includes(kind),
        )
        if (!works) return
        full++
        expect(plan.minutes).toBeGreaterThanOrEqual(0.9 * choices.minutes)
      }),
      { numRuns: 300 },
    )
    expect(full).toBeGreaterThan(200)
  })

  test('begins with what is easy, then checks, spots, groups, joins, and one run-through at the very end', () => {
    fc.assert(
      fc.property(anyDay, (choices) => {
        const items = played(planDay(choices))
        const firsts = [...new Set(items.map(({ kind }) => kind))]
        const one = items.slice(
          0,
          items.findIndex(({ chunk }, i) => items.findIndex((e) => e.chunk === chunk) < i),
        )
        expect(firsts.filter((kind) => kind === 'warmUp' || kind === 'coldCheck')).toEqual(
          firsts.slice(
            0,
            firsts.filter((kind) => kind === 'warmUp' || kind === 'coldCheck').length,
          ),
        )
        const runs = items.filter(({ kind }) => kind === 'runThrough')
        expect(runs.length).toBeLessThanOrEqual(1)
        if (runs[0]) expect(items.at(-1)).toBe(runs[0])
        if (choices.pieces.length === 1)
          expect(one.map(({ kind }) => order.indexOf(kind))).toEqual(
            one.map(({ kind }) => order.indexOf(kind)).toSorted((a, b) => a - b),
          )
      }),
      { numRuns: 200 },
    )
  })

  test('never puts two near-identical passages one after the other', () => {
    let alike = 0
    fc.assert(
      fc.property(anyDay, (choices) => {
        const items = played(planDay(choices))
        const places = items.map((item) => placeOf(choices.pieces, item))
        for (const [i, place] of places.entries()) {
          const next = places[i + 1]
          if (place && next) expect(areNearIdentical(place, next)).toBe(false)
        }
        const all = choices.pieces.flatMap((piece) => piece.places)
        if (all.some((one) => all.some((other) => areNearIdentical(one, other)))) alike++
      }),
      { numRuns: 200 },
    )
    expect(alike).toBeGreaterThan(20)
  })

  test('rests so that nobody plays for much more than 25 minutes', () => {
    fc.assert(
      fc.property(anyDay, (choices) => {
        let stretch = 0
        for (const item of planDay(choices).items) {
          stretch = item.kind === 'rest' ? 0 : stretch + item.minutes
          expect(stretch).toBeLessThanOrEqual(34)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('checks what is longest due first, one at least; only a near-identical one may wait', () => {
    fc.assert(
      fc.property(anyDay, (choices) => {
        const all = choices.pieces.flatMap(({ places }) => places)
        const due = all
          .flatMap((place) =>
            place.check ? [{ place, late: daysOverdue(place.check, choices.day) }] : [],
          )
          .filter(({ late }) => late >= 0)
        const checked = new Set(
          played(planDay(choices)).flatMap((item) =>
            item.kind === 'coldCheck' ? [item.chunk] : [],
          ),
        )
        if (due.length > 0) expect(checked.size).toBeGreaterThan(0)
        const latestChecked = Math.min(
          ...due.filter(({ place }) => checked.has(place.id)).map(({ late }) => late),
        )
        for (const { place, late } of due)
          if (late > latestChecked && !checked.has(place.id))
            expect(
              all.some((other) => checked.has(other.id) && areNearIdentical(other, place)),
            ).toBe(true)
      }),
      { numRuns: 200 },
    )
  })

  test('is the same for the same choices', () => {
    fc.assert(
      fc.property(anyDay, (choices) => {
        expect(planDay(choices)).toEqual(planDay(structuredClone(choices)))
      }),
      { numRuns: 30 },
    )
  })
})

describe('what today holds', () => {
  const day = dayNumber(today)
  const [small, main] = fresh
  if (!small || !main) throw new Error('no pieces')
  const slow = writeScore({
    right: 'E5:3 D5 C5:3 B4 A4:2 B4:2 C5:4',
    left: 'C3:4 G3:4 F3:2 G3:2 C3:4',
  })
  const other = planPiece(layoutOf(slow), emptyRecord, paceFrom(emptyRecord, layouts))
  const at = (minutes: number, pieces: readonly PiecePlan[] = [main], lowered = false) =>
    planDay({ day, minutes, seed: 1, pieces, lowered })
  const kept = (piece: PiecePlan): PiecePlan => ({
    ...piece,
    finished: true,
    places: piece.places.map((place) =>
      told(place, { state: 'kept', since: 1, interval: 28, begun: true, playable: true }),
    ),
  })

  test('the hardest place comes early but never first', () => {
    const items = played(at(45))
    const hardest = main.places.toSorted((a, b) => b.difficulty - a.difficulty)[0]
    expect(items[0]?.kind).toBe('warmUp')
    expect(items[0] && placeOf([main], items[0])?.id).not.toBe(hardest?.id)
    expect(items[1] && placeOf([main], items[1])?.difficulty).toBe(hardest?.difficulty)
  })

  test('the warm-up is on other notes than the work, while there are others', () => {
    const [warmUp, ...work] = played(at(20)).map((item) => placeOf([main], item))
    for (const place of work)
      expect(place && warmUp && place.from < warmUp.to && warmUp.from < place.to).toBe(false)
  })

  test('a place that goes is met again in turns of about three minutes', () => {
    const begun = {
      ...main,
      places: main.places.map((place) => ({ ...place, begun: true, playable: true })),
    }
    const turns = played(at(45, [begun])).filter(({ kind }) => kind === 'newGroup')
    const names = turns.map(({ passage }) => passage?.from)
    expect(new Set(names).size).toBeGreaterThan(1)
    for (const [i, { minutes }] of turns.entries()) {
      expect(minutes).toBeGreaterThan(2)
      expect(minutes).toBeLessThan(4)
      expect(names[i]).not.toBe(names[i + 1])
    }
  })

  test('lowered aims are fewer places, slower, without joins and run-through', () => {
    const [usual, lowered] = [played(at(60)), played(at(60, [main], true))]
    const places = (items: readonly PlanItem[]) =>
      new Set(items.map(({ passage }) => passage?.from)).size
    expect(places(lowered)).toBeLessThan(places(usual))
    const slow = lowered.find(({ kind }) => kind === 'newGroup')
    expect(slow?.startTempo).toBeLessThan((slow?.goalTempo ?? 0) * 0.9)
    expect(slow && sayReason(slow.reason)).toMatch(/^Less than half was clean of late/)
  })

  test('a second piece has a share, and every fourth day where that would be too little', () => {
    const minutesOf = (plan: DayPlan, { piece }: PiecePlan) =>
      played(plan)
        .filter((item) => item.piece === piece && item.kind === 'newGroup')
        .reduce((sum, { minutes }) => sum + minutes, 0)
    const hour = at(60, [main, other])
    expect(minutesOf(hour, other) / (minutesOf(hour, other) + minutesOf(hour, main))).toBeCloseTo(
      0.25,
      5,
    )
    const short = Array.from({ length: 4 }, (_, i) =>
      planDay({
        day: dayNumber(today + i),
        minutes: 10,
        seed: 1,
        pieces: [main, other],
        lowered: false,
      }),
    )
    expect(short.filter((plan) => minutesOf(plan, other) > 0)).toHaveLength(1)
  })

  test('a piece that is kept from end to end is checked when it is due, and played through', () => {
    const done = kept(small)
    expect(played(at(30, [done])).map(({ kind }) => kind)).toEqual(['warmUp', 'runThrough'])
    const later = planDay({
      day: dayNumber(today + 27),
      minutes: 30,
      seed: 1,
      pieces: [done],
      lowered: false,
    })
    expect(played(later).filter(({ kind }) => kind === 'coldCheck')).toHaveLength(
      done.places.length,
    )
    expect(done.places.every(isSettled)).toBe(true)
  })

  test('each item has what is needed to begin it', () => {
    for (const item of played(at(60, [main, kept(small)]))) {
      expect(item.chunk).toContain(item.piece)
      expect(item.startTempo).toBeGreaterThan(0)
      expect(item.startTempo).toBeLessThanOrEqual(item.goalTempo)
      expect(item.place.fromBar).toBeLessThanOrEqual(item.place.toBar)
      expect(sayReason(item.reason)).toMatch(/\.$/)
    }
  })

  test('days without practice change nothing but the dates', () => {
    const later = planDay({
      day: dayNumber(today + 20),
      minutes: 30,
      seed: 1,
      pieces: [main],
      lowered: false,
    })
    expect(played(later).map(({ chunk }) => chunk)).toEqual(
      played(at(30)).map(({ chunk }) => chunk),
    )
    expect(daysBetween(day, later.day)).toBe(20)
  })
})
