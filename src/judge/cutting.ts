import { gatherBeginnings, gatherStray, hasteCost } from './beginning'
import type { Ground } from './ground'
import { gather, type Harvest } from './harvest'
import { gatherMoves } from './moves'
import {
  begunWith,
  closingCost,
  isIdle,
  onsetAt,
  type Cut,
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
  const harvest: Harvest = { readings: [], atMost: Infinity }
  const best = readings.find((r) => !isIdle(r))
  for (const from of readings) {
    if (!isIdle(from)) gatherMoves(ground, from, strike, harvest, from === best)
  }
  if (best) gatherReturns(ground, best, strike, pause, harvest)
  const closing = cheapestToClose(ground, readings)
  if (closing) gatherCuts(ground, closing, strike, pause, harvest)
  const idle = readings.find(isIdle)
  if (idle) {
    const cost = idle.cost + hasteCost(ground, idle, strike, pause)
    const cut: Cut = { strike: strike.number, begins: true, past: idle }
    gatherBeginnings(ground, idle, strike, cost, [...idle.cuts, cut], harvest)
    gatherStray(ground, idle, strike, idle.cost, idle.cuts, pause, harvest)
  }
  return keepBest(harvest)
}

/** The repetition that is cheapest if nothing more comes. */
const cheapestToClose = (ground: Ground, readings: readonly Reading[]): Reading | undefined => {
  let best: Reading | undefined
  let least = Infinity
  for (const reading of readings) {
    if (isIdle(reading)) continue
    const cost = reading.cost + closingCost(ground, reading)
    if (cost < least) [best, least] = [reading, cost]
  }
  return best
}

/** People go back a little way rather than far: so many places of the key are looked at. */
const mostReturns = 8

/** Back inside the chunk: notes lacking from there on are waived, they are played again. */
const gatherReturns = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  pause: number,
  harvest: Harvest,
): void => {
  const hurried = pause < 0.8 * from.pace * onsetAt(ground, from.top).gap
  const cost = from.cost + limit.restartCost + (hurried ? limit.hurriedReturnCost : 0)
  const places = (ground.places.get(strike.key) ?? []).filter(
    (place) => place >> 5 < from.top && place >> 5 > 0,
  )
  for (const place of places.slice(-mostReturns)) {
    const index = place >> 5
    gather(harvest, {
      cost,
      top: index,
      low: index,
      open: [begunWith(place & 31, strike.at)],
      pace: from.pace,
      echoAt: undefined,
      calmAt: undefined,
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
      cuts: from.cuts,
    })
  }
}

/** The repetition ends before this strike, which begins the next one or nothing. */
const gatherCuts = (
  ground: Ground,
  past: Reading,
  strike: Strike,
  pause: number,
  harvest: Harvest,
): void => {
  const cost = past.cost + closingCost(ground, past) + hasteCost(ground, past, strike, pause)
  const begins: Cut = { strike: strike.number, begins: true, past }
  gatherBeginnings(ground, past, strike, cost, [...past.cuts, begins], harvest)
  const leaves: Cut = { strike: strike.number, begins: false, past }
  gatherStray(ground, past, strike, cost, [...past.cuts, leaves], pause, harvest)
}

/** Sorted by cost, each state once, no more and no dearer ones than are worth keeping. */
const keepBest = ({ readings, atMost }: Harvest): readonly Reading[] => {
  readings.sort((a, b) => a.cost - b.cost)
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
