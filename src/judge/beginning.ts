import { ms } from '@/music/units'
import { isNear, isWritten, lackCost, type Ground } from './ground'
import { gather, type Harvest } from './harvest'
import {
  begunWith,
  begunWrong,
  endsOnSlip,
  isComplete,
  isIdle,
  onsetAt,
  untouched,
  type Act,
  type Cut,
  type Open,
  type Reading,
  type Strike,
} from './reading'
import * as limit from './thresholds'

/**
 * Begins a repetition with a key of the first onset, with one of the second (the first lacking), or
 * with a wrong key. `cuts` are those of the reading that begins.
 */
export const gatherBeginnings = (
  ground: Ground,
  past: Reading,
  strike: Strike,
  cost: number,
  cuts: readonly Cut[],
  harvest: Harvest,
): void => {
  const first = onsetAt(ground, 0)
  const begin: Beginning = { past, strike, cuts, harvest }
  if (isWritten(first, strike.key)) {
    const note = first.keys.indexOf(strike.key)
    gatherBeginning(begin, cost, 'note', 0, note, [begunWith(note, strike.at)])
  } else {
    const wrong = limit.slipCost + (isNear(first, strike.key) ? 0 : limit.farStartCost)
    gatherBeginning(begin, cost + wrong, 'foreign', 0, -1, [begunWrong(strike.at)])
  }
  const second = ground.onsets[1]
  if (second && isWritten(second, strike.key)) {
    const note = second.keys.indexOf(strike.key)
    const lacking = lackCost(first.keys.length)
    gatherBeginning(begin, cost + lacking, 'note', 1, note, [begunWith(note, strike.at), untouched])
  }
  if (first.auxiliaries.includes(strike.key)) {
    gatherBeginning(begin, cost + 1, 'auxiliary', 0, -1, [untouched])
  }
}

interface Beginning {
  readonly past: Reading
  readonly strike: Strike
  readonly cuts: readonly Cut[]
  readonly harvest: Harvest
}

const gatherBeginning = (
  { past, strike, cuts, harvest }: Beginning,
  cost: number,
  act: Act,
  onset: number,
  note: number,
  open: readonly Open[],
): void => {
  if (cost > harvest.atMost) return
  gather(harvest, {
    cost,
    top: onset,
    low: 0,
    open,
    pace: past.pace,
    echoAt: undefined,
    calmAt: undefined,
    step: { before: undefined, strike, act, onset, note, late: false, top: onset, back: false },
    cuts,
  })
}

/** What it costs to begin, or to leave, without a pause; a long pause before the first key speaks for it. */
export const hasteCost = (ground: Ground, past: Reading, strike: Strike, pause: number): number => {
  if (pause >= limit.settle) {
    const isFresh =
      !isIdle(past) &&
      !endsOnSlip(ground, past) &&
      past.pace > 0 &&
      pause > limit.freshGap * past.pace * onsetAt(ground, past.top).gap &&
      isWritten(onsetAt(ground, 0), strike.key)
    return isFresh ? -limit.freshStartGain : 0
  }
  const keys = onsetAt(ground, Math.max(0, past.top)).keys
  const isEcho = isComplete(ground, past) && keys.includes(strike.key)
  const echo = limit.echoStartCost + limit.furtherEchoCost * (keys.length - 1)
  return limit.quickStartCost * (1 - pause / limit.settle) + (isEcho ? echo : 0)
}

/** The key belongs to no repetition. */
export const gatherStray = (
  ground: Ground,
  past: Reading,
  strike: Strike,
  cost: number,
  cuts: readonly Cut[],
  pause: number,
  harvest: Harvest,
): void => {
  const calmAt = isIdle(past) ? past.calmAt : ms(strike.at - pause + limit.settle)
  const isHasty = calmAt !== undefined && strike.at < calmAt
  const stray = limit.strayCost[likeness(ground, past, strike)]
  gather(harvest, {
    cost: cost + stray + (isHasty ? limit.hastyStrayCost : 0),
    top: -1,
    low: 0,
    open: [],
    pace: past.pace,
    echoAt: undefined,
    calmAt,
    step: {
      before: isIdle(past) ? past.step : undefined,
      strike,
      act: 'stray',
      onset: -1,
      note: -1,
      late: false,
      top: -1,
      back: false,
    },
    cuts,
  })
}

/** A key of one of the first onsets (counted from 0) may be a beginning with something lacking. */
const earlyOnsets = 2

/** How like the first onset, or the one that was to come next, the key is. */
const likeness = (ground: Ground, past: Reading, strike: Strike): keyof typeof limit.strayCost => {
  const first = onsetAt(ground, 0)
  if (isWritten(first, strike.key)) return 'fits'
  const next = isIdle(past) ? undefined : ground.onsets[past.top + 1]
  if (next && isNear(next, strike.key)) return 'next'
  const place = ground.places.get(strike.key)?.[0]
  const isEarly = place !== undefined && place >> 5 <= earlyOnsets
  return isEarly || isNear(first, strike.key) ? 'near' : 'far'
}
