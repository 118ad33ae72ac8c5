import type { Day } from '@/journal/day'
import { practiceIn, restsIn, rotate, withRests } from './arrange'
import { chooseChecks, choosePlaces, chooseRun, chooseWarmUp, partTwins } from './choose'
import {
  checkItem,
  runItem,
  runMinutes,
  warmUpItem,
  type Candidate,
  type DayItem,
  type PlanItem,
} from './items'
import { isSettled, type PiecePlan } from './plan'
import { rankBy } from './seed'

/** What today is for, in the order of playing. */
export interface DayPlan {
  readonly day: Day
  readonly items: readonly DayItem[]
  /** All of it with the rests. */
  readonly minutes: number
  /** The aims are lowered, since of late less than half was clean. */
  readonly lowered: boolean
}

export interface DayChoices {
  readonly day: Day
  /** All that there is, rests included. */
  readonly minutes: number
  /** Another seed, another choice among what is equally due. */
  readonly seed: number
  /** The first that is not finished is the main piece; of the others the easiest has a share. */
  readonly pieces: readonly PiecePlan[]
  /** Of late less than half was clean (`isBelowFloor`). */
  readonly lowered: boolean
}

/** A tenth, two to five minutes in a usual hour (common practice, no source). */
const warmUpShare = 0.1
const mostWarmUp = 5
/** However many are due, checks leave more than half of the time for what is not secure yet. */
const checkShare = 0.4
/** A tenth of the day keeps alive what is done (common practice, no source). */
const rotationShare = 0.1
/** As much of the practice may a run-through take while there is something to learn. */
const runShare = 0.25

/**
 * Today: a warm-up, the cold checks that are due, problem spots, new groups, joins in turns, and at most
 * one run-through at the end; of pieces in rotation only a few checks, of those laid aside nothing. The
 * minutes are filled as far as there is anything to learn; what was not done on another day is simply
 * still there. The same choices give the same plan.
 */
export const planDay = ({ day, minutes, seed, pieces, lowered }: DayChoices): DayPlan => {
  const aims = { day, rank: rankBy(day, seed), lowered }
  const atWork = pieces.filter(({ standing }) => standing === 'atWork')
  const inRotation = pieces.filter(({ standing }) => standing === 'inRotation')
  const candidates = placesOf(atWork)
  const toLearn = candidates.some(({ place }) => !isSettled(place))
  const practice = practiceIn(minutes)
  const warm = Math.min(mostWarmUp, warmUpShare * practice)
  const rest = practice - warm
  const kept = chooseChecks(placesOf(inRotation), rotationShare * practice, aims)
  const share = toLearn ? checkShare : 1
  const own = chooseChecks(candidates, share * (rest - minutesOf(kept)), aims)
  const checks = partTwins([...own, ...kept])
  const left = rest - minutesOf(checks)
  const runnable = atWork.length > 0 ? atWork : inRotation
  const run = lowered ? undefined : chooseRun(runnable, toLearn ? runShare * rest : left)
  const work = left - (run ? runMinutes(run) : 0)
  const chosen = choosePlaces(atWork, checks, work, aims)
  const known = placesOf(inRotation).filter(({ place }) => isSettled(place))
  const warmUp = chooseWarmUp([...candidates, ...known], [...checks, ...chosen], aims)
  // Without anything to warm up on, its minutes go to the work.
  const spare = warmUp || chosen.length === 0 ? 0 : warm / chosen.length
  const items = [
    ...(warmUp ? [warmUpItem(warmUp, warm)] : []),
    ...checks.map((each) => checkItem(each, each.check, day)),
    ...rotate(
      chosen.map((each) => ({ ...each, minutes: each.minutes + spare })),
      lowered,
    ),
    ...(run ? runItem(run) : []),
  ]
  const all = withRests(items, restsFor(items, practice, minutes))
  return { day, items: all, minutes: minutesOf(all), lowered }
}

const placesOf = (pieces: readonly PiecePlan[]): readonly Candidate[] =>
  pieces.flatMap((piece) => piece.places.map((place) => ({ piece, place })))

/** A day that is not full needs fewer rests. */
const restsFor = (items: readonly PlanItem[], practice: number, minutes: number): number =>
  minutesOf(items) >= 0.9 * practice ? restsIn(minutes) : restsIn(minutesOf(items))

const minutesOf = (items: readonly { readonly minutes: number }[]): number =>
  items.reduce((sum, each) => sum + each.minutes, 0)
