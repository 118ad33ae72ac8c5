import { ms, type Ms } from '@/music/units'
import type { Ground } from './ground'
import { isComplete, isIdle, onsetAt, onsetsLeft, type Reading } from './reading'
import * as limit from './thresholds'

/** When silence after a strike at `at` decides what was played; undefined when nothing is pending. */
export const concludeAt = (
  ground: Ground,
  readings: readonly Reading[],
  at: Ms,
): Ms | undefined => {
  const best = readings[0]
  if (!best) return undefined
  return ms(at + Math.round(waitFor(ground, readings, best)))
}

const waitFor = (ground: Ground, readings: readonly Reading[], best: Reading): number => {
  const unsure = doubtfulCut(ground, readings)
  const own = ownWait(ground, readings, best)
  return unsure === undefined ? own : Math.min(own, unsure)
}

const ownWait = (ground: Ground, readings: readonly Reading[], best: Reading): number => {
  if (isIdle(best)) return limit.strayWait
  const { ticksPerQuarter, barLength } = ground.chunk
  const known = Math.min(best.pace, limit.slowestQuarter / ticksPerQuarter)
  const pace = known || limit.unknownQuarter / ticksPerQuarter
  const gap = pace * onsetAt(ground, best.top).gap
  const left = onsetsLeft(ground, best)
  if (left > 0) {
    return gap + Math.max(limit.silenceLeast, limit.silenceBars * barLength * pace)
  }
  if (isComplete(ground, best) && !isLacking(ground, best)) return limit.settle
  const isDoubtful = readings.some(
    (r) => !isIdle(r) && r.top < ground.last && r.cost < best.cost + limit.cutLead,
  )
  return Math.max(limit.settleLacking, known > 0 ? 1.6 * gap : 0, isDoubtful ? limit.doubtWait : 0)
}

/** A note of an onset before the last could still come, late. */
const isLacking = (ground: Ground, { open, top, low }: Reading): boolean =>
  open.some(
    (o, back) =>
      back > 0 &&
      top - back >= low &&
      o.struck + o.foreign < onsetAt(ground, top - back).keys.length,
  )

/**
 * A repetition was complete, and the key after it is either one too many or the beginning of the
 * next: when the next onset does not follow in time, the silence decides.
 */
const doubtfulCut = (ground: Ground, readings: readonly Reading[]): number | undefined => {
  const best = readings[0]
  const cut = best?.cuts[0]
  if (!best || !cut || !isComplete(ground, cut.past)) return undefined
  const gap = best.pace * onsetAt(ground, Math.max(0, best.top)).gap
  return Math.max(limit.settle, 1.5 * gap)
}
