import type { HandReach } from '@/fingering/spans'
import type { Day } from '@/journal/day'
import type { PieceDecision } from '@/journal/words'
import type { Result } from '@/music/result'
import type { PieceId, Tempo } from '@/music/units'
import type { DayPlan } from '@/plan/day'
import type { HonestWord } from '@/plan/honest'
import type { PlanDefault } from '@/plan/pace'
import type { PiecePlan } from '@/plan/plan'
import type { WeekSpan } from '@/plan/span'
import type { CorrectedPiece, HandCorrections } from './handCorrections'
import type { HardSpots } from './hardSpots'
import type { Library } from './library'
import type { Notebook } from './notebook'
import type { Ports } from './ports'

/** A piece of the library that was practised. */
export interface PractisedPiece {
  readonly id: PieceId
  readonly title: string
  readonly lastDay: Day
  /** In the last four weeks. */
  readonly minutes: number
  /** What the person decided of it. */
  readonly decision?: PieceDecision
}

/** A piece with its places, the work left and what that is estimated from. */
export interface PlannedPiece {
  readonly piece: CorrectedPiece
  readonly plan: PiecePlan
  /** Of how many exercises that were done the record tells: none, and it is estimated from `defaults`. */
  readonly exercises: number
  readonly defaults: readonly PlanDefault[]
  /** The weeks at so many minutes a day; the days a week as of late where they are left out. */
  readonly span: (minutesPerDay: number, daysPerWeek?: number) => WeekSpan
}

export interface DayWishes {
  readonly minutes: number
  readonly seed: number
  /** Those to work at; the first is the main one. Cold checks come from all that was practised. */
  readonly pieces: readonly PieceId[]
}

export interface PlannedDay {
  readonly plan: DayPlan
  readonly goals: ReadonlyMap<PieceId, Tempo>
  /** Every place of the chosen pieces is kept. */
  readonly finished: boolean
}

/** What to practise, from kept sums: no repetition is read for it. */
export interface Plans {
  /** This day of practice. */
  readonly today: () => Day
  /** The one with most practice of late first. */
  readonly practised: () => Promise<Result<readonly PractisedPiece[], string>>
  readonly piece: (id: PieceId) => Promise<Result<PlannedPiece, string>>
  /** Compares a piece with all of the library; `progress` is told how many are laid out. */
  readonly honestly: (
    planned: PlannedPiece,
    progress: (done: number, of: number) => void,
  ) => Promise<Result<HonestWord, string>>
  readonly day: (wishes: DayWishes) => Promise<Result<PlannedDay, string>>
}

export interface PlansHouse {
  readonly ports: Pick<Ports, 'storage' | 'layOut' | 'wallClock'>
  readonly library: Pick<Library, 'store'>
  readonly hands: Pick<HandCorrections, 'open'>
  readonly hardSpots: Pick<HardSpots, 'words'>
  readonly notebook: Pick<Notebook, 'load' | 'store'>
  /** How far the person's hand reaches now. */
  readonly reach: () => HandReach
  /** The goal tempo chosen for a piece in this sitting. */
  readonly goal: (piece: PieceId) => Tempo | undefined
}

/** The plan itself is fetched when it is wanted first. */
export const createPlans = (house: PlansHouse): Plans => {
  const { ports } = house
  let made: Promise<Omit<Plans, 'today'>> | undefined
  const planning = (): Promise<Omit<Plans, 'today'>> =>
    (made ??= import('./planning').then(({ createPlanning }) => createPlanning(house)))
  return {
    today: () => ports.storage.dayOf(ports.wallClock()),
    practised: async () => (await planning()).practised(),
    piece: async (id) => (await planning()).piece(id),
    honestly: async (planned, progress) => (await planning()).honestly(planned, progress),
    day: async (wishes) => (await planning()).day(wishes),
  }
}
