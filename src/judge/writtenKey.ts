import type { Ground } from './ground'
import { gather, goOn, stepOf, type Harvest } from './harvest'
import { behindOddness, isExchanged, joinOddness } from './oddness'
import { costOfOpening, openOnset } from './opening'
import { begunWith, dueCost, onsetAt, type Open, type Reading, type Strike } from './reading'
import * as limit from './thresholds'

/** Only the best reading looks for the key further ahead than this many onsets. */
const lookAhead = 6

/** The key as a written note: of an onset that is open, or of one after it. */
export const gatherNotes = (
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
  gather(harvest, openOnset(ground, from, strike, index, cost, begunWith(note, strike.at), step))
}
