import { daysBetween, type Day, type DayOf } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import type { ChunkDay, ColdRepetition } from '@/journal/sums'
import type { ChunkId, PieceId, Tempo } from '@/music/units'

/**
 * How far a chunk has come. secure: the streak goal was met at the goal tempo. kept: confirmed on a later
 * day by its cold repetition. slipped: was kept, and failed cold. practised: played, and none of these;
 * so is one that was secure and failed cold before it was ever kept.
 */
export const chunkStateNames = ['practised', 'secure', 'kept', 'slipped'] as const
export type ChunkState = (typeof chunkStateNames)[number]

/** What a chunk that was once secure showed as the first thing on a later day. */
export interface ColdCheck {
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly day: Day
  readonly atEpochMs: number
  readonly rung: Tempo
  readonly verdict: ColdRepetition['verdict']
  /** Days since it was last met secure or confirmed, or failed. */
  readonly daysSince: number
  readonly before: ChunkState
  readonly after: ChunkState
}

/** The state of each chunk that was played; one that is missing is untouched. Broken off counts as played. */
export const chunkStates = (
  events: readonly JournalEvent[],
  dayOf: DayOf,
): ReadonlyMap<ChunkId, ChunkState> => statesOf(chunkDaysOf(events, dayOf))

/** Every cold check, by time. */
export const coldChecks = (events: readonly JournalEvent[], dayOf: DayOf): readonly ColdCheck[] =>
  coldChecksOf(chunkDaysOf(events, dayOf))

/** `chunkStates` from sums that are kept. */
export const statesOf = (days: readonly ChunkDay[]): ReadonlyMap<ChunkId, ChunkState> =>
  new Map(standingsOf(days).map(({ chunk, state }) => [chunk, state]))

/** `coldChecks` from sums that are kept. */
export const coldChecksOf = (days: readonly ChunkDay[]): readonly ColdCheck[] =>
  [...groupBy(days, (day) => day.chunk).values()]
    .flatMap((of) => live(of).checks)
    .toSorted((a, b) => a.atEpochMs - b.atEpochMs)

const chunkDaysOf = (events: readonly JournalEvent[], dayOf: DayOf): readonly ChunkDay[] =>
  sumDays(events, dayOf).flatMap(({ chunks }) => chunks)

/** Where a chunk stands, and the day that made it so; of one that is only practised, the last. */
export interface ChunkStanding {
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly state: ChunkState
  readonly day: Day
}

/** Of each chunk that was played. */
export const standingsOf = (days: readonly ChunkDay[]): readonly ChunkStanding[] =>
  [...groupBy(days, (day) => day.chunk).values()].flatMap((of) => {
    const { standing } = live(of)
    const last = of.toSorted(byTime).findLast((row) => row.cold)
    if (!standing) return []
    const { piece, chunk, day } = last ?? of[0]
    const { state } = standing
    return [{ piece, chunk, state, day: state === 'practised' ? day : standing.since }]
  })

type Standing =
  | { readonly state: 'practised' }
  /** Since when, and the tempo at which it is to be confirmed. */
  | {
      readonly state: 'secure' | 'kept' | 'slipped'
      readonly since: Day
      readonly rung: Tempo
    }

interface Life {
  /** `undefined` before anything was played. */
  readonly standing: Standing | undefined
  readonly checks: readonly ColdCheck[]
}

/** One chunk's days, lived through in order. */
const live = (days: readonly ChunkDay[]): Life => {
  const ordered = [...groupBy(days.toSorted(byTime), (row) => row.day)]
  return ordered.reduce<Life>(
    ({ standing, checks }, [day, rows]) => {
      const cold = rows.find((row) => row.cold)?.cold
      const after = cold && meetCold(standing, day, cold)
      const secureAt = rows.findLast((row) => row.secureAt !== undefined)?.secureAt
      const check =
        after && isChecked(standing, day, cold) ? [checkOf(rows[0], cold, standing, after)] : []
      return {
        standing: meetStreak(after ?? standing, day, secureAt),
        checks: [...checks, ...check],
      }
    },
    { standing: undefined, checks: [] },
  )
}

type Tried = Exclude<Standing, { state: 'practised' }>

/** A check needs something to be confirmed, from an earlier day, and its tempo: then or now the goal. */
const isChecked = (
  standing: Standing | undefined,
  day: Day,
  { rung, goalTempo }: ColdRepetition,
): standing is Tried =>
  standing !== undefined &&
  standing.state !== 'practised' &&
  standing.since < day &&
  rung >= Math.min(standing.rung, goalTempo ?? standing.rung)

const meetCold = (standing: Standing | undefined, day: Day, cold: ColdRepetition): Standing => {
  if (!isChecked(standing, day, cold)) return standing ?? { state: 'practised' }
  switch (cold.verdict) {
    case 'clean':
      return { state: 'kept', since: day, rung: cold.rung }
    case 'flawed':
      return standing.state === 'secure'
        ? { state: 'practised' }
        : { ...standing, state: 'slipped', since: day }
    // Neither right nor wrong: it is asked again on another day.
    case 'brokenOff':
      return standing
  }
}

/** A streak makes secure; what is kept stays so, since the day before has said more. */
const meetStreak = (
  standing: Standing | undefined,
  day: Day,
  secureAt: Tempo | undefined,
): Standing | undefined =>
  secureAt === undefined || standing?.state === 'kept'
    ? standing
    : { state: 'secure', since: day, rung: secureAt }

const checkOf = (
  { piece, chunk, day }: ChunkDay,
  { atEpochMs, rung, verdict }: ColdRepetition,
  before: Tried,
  after: Standing,
): ColdCheck => ({
  piece,
  chunk,
  day,
  atEpochMs,
  rung,
  verdict,
  daysSince: daysBetween(before.since, day),
  before: before.state,
  after: after.state,
})

const byTime = (a: ChunkDay, b: ChunkDay): number =>
  a.day < b.day ? -1 : a.day > b.day ? 1 : (a.cold?.atEpochMs ?? 0) - (b.cold?.atEpochMs ?? 0)
