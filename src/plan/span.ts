import { daysBetween, type Day } from '@/journal/day'
import type { Estimate } from '@/review/proportion'
import { factorVariance } from './factor'
import type { OwnPace } from './pace'
import type { PiecePlan, PlacePlan } from './plan'
import type { PracticeRecord } from './record'

/** When a piece will be kept from end to end. */
export interface WeekSpan {
  /** Nine in ten should lie between `low` and `high`. */
  readonly weeks: Estimate
  /** Of practice, all that a day holds. */
  readonly minutes: Estimate
  readonly daysPerWeek: number
  /** Minutes of practice for a minute of work as estimated. */
  readonly overhead: number
}

/**
 * Minutes of a day's practice for one minute of the estimated work: warm-up, cold checks, what slips and
 * is learned again (assumed; simulated learners need 1.1 to 3, tests/bench/plan.ts). The record corrects it.
 */
const usualOverhead = 1.6
const overheadVariance = 0.04
/** How far the overhead of one place lies from that of another, as a variance of logarithms. */
const placeVariance = 0.2
/** What comes first takes longer, since it makes later work shorter: by a third, on simulated pianists. */
const firstsShare = 0.35
/** What comes first may be easier or harder than what follows. */
const beginningVariance = 0.02
const settledVariance = 0.06
/** What the future holds besides: as much as estimates of this kind were off on simulated learners. */
const futureVariance = 0.06
/** Who has no record practises five days a week (assumed), or says how many. */
const usualDaysPerWeek = 5
/** The 95 % point of the normal distribution: one in twenty lies above, one below. */
const z90 = 1.6448536269514722

export interface SpanChoices {
  readonly minutesPerDay: number
  readonly daysPerWeek?: number
}

/** The weeks until all of a piece is kept, as the record stands. */
export const spanOf = (
  plan: PiecePlan,
  record: PracticeRecord,
  pace: OwnPace,
  day: Day,
  { minutesPerDay, daysPerWeek = daysPerWeekIn(record, day) ?? usualDaysPerWeek }: SpanChoices,
): WeekSpan => {
  const { overhead, variance } = overheadIn(plan, pace)
  const toConfirm = confirmDays(plan)
  const open = plan.places.filter(({ work }) => work.minutes > 0)
  const minutes = overhead * plan.work.minutes
  const spread = Math.sqrt(
    variance +
      futureVariance * leftShare(plan) +
      factorPart(plan, pace) +
      placeVariance * concentration(open),
  )
  const at = (z: number): number => minutes * Math.exp(z * spread)
  const weeksOf = (total: number, nights: number): number =>
    total / minutesPerDay / daysPerWeek + nights / 7
  return {
    minutes: { value: minutes, low: at(-z90), high: at(z90) },
    weeks: {
      value: weeksOf(minutes, toConfirm),
      low: weeksOf(at(-z90), toConfirm > 0 ? 1 : 0),
      high: weeksOf(at(z90), 3 * toConfirm),
    },
    daysPerWeek,
    overhead,
  }
}

/** Nights between the last streak and its confirmation, and the two in three checks that do not fail. */
const confirmDays = ({ places }: PiecePlan): number =>
  places.every(({ state }) => state === 'kept') ? 0 : 2

/**
 * Minutes on the piece for each minute of work that is settled, drawn to the usual overhead while little
 * is settled. Logarithms, weighed by their variances.
 */
const overheadIn = (
  plan: PiecePlan,
  pace: OwnPace,
): { readonly overhead: number; readonly variance: number } => {
  const { places, practisedMinutes } = plan
  const settled = places.map(({ doneWork }) => doneWork.minutes)
  const done = settled.reduce((sum, each) => sum + each, 0)
  if (done <= 0 || practisedMinutes <= 0)
    return { overhead: usualOverhead, variance: overheadVariance }
  const seen =
    beginningVariance + settledVariance * shareOfSquares(settled) + 1 / (1 + pace.exercises)
  const weight = overheadVariance / (overheadVariance + seen)
  const log = Math.log(usualOverhead)
  const own = Math.log((practisedMinutes / done) * (1 - firstsShare * leftShare(plan)))
  return {
    overhead: Math.exp(log + weight * (own - log)),
    variance: overheadVariance * (1 - weight),
  }
}

/** Of all work, what is left. */
const leftShare = ({ places, work }: PiecePlan): number => {
  const done = places.reduce((sum, { doneWork }) => sum + doneWork.minutes, 0)
  return work.minutes + done === 0 ? 0 : work.minutes / (work.minutes + done)
}

const factorPart = ({ places }: PiecePlan, { factor }: OwnPace): number => {
  const total = places.reduce((sum, { work }) => sum + work.minutes, 0)
  if (total === 0) return 0
  return places.reduce(
    (sum, { work, difficulty }) =>
      sum + (work.minutes / total) * factorVariance(factor, difficulty),
    0,
  )
}

/** Many places even out what one is off. */
const concentration = (places: readonly PlacePlan[]): number =>
  shareOfSquares(places.map(({ work }) => work.minutes))

const shareOfSquares = (values: readonly number[]): number => {
  const total = values.reduce((sum, each) => sum + each, 0)
  return total === 0 ? 0 : values.reduce((sum, each) => sum + (each / total) ** 2, 0)
}

/** Four weeks tell how often somebody practises. */
const rhythmDays = 28
/** After fewer days than a week nobody has a rhythm. */
const leastDays = 7

const daysPerWeekIn = ({ chunkDays }: PracticeRecord, day: Day): number | undefined => {
  const ago = (each: Day): number => daysBetween(each, day)
  const played = [...new Set(chunkDays.map((row) => row.day))].filter((each) => ago(each) >= 0)
  const first = Math.min(rhythmDays, Math.max(0, ...played.map(ago)))
  if (first < leastDays) return undefined
  const lately = played.filter((each) => ago(each) > 0 && ago(each) <= first).length
  return lately === 0 ? undefined : (7 * lately) / first
}
