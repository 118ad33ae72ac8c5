import { ms } from '@/music/units'
import { isNear, lackCost, type Ground } from './ground'
import { pushMoves } from './moves'
import {
  begunWith,
  begunWrong,
  closingCost,
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
 * All readings of what was played with one more strike, the cheapest first. A strike goes on with
 * the repetition, goes back inside the chunk, begins a repetition, or belongs to none.
 */
export const readStrike = (
  ground: Ground,
  readings: readonly Reading[],
  strike: Strike,
  pause: number,
): readonly Reading[] => {
  const atMost = (readings[0]?.cost ?? 0) + limit.keepWithin
  const next: Reading[] = []
  for (const from of readings) if (!isIdle(from)) pushMoves(ground, from, strike, atMost, next)
  const playing = readings.filter((r) => !isIdle(r))
  if (playing[0]) pushBack(ground, playing[0], strike, pause, next)
  const closing = cheapest(playing, (r) => r.cost + closingCost(ground, r))
  if (closing) pushCut(ground, closing, strike, pause, next)
  const idle = readings.find(isIdle)
  if (idle) {
    pushBegin(ground, idle, strike, idle.cost + haste(ground, idle, strike, pause), next)
    next.push(goAstray(ground, idle, strike, idle.cost, idle.cuts, strike.at - pause))
  }
  return keepBest(next)
}

const cheapest = (
  readings: readonly Reading[],
  cost: (reading: Reading) => number,
): Reading | undefined => {
  let best: Reading | undefined
  let least = Infinity
  for (const reading of readings) {
    const c = cost(reading)
    if (c < least) [best, least] = [reading, c]
  }
  return best
}

/** Back inside the chunk: notes lacking from there on are waived, they are played again. */
const pushBack = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  pause: number,
  into: Reading[],
): void => {
  for (const place of ground.places.get(strike.key) ?? []) {
    const index = place >> 5
    if (index >= from.top) break
    if (index === 0) continue
    const hurried = pause < from.pace * onsetAt(ground, from.top).gap * 0.8 ? 2 : 0
    into.push({
      ...from,
      cost: from.cost + limit.restartCost + hurried,
      top: index,
      low: index,
      open: [begunWith(place & 31, strike.at)],
      echoAt: undefined,
      step: {
        before: from.step,
        strike,
        act: 'note',
        onset: index,
        note: place & 31,
        late: false,
        top: index,
        back: true,
      },
    })
  }
}

/** The repetition ends before this strike, which begins the next one or nothing. */
const pushCut = (
  ground: Ground,
  past: Reading,
  strike: Strike,
  pause: number,
  into: Reading[],
): void => {
  const cost = past.cost + closingCost(ground, past) + haste(ground, past, strike, pause)
  const cut = (begins: boolean): readonly Cut[] => [
    ...past.cuts,
    { strike: strike.number, begins, past },
  ]
  pushBegin(ground, { ...past, cuts: cut(true), step: undefined }, strike, cost, into)
  into.push(
    goAstray(ground, { ...past, step: undefined }, strike, cost, cut(false), strike.at - pause),
  )
}

/** What it costs to begin without a pause. */
const haste = (ground: Ground, past: Reading, strike: Strike, pause: number): number => {
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

/** Begins a repetition with the first onset, with the second (the first lacking), or with a wrong key. */
const pushBegin = (
  ground: Ground,
  past: Reading,
  strike: Strike,
  cost: number,
  into: Reading[],
): void => {
  const first = onsetAt(ground, 0)
  const begin = (act: Act, onset: number, note: number, open: readonly Open[], extra: number) => {
    const cuts = isIdle(past)
      ? [...past.cuts, { strike: strike.number, begins: true, past }]
      : past.cuts
    into.push({
      cost: cost + extra,
      top: onset,
      low: 0,
      open,
      pace: past.pace,
      echoAt: undefined,
      calmAt: undefined,
      cuts,
      step: {
        before: undefined,
        strike,
        act,
        onset,
        note,
        late: false,
        top: onset,
        back: false,
      },
    })
  }
  const note = first.keys.indexOf(strike.key)
  if (note >= 0) begin('note', 0, note, [begunWith(note, strike.at)], 0)
  const second = ground.onsets[1]?.keys.indexOf(strike.key) ?? -1
  if (second >= 0) {
    begin('note', 1, second, [begunWith(second, strike.at), untouched], lackCost(first.keys.length))
  }
  if (first.auxiliaries.includes(strike.key)) begin('auxiliary', 0, -1, [untouched], 1)
  if (note < 0) {
    const far = isNear(strike.key, first.keys) ? 0 : limit.farStartCost
    begin('foreign', 0, -1, [begunWrong(strike.at)], limit.slipCost + far)
  }
}

const goAstray = (
  ground: Ground,
  past: Reading,
  strike: Strike,
  cost: number,
  cuts: readonly Cut[],
  lastAt: number,
): Reading => {
  const calmAt = isIdle(past) ? past.calmAt : ms(lastAt + limit.settle)
  const isHasty = calmAt !== undefined && strike.at < calmAt
  return {
    cost:
      cost + limit.strayCost[likeness(ground, past, strike)] + (isHasty ? limit.hastyStrayCost : 0),
    top: -1,
    low: 0,
    open: [],
    pace: past.pace,
    echoAt: undefined,
    calmAt,
    cuts,
    step: {
      before: past.step,
      strike,
      act: 'stray',
      onset: -1,
      note: -1,
      late: false,
      top: -1,
      back: false,
    },
  }
}

/** A key of one of the first onsets (counted from 0) may be a beginning with something lacking. */
const beginning = 2

/** How like the first onset, or the one that was to come next, the key is. */
const likeness = (ground: Ground, past: Reading, strike: Strike): 'fits' | 'near' | 'far' => {
  const first = onsetAt(ground, 0).keys
  if (first.includes(strike.key)) return 'fits'
  const next = isIdle(past) ? [] : (ground.onsets[past.top + 1]?.keys ?? [])
  if (isNear(strike.key, first) || isNear(strike.key, next)) return 'near'
  const place = ground.places.get(strike.key)?.[0]
  return place !== undefined && place >> 5 <= beginning ? 'near' : 'far'
}

/** Sorted by cost, each state once, no more and no dearer ones than are worth keeping. */
const keepBest = (readings: Reading[]): readonly Reading[] => {
  readings.sort((a, b) => a.cost - b.cost)
  const atMost = (readings[0]?.cost ?? 0) + limit.keepWithin
  const kept: Reading[] = []
  for (const reading of readings) {
    if (reading.cost > atMost || kept.length === limit.keepAtMost) break
    if (!kept.some((k) => isSameState(k, reading))) kept.push(reading)
  }
  return kept
}

const isSameState = (a: Reading, b: Reading): boolean => {
  if (a.top !== b.top || a.open.length !== b.open.length) return false
  if (a.open[0]?.at !== b.open[0]?.at) return false
  for (let i = 0; i < a.open.length; i++) {
    const x = a.open[i]
    const y = b.open[i]
    if (x?.mask !== y?.mask || x?.foreign !== y?.foreign) return false
  }
  return true
}
