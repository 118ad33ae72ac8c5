import { isNear, isWritten, type Ground } from './ground'
import { behindOddness, isExchanged, joinOddness, nextPace, stepOddness } from './oddness'
import {
  begunWith,
  begunWrong,
  dueCost,
  onsetAt,
  untouched,
  type Act,
  type Open,
  type Reading,
  type Step,
  type Strike,
} from './reading'
import * as limit from './thresholds'

/** Where new readings are gathered; dearer ones than `atMost` are not worth making. */
export interface Harvest {
  readonly readings: Reading[]
  atMost: number
}

export const gather = (harvest: Harvest, reading: Reading): void => {
  if (reading.cost > harvest.atMost) return
  harvest.readings.push(reading)
  harvest.atMost = Math.min(harvest.atMost, reading.cost + limit.keepWithin)
}

/** Every way of taking one strike as a part of the repetition that goes on. */
export const gatherMoves = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
  isBest: boolean,
): void => {
  gatherNotes(ground, from, strike, harvest, isBest)
  if (ground.allowed.has(strike.key)) gatherAuxiliary(ground, from, strike, harvest)
  gatherBounce(from, strike, harvest)
  gatherEcho(ground, from, strike, harvest)
  gatherForeign(ground, from, strike, harvest)
  if (from.top < ground.last) openForeign(ground, from, strike, harvest)
}

/** Only the best reading looks for the key further ahead than this many onsets. */
const lookAhead = 6

const gatherNotes = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
  isBest: boolean,
): void => {
  const places = ground.places.get(strike.key)
  if (!places) return
  const lowest = Math.max(from.low, from.top - limit.openOnsets + 1)
  const highest = isBest ? ground.last : from.top + lookAhead
  for (let i = firstFrom(places, lowest << 5); i < places.length; i++) {
    const place = places[i] ?? 0
    const index = place >> 5
    if (index > highest) return
    if (index > from.top) openNote(ground, from, strike, harvest, index, place & 31)
    else takeNote(ground, from, strike, harvest, index, place & 31)
  }
}

/** The first index of a sorted list whose value is at least `least`. */
const firstFrom = (sorted: readonly number[], least: number): number => {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle] ?? 0) < least) low = middle + 1
    else high = middle
  }
  return low
}

/** A note of an onset that is open: in any order, together or apart, or so late that the order is lost. */
const takeNote = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
  index: number,
  note: number,
): void => {
  const back = from.top - index
  const open = from.open[back]
  const bit = 1 << note
  if (!open || (open.mask & bit) !== 0) return
  const onset = onsetAt(ground, index)
  const late = back > 0 && isExchanged(ground, from, back, strike.at)
  const odd = onset.rolled ? 0 : joinOddness(ground, from, back, strike.at)
  const struck: Open = {
    mask: open.mask | bit,
    struck: open.struck + 1,
    foreign: open.foreign,
    at: open.at ?? strike.at,
    late: open.late || late,
    odd: Math.max(open.odd, odd),
  }
  const due = dueCost(onset, struck, back === 0) - dueCost(onset, open, back === 0)
  const order = late ? (open.late ? limit.furtherEchoCost : limit.orderCost) : 0
  const behind = back > 0 && !late ? behindOddness(from, back, strike.at) : 0
  const cost = from.cost + due + order + behind + (struck.odd - open.odd)
  if (cost > harvest.atMost) return
  const step = stepOf(from, strike, 'note', index, note, late, from.top)
  gather(harvest, goOn(from, cost, from.open.with(back, struck), step, from.echoAt))
}

/** A note of an onset after the top one. */
const openNote = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
  index: number,
  note: number,
): void => {
  const cost = from.cost + costOfOpening(ground, from, strike, index)
  if (cost > harvest.atMost) return
  const step = stepOf(from, strike, 'note', index, note, false, index)
  gather(harvest, open(ground, from, strike, index, cost, begunWith(note, strike.at), step))
}

/** A foreign key in place of the next onset, or of a note of it. */
const openForeign = (ground: Ground, from: Reading, strike: Strike, harvest: Harvest): void => {
  const index = from.top + 1
  const onset = onsetAt(ground, index)
  if (isWritten(onset, strike.key)) return
  const opening = from.cost + costOfOpening(ground, from, strike, index) + limit.slipCost
  if (opening > harvest.atMost) return
  const cost = opening + (isNear(onset, strike.key) ? 0 : limit.farKeyCost)
  const step = stepOf(from, strike, 'foreign', index, -1, false, index)
  gather(harvest, open(ground, from, strike, index, cost, begunWrong(strike.at), step))
}

/** What falls due when the onset at `index` opens: what lacks before it, and odd timing. */
const costOfOpening = (ground: Ground, from: Reading, strike: Strike, index: number): number => {
  const top = from.open[0]
  const onset = onsetAt(ground, from.top)
  if (!top) return Infinity
  const ticks = onsetAt(ground, index).start - onset.start
  return (
    dueCost(onset, top, false) -
    dueCost(onset, top, true) +
    Math.min(limit.leapCost, skippedCost(ground, from.top, index)) +
    stepOddness(from.pace * ticks, passedSince(from, strike))
  )
}

