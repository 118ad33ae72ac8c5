import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { daysBetween } from '@/journal/day'
import { tempo } from '@/music/units'
import { planDay } from '@/plan/day'
import type { PlanItem } from '@/plan/items'
import { paceFrom } from '@/plan/pace'
import { planPiece, type PiecePlan, type PlacePlan } from '@/plan/plan'
import { checkInRotation, standingOf } from '@/plan/rotation'
import { createPianist, natureOf } from './pianist'
import { layoutOf, pieceOf } from './pieces'
import { dayNumber, emptyRecord, practiseDay } from './practise'

const layouts = [7, 2].map((times) => layoutOf(pieceOf(times)))
const [done, other] = layouts.map((layout) =>
  planPiece(layout, emptyRecord, paceFrom(emptyRecord, layouts)),
)
if (!done || !other) throw new Error('no pieces')

/** Every place kept, last confirmed so many days before day 100. */
const kept = (
  piece: PiecePlan,
  since: (i: number) => number,
  interval = 28,
  part: Partial<PlacePlan> = {},
): readonly PlacePlan[] =>
  piece.places.map((place, i) => ({
    ...place,
    state: 'kept',
    left: [],
    check: { since: dayNumber(100 - since(i)), interval, rung: tempo(120) },
    ...part,
  }))

describe('where a piece stands', () => {
  const at = (interval: number, part?: Partial<PlacePlan>) => kept(done, () => 1, interval, part)
  test.each([
    ['nothing said, kept but not yet at the longest interval', at(14), undefined, 'atWork'],
    ['nothing said, all at the longest interval', at(28), undefined, 'inRotation'],
    ['nothing said, one of them slipped', at(1, { state: 'slipped' }), undefined, 'atWork'],
    ['said to be finished, whatever its places', done.places, 'finished', 'inRotation'],
    ['laid aside, however well it goes', at(28), 'laidAside', 'laidAside'],
    ['taken up again', done.places, 'takenUp', 'atWork'],
    ['without a place', [], undefined, 'atWork'],
  ] as const)('%s', (_, places, decision, standing) => {
    expect(standingOf(places, decision)).toBe(standing)
  })

  test('in rotation passages are due at the longest interval, spots and joins not by themselves', () => {
    const places = kept(done, () => 1, 4)
    expect(new Set(places.map(({ kind }) => kind)).size).toBeGreaterThan(1)
    for (const place of places)
      expect(checkInRotation(place, places)?.interval).toBe(
        place.kind === 'passage' ? 28 : undefined,
      )
  })

  test('what slipped is due as the day rule has it', () => {
    const slipped = kept(done, () => 1, 1, { state: 'slipped' })
    for (const place of slipped) expect(checkInRotation(place, slipped)?.interval).toBe(1)
  })
})

const played = (plan: ReturnType<typeof planDay>): readonly PlanItem[] =>
  plan.items.flatMap((item) => (item.kind === 'rest' ? [] : [item]))
const sum = (items: readonly PlanItem[]): number =>
  items.reduce((total, { minutes }) => total + minutes, 0)

describe('a day with a finished piece', () => {
  const since = fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 40, maxLength: 40 })

  test('gives it a tenth at most, or one check; nothing to one laid aside', () => {
    let checked = 0
    fc.assert(
      fc.property(
        since,
        fc.integer({ min: 5, max: 120 }),
        fc.constantFrom('inRotation' as const, 'laidAside' as const),
        (days, minutes, standing) => {
          const resting = { ...done, standing, places: kept(done, (i) => days[i] ?? 1) }
          const pieces = [resting, { ...other, standing: 'atWork' as const }]
          const plan = planDay({ day: dayNumber(100), minutes, seed: 1, pieces, lowered: false })
          const its = played(plan).filter(
            ({ piece, kind }) => piece === done.piece && kind !== 'warmUp',
          )
          if (standing === 'laidAside') {
            expect(its).toEqual([])
            return
          }
          checked += its.length
          expect(its.every(({ kind }) => kind === 'coldCheck')).toBe(true)
          expect(its.length <= 1 || sum(its) <= minutes / 10).toBe(true)
          expect(plan.minutes).toBeLessThanOrEqual(1.1 * minutes)
        },
      ),
    )
    expect(checked).toBeGreaterThan(100)
  })
})

describe('half a year after a piece was said to be finished', () => {
  const [score, next] = [pieceOf(7), pieceOf(4)]
  const desks = [score, next].map((each, k) => ({
    layout: layoutOf(each),
    pianist: createPianist(3 + k, each, natureOf(3)),
  }))
  const [first] = desks
  const id = first?.layout.piece
  const course = { minutes: 30, seed: 3 }
  let record = emptyRecord
  let finishedOn = 0
  for (; finishedOn < 300; finishedOn++) {
    const day = practiseDay(desks.slice(0, 1), record, finishedOn, course)
    record = day.record
    if (day.pieces[0]?.finished) break
  }
  const checks = new Map<string, number[]>()
  const shares: number[] = []
  for (let i = finishedOn + 1; i < finishedOn + 183; i++) {
    const day = practiseDay(desks, record, i, course, (piece) =>
      piece === id ? 'finished' : undefined,
    )
    record = day.record
    const its = played(day.plan).filter(({ piece, kind }) => piece === id && kind === 'coldCheck')
    for (const { chunk } of its) checks.set(chunk, [...(checks.get(chunk) ?? []), i])
    shares.push(sum(its) / course.minutes)
  }

  test('each of its passages comes round, a month apart', () => {
    expect(finishedOn).toBeLessThan(300)
    const passages = first?.layout.places.filter(({ kind }) => kind === 'passage') ?? []
    expect(passages.length).toBeGreaterThan(2)
    for (const passage of passages) expect(checks.get(passage.id)?.length).toBeGreaterThan(2)
    const gaps = [...checks.values()].flatMap((days) =>
      days.slice(1).map((day, i) => daysBetween(dayNumber(days[i] ?? 0), dayNumber(day))),
    )
    // A slip is met again the next day; most go well.
    const regular = gaps.filter((gap) => gap >= 28)
    expect(regular.length).toBeGreaterThan(gaps.length / 2)
    expect(Math.max(...gaps)).toBeLessThan(40)
  })

  test('and takes a small share of the days', () => {
    expect(shares.reduce((total, each) => total + each, 0) / shares.length).toBeLessThan(0.05)
    expect(Math.max(...shares)).toBeLessThan(0.15)
  })
})
