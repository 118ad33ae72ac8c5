import { isNear, isWritten, type Ground } from './ground'
import { gather, goOn, stepOf, type Harvest } from './harvest'
import { isExchanged, joinOddness } from './oddness'
import { costOfOpening, openOnset } from './opening'
import { begunWrong, dueCost, onsetAt, type Open, type Reading, type Strike } from './reading'
import * as limit from './thresholds'

/** A foreign key at the top onset, or in place of a note that lacks in the one before. */
export const gatherForeign = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
): void => {
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

/** A foreign key in place of the next onset, or of a note of it. */
export const openForeign = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
): void => {
  const index = from.top + 1
  const onset = onsetAt(ground, index)
  if (isWritten(onset, strike.key)) return
  const opening = from.cost + costOfOpening(ground, from, strike, index) + limit.slipCost
  if (opening > harvest.atMost) return
  const cost = opening + (isNear(onset, strike.key) ? 0 : limit.farKeyCost)
  const step = stepOf(from, strike, 'foreign', index, -1, false, index)
  gather(harvest, openOnset(ground, from, strike, index, cost, begunWrong(strike.at), step))
}