/** What the onsets between two cost when they are left out. */
const skippedCost = (ground: Ground, from: number, to: number): number =>
  onsetAt(ground, to).lackBefore - onsetAt(ground, from + 1).lackBefore

/** Time since the top onset; after a stutter the music goes on from the second strike. */
const passedSince = (from: Reading, strike: Strike): number => {
  const since = from.echoAt ?? from.open[0]?.at
  return since === undefined ? 0 : strike.at - since
}

const open = (
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

/** A note that needs not come but may: an ornament's, or the other hand's strike of a unison. */
const gatherAuxiliary = (ground: Ground, from: Reading, strike: Strike, harvest: Harvest): void => {
  const onset = [from.top, from.top + 1, from.top - 1].find(
    (index) =>
      ground.onsets[index]?.auxiliaries.includes(strike.key) ||
      (index === from.top && onsetAt(ground, index).unisons.includes(strike.key)),
  )
  if (onset === undefined) return
  const step = stepOf(from, strike, 'auxiliary', onset, -1, false, from.top)
  gather(harvest, goOn(from, from.cost, from.open, step, from.echoAt))
}

/** The key itself, not the finger, struck twice. */
const gatherBounce = (from: Reading, strike: Strike, harvest: Harvest): void => {
  let last = from.step
  while (last && strike.at - last.strike.at < limit.bounce) {
    if (last.strike.key === strike.key) {
      const step = stepOf(from, strike, 'auxiliary', last.onset, -1, false, from.top)
      gather(harvest, goOn(from, from.cost + limit.bounceCost, from.open, step, from.echoAt))
      return
    }
    last = last.before
  }
}

/** A key of the top onset, struck again. Further keys of it at once are the same slip. */
const gatherEcho = (ground: Ground, from: Reading, strike: Strike, harvest: Harvest): void => {
  const top = from.open[0]
  const onset = onsetAt(ground, from.top)
  if (!top || !isWritten(onset, strike.key)) return
  const note = onset.keys.indexOf(strike.key)
  if ((top.mask & (1 << note)) === 0) return
  const isSame = from.echoAt !== undefined && strike.at - from.echoAt < limit.echoTogether
  const isOld =
    top.at !== undefined && strike.at - top.at > Math.max(limit.settle, 1.6 * from.pace * onset.gap)
  const echo = isSame ? limit.furtherEchoCost : limit.echoCost + (isOld ? limit.oddTimeCost : 0)
  if (from.cost + echo > harvest.atMost) return
  const step = stepOf(from, strike, 'echo', from.top, note, false, from.top)
  gather(harvest, goOn(from, from.cost + echo, from.open, step, strike.at))
}

/** A foreign key at the top onset, or in place of a note that lacks in the one before. */
const gatherForeign = (ground: Ground, from: Reading, strike: Strike, harvest: Harvest): void => {
  const atTop = 0.75 * joinOddness(ground, from, 0, strike.at)
  addForeign(ground, from, strike, harvest, 0, atTop)
  const before = from.open[1]
  if (!before || from.top - 1 < from.low) return
  const lacking = onsetAt(ground, from.top - 1).keys.length - before.struck
  if (before.foreign >= lacking || isExchanged(ground, from, 1, strike.at)) return
  addForeign(ground, from, strike, harvest, 1, 1)
}

const addForeign = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
  back: 0 | 1,
  odd: number,
): void => {
  const open = from.open[back]
  const onset = onsetAt(ground, from.top - back)
  if (!open || isWritten(onset, strike.key)) return
  const more: Open = {
    mask: open.mask,
    struck: open.struck,
    foreign: open.foreign + 1,
    at: open.at ?? strike.at,
    late: open.late,
    odd: open.odd,
  }
  const due = dueCost(onset, more, back === 0) - dueCost(onset, open, back === 0)
  const far = isNear(onset, strike.key) ? 0 : limit.farKeyCost
  const cost = from.cost + due + far + odd
  if (cost > harvest.atMost) return
  const step = stepOf(from, strike, 'foreign', from.top - back, -1, false, from.top)
  gather(harvest, goOn(from, cost, from.open.with(back, more), step, from.echoAt))
}

/** The same repetition, one step on, the top onset as before. */
const goOn = (
  from: Reading,
  cost: number,
  open: readonly Open[],
  step: Step,
  echoAt: Reading['echoAt'],
): Reading => ({
  cost,
  top: from.top,
  low: from.low,
  open,
  pace: from.pace,
  echoAt,
  calmAt: undefined,
  step,
  cuts: from.cuts,
})

const stepOf = (
  from: Reading,
  strike: Strike,
  act: Act,
  onset: number,
  note: number,
  late: boolean,
  top: number,
): Step => ({ before: from.step, strike, act, onset, note, late, top, back: false })
