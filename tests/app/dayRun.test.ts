import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  beginRun,
  currentOf,
  isTurnOver,
  minutesLeft,
  moveOn,
  passOver,
  playLater,
  spend,
  type DayRun,
  type RunItem,
} from '@/app/dayRun'
import { decodeDay } from '@/app/decodeDay'
import { parseDay, type Day } from '@/journal/day'
import { chunkId, pieceId, tempo } from '@/music/units'
import { itemKinds, type ItemKind } from '@/plan/itemKinds'
import type { ItemReason } from '@/plan/itemReason'
import type { DayItem } from '@/plan/items'

const day = parseDay('2026-05-01') as Day

const exercise = { what: 'group', size: 3 } as const
/** One of every shape that is kept. */
const reasonsKept: readonly ItemReason[] = [
  { kind: 'warmUpEasy' },
  { kind: 'checkKept', days: 4 },
  { kind: 'lowered', exercise },
  { kind: 'next', exercise, wentWrong: true, isHardSpot: false },
  ...(
    [
      { kind: 'thumb' },
      { kind: 'speed', onsetsASecond: 7.5 },
      { kind: 'leap', widest: 'tenth' },
      { kind: 'chords', struck: 4 },
      { kind: 'chords', struck: 'thirds' },
      { kind: 'rhythm' },
      { kind: 'rhythm', against: [3, 2] },
    ] as const
  ).map((hard): ItemReason => ({
    kind: 'fresh',
    exercise,
    wentWrong: false,
    isHardSpot: true,
    hard,
  })),
]
const reasonOf = (n: number): ItemReason => reasonsKept[n % reasonsKept.length] ?? { kind: 'rest' }

/** 'coldCheck 4 0.5' is a check of bar 4 that takes half a minute. */
const item = (words: string): DayItem => {
  const [kind = '', bar = '1', minutes = '3'] = words.split(' ')
  if (kind === 'rest') return { kind, minutes: 5, reason: { kind: 'rest' } }
  const known = itemKinds.find((each) => each === kind) as ItemKind
  const place = {
    from: bar,
    to: `${Number(bar) + 3}`,
    hand: 'right',
    fromBar: 1,
    toBar: 1,
  } as const
  return {
    kind: known,
    piece: pieceId('p1'),
    title: 'Scale',
    chunk: chunkId(`p1:${bar}`),
    place,
    form: 'asWritten',
    ...(known === 'newGroup' ? { passage: { ...place, to: '9' } } : {}),
    startTempo: tempo(60),
    goalTempo: tempo(80),
    minutes: Number(minutes),
    reason: reasonOf(Number(bar)),
  }
}
const runOf = (...words: readonly string[]): DayRun =>
  beginRun(
    { day, items: words.map(item), minutes: 0, lowered: false },
    new Map([[pieceId('p1'), tempo(96)]]),
  )
const outcomes = (run: DayRun): string => run.items.map(({ outcome }) => outcome).join(' ')
const order = ({ items }: DayRun): string =>
  items.map(({ item: each }) => (each.kind === 'rest' ? 'rest' : each.place.from)).join(' ')
const minute = 60_000
const on = (run: DayRun): RunItem => {
  const now = currentOf(run)
  if (!now) throw new Error('the day is done')
  return now
}
const isOver = (run: DayRun): boolean => isTurnOver(on(run))

describe('an item of today', () => {
  test('is over when its minutes have been played', () => {
    const run = spend(runOf('newGroup 1 3'), 2.5 * minute)
    expect(isOver(run)).toBe(false)
    expect(minutesLeft(on(run))).toBe(1)
    expect(isOver(spend(run, 0.5 * minute))).toBe(true)
  })

  test.each(['coldCheck', 'runThrough'])('%s is over with its one repetition', (kind) => {
    const run = runOf(`${kind} 1 2`)
    expect(isOver(run)).toBe(false)
    expect(isOver(spend(run, 4_000))).toBe(true)
  })

  test('is done when it is over, begun when it was left before, and left when nothing was played', () => {
    let run = runOf('warmUp 1 3', 'newGroup 4 3', 'join 8 3', 'rest', 'runThrough 1 2')
    run = moveOn(spend(run, 3 * minute))
    run = moveOn(spend(run, minute))
    run = moveOn(moveOn(run))
    expect(outcomes(run)).toBe('done begun left done ahead')
    expect(outcomes(moveOn(spend(run, 9_000)))).toBe('done begun left done done')
  })

  test('that has nothing left to do is done without being played', () => {
    expect(outcomes(passOver(runOf('join 1', 'join 8')))).toBe('done ahead')
  })

  test('changes places with the next one at another place; a rest and the run-through stay where they are', () => {
    const run = runOf('newGroup 1', 'rest', 'newGroup 1', 'join 8', 'runThrough 1')
    expect(order(playLater(run))).toBe('8 rest 1 1 1')
    const two = runOf('newGroup 1', 'join 8')
    expect(playLater(playLater(two))).toEqual(two)
    const last = runOf('newGroup 1', 'rest', 'runThrough 1')
    expect(playLater(last)).toBe(last)
  })
})

describe('today as it is kept', () => {
  const words = fc.constantFrom(
    ...itemKinds.flatMap((kind) => reasonsKept.map((_, bar) => `${kind} ${bar} 3`)),
    'rest',
  )
  const steps = fc.array(fc.constantFrom('spend', 'moveOn', 'passOver', 'playLater'))
  const anyRun = fc.tuple(fc.array(words), steps).map(([items, all]) =>
    all.reduce(
      (run, step) => {
        if (step === 'spend') return spend(run, 50_000)
        return step === 'moveOn'
          ? moveOn(run)
          : step === 'passOver'
            ? passOver(run)
            : playLater(run)
      },
      runOf(...items),
    ),
  )

  test('comes back as it was, whatever was done with it', () => {
    fc.assert(
      fc.property(anyRun, (run) => {
        const kept = { wish: { minutes: 25, pieces: [pieceId('p1')] }, run }
        expect(decodeDay(JSON.parse(JSON.stringify(kept)))).toEqual(kept)
      }),
    )
  })

  test('loses no item, and no time that was played', () => {
    fc.assert(
      fc.property(anyRun, ({ items, at }) => {
        expect(at).toBeLessThanOrEqual(items.length)
        for (const { outcome } of items.slice(at)) expect(outcome).toBe('ahead')
        for (const { outcome, spentMs } of items.slice(0, at))
          if (outcome === 'left') expect(spentMs).toBe(0)
      }),
    )
  })

  test('of another shape is planned anew, and never throws', () => {
    const fresh = { wish: { minutes: 30 } }
    for (const stored of [
      undefined,
      7,
      'day',
      [],
      { run: { day: '2026-02-30', items: [], at: 0 } },
    ])
      expect(decodeDay(stored)).toEqual(fresh)
    const run = runOf('join 1')
    expect(decodeDay({ run: { ...run, at: 2 } })).toEqual(fresh)
    expect(
      decodeDay({ run: { ...run, items: [{ ...run.items[0], item: { kind: 'nap' } }] } }),
    ).toEqual(fresh)
    const told = { ...run.items[0]?.item, reason: 'It is due.' }
    expect(decodeDay({ run: { ...run, items: [{ ...run.items[0], item: told }] } })).toEqual(fresh)
    expect(decodeDay({ wish: { minutes: 9_000 } })).toEqual({ wish: { minutes: 240 } })
    fc.assert(
      fc.property(fc.anything(), (stored) => {
        expect(decodeDay(stored).wish.minutes).toBeGreaterThanOrEqual(5)
      }),
    )
  })
})
