import { ms } from '@/music/units'
import { isNear, lackCost, type Ground } from './ground'
import { gather, type Harvest } from './moves'
import {
  begunWith,
  begunWrong,
  isComplete,
  isIdle,
  onsetAt,
  untouched,
  type Act,
  type Cut,
  type Open,
  type Reading,
  type Step,
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
  const begin = (act: Act, onset: number, note: number, open: readonly Open[], extra: number) => {
    if (cost + extra > harvest.atMost) return
    const step = firstStep(strike, act, onset, note)
    const reading = { cost: cost + extra, top: onset, low: 0, open, pace: past.pace, step, cuts }
    gather(harvest, { ...reading, echoAt: undefined, calmAt: undefined })
  }
  const note = first.keys.indexOf(strike.key)
  if (note >= 0) begin('note', 0, note, [begunWith(note, strike.at)], 0)
  const second = ground.onsets[1]?.keys.indexOf(strike.key) ?? -1
  if (second >= 0) {
    const open = [begunWith(second, strike.at), untouched]
    begin('note', 1, second, open, lackCost(first.keys.length))
  }
  if (first.auxiliaries.includes(strike.key)) begin('auxiliary', 0, -1, [untouched], 1)
  if (note < 0) {
    const far = isNear(strike.key, first.keys) ? 0 : limit.farStartCost
    begin('foreign', 0, -1, [begunWrong(strike.at)], limit.slipCost + far)
  }
}

const firstStep = (strike: Strike, act: Act, onset: number, note: number): Step => ({
  before: undefined,
  strike,
  act,
  onset,
  note,
  late: false,
  top: onset,
  back: false,
})

/** What it costs to begin, or to leave, without a pause; a long pause before the first key speaks for it. */
export const hasteCost = (ground: Ground, past: Reading, strike: Strike, pause: number): number => {
  if (pause >= limit.settle) {
    const isFresh =
      !isIdle(past) &&
      past.pace > 0 &&
      pause > limit.freshGap * past.pace * onsetAt(ground, past.top).gap &&
      onsetAt(ground, 0).keys.includes(strike.key)
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
  const first = onsetAt(ground, 0).keys
  if (first.includes(strike.key)) return 'fits'
  const next = isIdle(past) ? undefined : ground.onsets[past.top + 1]
  if (next && isNear(strike.key, next.keys)) return 'next'
  const place = ground.places.get(strike.key)?.[0]
  const isEarly = place !== undefined && place >> 5 <= earlyOnsets
  return isEarly || isNear(strike.key, first) ? 'near' : 'far'
}
