import type { Ground } from './ground'
import { nextPace, stepOddness } from './oddness'
import {
  dueCost,
  onsetAt,
  untouched,
  type Open,
  type Reading,
  type Step,
  type Strike,
} from './reading'
import * as limit from './thresholds'

/** What falls due when the onset at `index` opens: what lacks before it, and odd timing. */
export const costOfOpening = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  index: number,
): number => {
  const top = from.open[0]
  const onset = onsetAt(ground, from.top)
  if (!top) return Infinity
  const passed = passedSince(from, strike)
  return (
    dueCost(onset, top, false) -
    dueCost(onset, top, true) +
    Math.min(limit.leapCost, skippedCost(ground, from.top, index)) +
    stepOddness(msBetween(ground, from, index), passed) +
    (index > from.top + 1 ? inPlaceCost(ground, from, index, passed) : 0)
  )
}

/** What is written between the top onset and a later one, at the player's pace; 0 while that is unknown. */
const msBetween = (ground: Ground, from: Reading, index: number): number =>
  from.pace * (onsetAt(ground, index).start - onsetAt(ground, from.top).start)

/** A key that would skip an onset, but comes when that onset was due, was rather meant for it. */
const inPlaceCost = (ground: Ground, from: Reading, index: number, passed: number): number => {
  const isTooSoon = stepOddness(msBetween(ground, from, index), passed) > limit.tooSoonOdd
  const isInPlace = stepOddness(msBetween(ground, from, from.top + 1), passed) === 0
  return from.pace > 0 && isTooSoon && isInPlace ? limit.inPlaceCost : 0
}

/** What the onsets between two cost when they are left out. */
const skippedCost = (ground: Ground, from: number, to: number): number =>
  onsetAt(ground, to).lackBefore - onsetAt(ground, from + 1).lackBefore

/** Time since the top onset; after a stutter the music goes on from the second strike. */
const passedSince = (from: Reading, strike: Strike): number => {
  const since = from.echoAt ?? from.open[0]?.at
  return since === undefined ? 0 : strike.at - since
}

/** Opens the onset at `index` with what has struck it. */
export const openOnset = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  index: number,
  cost: number,
  begun: Open,
  step: Step,
): Reading => {
  const opened: Open[] = [begun]
  for (let i = index - 1; i > from.top && opened.length < limit.openOnsets; i--) {
    opened.push(untouched)
  }
  for (const old of from.open) if (opened.length < limit.openOnsets) opened.push(old)
  const ticks = onsetAt(ground, index).start - onsetAt(ground, from.top).start
  const passed = passedSince(from, strike)
  // What was leapt over is not waited for, or late notes would be paid back dearer than they were.
  const isLeap = skippedCost(ground, from.top, index) > limit.leapCost
  return {
    cost,
    top: index,
    low: isLeap ? index : from.low,
    open: opened,
    pace: passed > 0 && ticks > 0 ? nextPace(from.pace, passed / ticks) : from.pace,
    echoAt: undefined,
    calmAt: undefined,
    step,
    cuts: from.cuts,
  }
}
