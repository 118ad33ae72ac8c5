import { isWritten, type Ground } from './ground'
import { gather, goOn, stepOf, type Harvest } from './harvest'
import { onsetAt, type Reading, type Strike } from './reading'
import * as limit from './thresholds'

/** A note that needs not come but may: an ornament's, or the other hand's strike of a unison. */
export const gatherAuxiliary = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
): void => {
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
export const gatherBounce = (from: Reading, strike: Strike, harvest: Harvest): void => {
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
export const gatherEcho = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  harvest: Harvest,
): void => {
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
