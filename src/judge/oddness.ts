import type { Ms } from '@/music/units'
import type { Ground } from './ground'
import { onsetAt, type Reading } from './reading'
import * as limit from './thresholds'

/** How odd it is that the next onset comes after `passed` where `expected` was written (0 = unknown). */
export const stepOddness = (expected: number, passed: number): number => {
  if (expected <= 0 || passed <= 0) return 0
  const ratio = passed / expected
  if (ratio < 0.7) return Math.min(3, (0.7 - ratio) * 6)
  return ratio > 1.6 ? Math.min(2, (ratio - 1.6) * 2) : 0
}

/** How odd it is that a key joins the onset `back` before the top so long after its first. */
export const joinOddness = (ground: Ground, from: Reading, back: number, at: Ms): number => {
  const first = from.open[back]?.at
  if (first === undefined) return 0
  const gap = from.pace * onsetAt(ground, from.top - back).gap || limit.unknownGap
  const free = Math.max(80, 0.35 * gap)
  return clamp((at - first - free) / Math.max(80, 0.4 * gap), 0, 1) * limit.oddTimeCost
}

/** How odd it is that a note comes so long after the next onset began, though not so late as to be a slip. */
export const behindOddness = (from: Reading, back: number, at: Ms): number => {
  const next = from.open[laterThan(from, back)]?.at ?? at
  return clamp((at - next) / limit.stragglerLeast, 0, 1) * limit.oddTimeCost
}

/** A note of the onset `back` before the top comes now: are the two exchanged, or only apart? */
export const isExchanged = (ground: Ground, from: Reading, back: number, at: Ms): boolean => {
  const later = laterThan(from, back)
  const open = from.open[back]
  const next = from.open[later]
  if (!open || next?.at === undefined) return false
  const after = at - next.at
  const onset = onsetAt(ground, from.top - back)
  const nextOnset = onsetAt(ground, from.top - later)
  const gap = from.pace * (nextOnset.start - onset.start)
  if (open.at !== undefined && open.at <= next.at) {
    const room = limit.stragglerGap * (gap || limit.unknownGap) * (onset.rolled ? 2 : 1)
    return after > Math.max(limit.stragglerLeast, room)
  }
  if (next.struck < nextOnset.keys.length) {
    const room = clamp(limit.apartGap * gap, limit.apartLeast, limit.apartMost)
    return after > (gap > 0 ? room : limit.apartUnknown)
  }
  const room = clamp(limit.exchangedGap * gap, limit.exchangedLeast, limit.exchangedMost)
  return after > (gap > 0 ? room : limit.exchangedUnknown)
}

/** The nearest onset touched after the one `back` before the top; -1 when there is none. */
const laterThan = (from: Reading, back: number): number => {
  let later = back - 1
  while (later >= 0 && from.open[later]?.at === undefined) later--
  return later
}

/** The pace follows the player, a good third at a time, never by more than a factor of two. */
export const nextPace = (pace: number, seen: number): number =>
  pace === 0 ? seen : 0.6 * pace + 0.4 * clamp(seen, pace / 2, pace * 2)

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x))
