import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Day } from '@/journal/day'
import type { DayRun } from './dayRun'
import { usualMinutes, type DayWish } from './dayWish'
import type { HandCorrections } from './handCorrections'
import type { PieceRecords } from './pieceRecord'
import type { PlannedDay } from './plans'
import type { Ports } from './ports'
import type { ItemOnDesk } from './practising'
import type { PracticeRoute, Route } from './route'
import type { Settings } from './settings'

export interface TodayState {
  readonly wish: DayWish
  /** What was planned for this day and begun. */
  readonly run?: DayRun | undefined
  /** Why it lasts only until the page is closed. */
  readonly problem?: string | undefined
}

/** Played item after item; kept, so that a reload goes on where one was. */
export interface DayDesk {
  /** Reads what was begun; what was begun on another day is over. */
  readonly load: () => Promise<void>
  /** What the person wants of this day and, until they say otherwise, of the next. */
  readonly wish: (wish: DayWish) => void
  readonly begin: (planned: PlannedDay) => void
  /** To the item that is on, or the first after it at which there is something to do; past the last to the review. */
  readonly goOn: () => Promise<void>
  /** It is planned anew. */
  readonly forget: () => void
  /** Which item is played at an address; `undefined` where it is none, or another one by now. */
  readonly itemAt: (route: PracticeRoute) => Promise<ItemOnDesk | undefined>
  /** A repetition of the item of this number took so long, with the pause before it; whether the item is over. */
  readonly spend: (number: number, ms: number) => boolean
  /** The item of this number is over, or done before its time. */
  readonly over: (number: number) => void
  /** The person goes on before that: what was not played is left for another day. */
  readonly skip: (number: number) => void
  /** The person plays the next place first. */
  readonly later: (number: number) => void
}

/** Today's plan. */
export interface Today extends DayDesk {
  readonly store: StoreApi<TodayState>
}

export interface TodayHouse {
  readonly ports: Pick<Ports, 'storage' | 'wallClock' | 'sound'>
  /** This day of practice. */
  readonly today: () => Day
  readonly hands: Pick<HandCorrections, 'open'>
  readonly records: PieceRecords
  readonly settings: StoreApi<Settings>
  readonly go: (route: Route) => void
}

/** How it is played is fetched when it is wanted first; until then there is nothing to be done with an item. */
export const createToday = (house: TodayHouse): Today => {
  const store = createStore<TodayState>(() => ({ wish: { minutes: usualMinutes } }))
  let desk: DayDesk | undefined
  let fetching: Promise<DayDesk> | undefined
  const fetch = (): Promise<DayDesk> =>
    (fetching ??= import('./dayDesk').then(
      ({ createDayDesk }) => (desk = createDayDesk(house, store)),
    ))
  return {
    store,
    load: async () => (await fetch()).load(),
    begin: (planned) => {
      // In a press of the person, so that sound may wake.
      void house.ports.sound.unlock()
      void fetch().then((ready) => ready.begin(planned))
    },
    goOn: async () => {
      void house.ports.sound.unlock()
      await (await fetch()).goOn()
    },
    itemAt: async (route) => (await fetch()).itemAt(route),
    wish: (wish) => desk?.wish(wish),
    forget: () => desk?.forget(),
    spend: (number, ms) => desk?.spend(number, ms) ?? false,
    over: (number) => desk?.over(number),
    skip: (number) => desk?.skip(number),
    later: (number) => desk?.later(number),
  }
}
