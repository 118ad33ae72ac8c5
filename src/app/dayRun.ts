import type { Day } from '@/journal/day'
import type { Place } from '@/music/place'
import type { PieceId, Tempo } from '@/music/units'
import type { DayPlan } from '@/plan/day'
import type { DayItem, PlanItem } from '@/plan/items'

/** One item of today, and what became of it: `begun` was left before its time, `left` is for another day. */
export interface RunItem {
  readonly item: DayItem
  /** The goal tempo of its piece; a rest has none. */
  readonly goalTempo?: Tempo
  readonly spentMs: number
  readonly outcome: 'ahead' | 'done' | 'begun' | 'left'
}

/** Today's plan as it is played: kept as it was made, since the journal grows under it. */
export interface DayRun {
  readonly day: Day
  readonly items: readonly RunItem[]
  /** The item that is on; past the last one the day is done. */
  readonly at: number
}

export const beginRun = ({ day, items }: DayPlan, goals: ReadonlyMap<PieceId, Tempo>): DayRun => ({
  day,
  at: 0,
  items: items.map((item): RunItem => {
    const goalTempo = item.kind === 'rest' ? undefined : goals.get(item.piece)
    const ahead = { item, spentMs: 0, outcome: 'ahead' } as const
    return goalTempo === undefined ? ahead : { ...ahead, goalTempo }
  }),
})

export const currentOf = ({ items, at }: DayRun): RunItem | undefined => items[at]

/** Played once and no more, however long that takes. */
export const isOnce = ({ kind }: DayItem): boolean => kind === 'coldCheck' || kind === 'runThrough'

/** The minutes of the item are over; one that is played once is over with its repetition. */
export const isTurnOver = ({ item, spentMs }: RunItem): boolean =>
  isOnce(item) ? spentMs > 0 : spentMs >= item.minutes * 60_000

/** Whole minutes that are left of the item, rounded up. */
export const minutesLeft = ({ item, spentMs }: RunItem): number =>
  Math.max(0, Math.ceil(item.minutes - spentMs / 60_000 - 1e-9))

/** A repetition was played, with the pause before it. */
export const spend = (run: DayRun, ms: number): DayRun =>
  changeCurrent(run, ({ spentMs }) => ({ spentMs: spentMs + ms }))

/** On to the next item; what was not played is left for another day. */
export const moveOn = (run: DayRun): DayRun => ({
  ...changeCurrent(run, (now) => ({ outcome: outcomeOf(now) })),
  at: Math.min(run.at + 1, run.items.length),
})

/** There is nothing left to do in it: on to the next. */
export const passOver = (run: DayRun): DayRun => ({
  ...changeCurrent(run, () => ({ outcome: 'done' })),
  at: Math.min(run.at + 1, run.items.length),
})

const outcomeOf = (now: RunItem): RunItem['outcome'] => {
  if (now.item.kind === 'rest' || isTurnOver(now)) return 'done'
  return now.spentMs > 0 ? 'begun' : 'left'
}

/**
 * The item that is on changes places with the next one at another place; a run-through stays at the end.
 * The same run where there is none.
 */
export const playLater = (run: DayRun): DayRun => {
  const now = currentOf(run)
  if (!now || !isWork(now.item)) return run
  const { item } = now
  const other = run.items.findIndex(
    (each, i) => i > run.at && isWork(each.item) && !isSameWork(each.item, item),
  )
  const next = run.items[other]
  if (!next) return run
  const items = run.items.map((each, i) => (i === run.at ? next : i === other ? now : each))
  return { ...run, items }
}

type Work = PlanItem & { readonly kind: Exclude<PlanItem['kind'], 'runThrough'> }

const isWork = (item: DayItem): item is Work => item.kind !== 'rest' && item.kind !== 'runThrough'

const isSameWork = (one: Work, other: Work): boolean =>
  one.piece === other.piece &&
  one.kind === other.kind &&
  isSamePlace(one.passage ?? one.place, other.passage ?? other.place)

export const isSamePlace = (one: Place, other: Place): boolean =>
  one.from === other.from && one.to === other.to && one.hand === other.hand

const changeCurrent = (run: DayRun, change: (now: RunItem) => Partial<RunItem>): DayRun => ({
  ...run,
  items: run.items.map((each, i) => (i === run.at ? { ...each, ...change(each) } : each)),
})
