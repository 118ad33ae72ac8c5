import type { StoreApi } from 'zustand/vanilla'
import type { DayItem, PlanItem } from '@/plan/items'
import { findWork } from './dayItems'
import {
  beginRun,
  currentOf,
  isSamePlace,
  isTurnOver,
  moveOn,
  passOver,
  playLater,
  spend,
  type DayRun,
  type RunItem,
} from './dayRun'
import { decodeDay } from './decodeDay'
import type { Upcoming } from './practising'
import type { PracticeRoute } from './route'
import type { DayDesk, TodayHouse, TodayState } from './today'

/** Today's plan at work: what is on, what comes, and how it is kept. */
export const createDayDesk = (
  { ports, today, go, hands, records, settings }: TodayHouse,
  store: StoreApi<TodayState>,
): DayDesk => {
  const { storage, wallClock } = ports
  const find = findWork({ hands, records, settings, storage, wallClock })
  let loading: Promise<void> | undefined

  const read = async (): Promise<void> => {
    const stored = await storage.day()
    if (!stored.ok) return store.setState({ problem: stored.reason })
    const kept = decodeDay(stored.value)
    store.setState(kept.run?.day === today() ? kept : { wish: kept.wish })
  }
  const load = (): Promise<void> => (loading ??= read())
  const now = (): DayRun | undefined => {
    const { run } = store.getState()
    return run?.day === today() ? run : undefined
  }
  const put = (part: Pick<TodayState, 'run'> | Pick<TodayState, 'wish'>): void => {
    store.setState(part)
    const { wish, run } = store.getState()
    void storage
      .saveDay({ wish, run })
      .then((saved) => store.setState({ problem: saved.ok ? undefined : saved.reason }))
  }

  /** From where the run is, the first item at which there is something to do. */
  const seek = async (from: DayRun): Promise<{ readonly run: DayRun; readonly next: Upcoming }> => {
    let run = from
    for (let each = currentOf(run); each; each = currentOf(run)) {
      const next = await upcoming(each.item, each, run.at + 1)
      if (next) return { run, next }
      run = passOver(run)
    }
    return { run, next: { route: { kind: 'summary' } } }
  }
  const upcoming = async (
    item: DayItem,
    each: RunItem,
    number: number,
  ): Promise<Upcoming | undefined> => {
    if (item.kind === 'rest') return { route: { kind: 'today' }, item }
    const found = await find(item, each.goalTempo ?? item.goalTempo)
    if (found?.route.kind !== 'practice') return undefined
    return { ...found, route: { ...found.route, item: number }, item }
  }
  const goOn = async (): Promise<void> => {
    const run = now()
    if (!run) return go({ kind: 'today' })
    const { run: found, next } = await seek(run)
    if (found !== run) put({ run: found })
    go(next.route)
  }
  /** Only while the item of this number is on: what is asked for twice is done once. */
  const leave = (number: number, step: (run: DayRun) => DayRun): void => {
    const run = now()
    if (run?.at !== number - 1) return
    put({ run: step(run) })
    void goOn()
  }

  return {
    load,
    goOn,
    wish: (wish) => put({ wish }),
    begin: ({ plan, goals }) => {
      put({ run: beginRun(plan, goals) })
      void goOn()
    },
    forget: () => put({ run: undefined }),
    itemAt: async (route) => {
      await load()
      const run = now()
      const each = run && currentOf(run)
      if (!run || !each || route.item !== run.at + 1) return undefined
      const { item } = each
      if (item.kind === 'rest' || !isOf(route, item)) return undefined
      const { next } = await seek(moveOn(run))
      return {
        item,
        ...(each.goalTempo === undefined ? {} : { goalTempo: each.goalTempo }),
        number: run.at + 1,
        of: run.items.length,
        next,
      }
    },
    spend: (number, ms) => {
      const run = now()
      if (run?.at !== number - 1) return false
      const spent = spend(run, ms)
      put({ run: spent })
      const each = currentOf(spent)
      return each !== undefined && isTurnOver(each)
    },
    over: (number) => leave(number, passOver),
    skip: (number) => leave(number, moveOn),
    later: (number) => leave(number, playLater),
  }
}

const isOf = ({ piece, place, plan }: PracticeRoute, item: PlanItem): boolean =>
  piece === item.piece &&
  (isSamePlace(place, item.place) ||
    isSamePlace(plan?.passage ?? place, item.passage ?? item.place))
