import type { Ms } from '@/music/units'
import { isNear, lackCost, type Ground } from './ground'
import {
  begunWith,
  begunWrong,
  dueCost,
  onsetAt,
  untouched,
  type Open,
  type Reading,
  type Strike,
} from './reading'
import * as limit from './thresholds'

/** Every way of taking one strike as a part of the repetition that goes on, pushed onto `into`. */
export const pushMoves = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  atMost: number,
  into: Reading[],
): void => {
  const places = ground.places.get(strike.key)
  if (places) {
    for (const place of places) {
      const onset = place >> 5
      if (onset > from.top - limit.openOnsets && onset >= from.low) {
        push(into, takeNote(ground, from, strike, onset, place & 31), atMost)
      }
    }
  }
  push(into, takeAuxiliary(ground, from, strike), atMost)
  push(into, takeBounce(from, strike), atMost)
  push(into, takeEcho(ground, from, strike), atMost)
  push(into, takeForeign(ground, from, strike, 0), atMost)
  push(into, takeForeign(ground, from, strike, 1), atMost)
  if (from.top < ground.last) push(into, openForeign(ground, from, strike), atMost)
}

const push = (into: Reading[], reading: Reading | undefined, atMost: number): void => {
  if (reading && reading.cost <= atMost) into.push(reading)
}

const takeNote = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  index: number,
  note: number,
): Reading | undefined => {
  if (index > from.top) {
    const next = moveOn(ground, from, strike, index)
    return {
      ...next,
      open: [begunWith(note, strike.at), ...next.open.slice(1)],
      step: stepOf(from, strike, 'note', index, note, false, index),
    }
  }
  const back = from.top - index
  const open = from.open[back]
  const bit = 1 << note
  if (!open || (open.mask & bit) !== 0) return undefined
  const onset = onsetAt(ground, index)
  const late = back > 0 && isExchanged(ground, from, back, strike.at)
  const odd = onset.rolled ? 0 : joinCost(ground, from, back, strike.at)
  const struck: Open = {
    mask: open.mask | bit,
    struck: open.struck + 1,
    foreign: open.foreign,
    at: open.at ?? strike.at,
    late: open.late || late,
    odd: Math.max(open.odd, odd),
  }
  return {
    ...from,
    cost:
      from.cost -
      dueCost(onset, open, back === 0) +
      dueCost(onset, struck, back === 0) +
      (late ? (open.late ? limit.furtherEchoCost : limit.orderCost) : 0) +
      (struck.odd - open.odd) +
      (back > 0 && !late ? behindCost(from, back, strike.at) : 0),
    open: from.open.with(back, struck),
    step: stepOf(from, strike, 'note', index, note, late, from.top),
  }
}

/** How odd it is that a note comes so long after the next onset began, though not so late as to be a slip. */
const behindCost = (from: Reading, back: number, at: Ms): number => {
  const next = from.open[laterThan(from, back)]?.at ?? at
  return clamp((at - next) / limit.stragglerLeast, 0, 1) * limit.oddTimeCost
}

/** The nearest onset touched after the one `back` before the top; -1 when there is none. */
const laterThan = (from: Reading, back: number): number => {
  let later = back - 1
  while (later >= 0 && from.open[later]?.at === undefined) later--
  return later
}

/** A note of the onset `back` before the top comes now: are the two exchanged, or only apart? */
const isExchanged = (ground: Ground, from: Reading, back: number, at: Ms): boolean => {
  const open = from.open[back]
  const later = laterThan(from, back)
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
  const isWhole = next.struck === nextOnset.keys.length
  if (!isWhole) {
    const room = gap ? clamp(limit.apartGap * gap, limit.apartLeast, limit.apartMost) : 0
    return after > (room || limit.apartUnknown)
  }
  const room = gap ? clamp(limit.exchangedGap * gap, limit.exchangedLeast, limit.exchangedMost) : 0
  return after > (room || limit.exchangedUnknown)
}

/** Opens the onset at `index`: what is lacking before it falls due. */
const moveOn = (ground: Ground, from: Reading, strike: Strike, index: number): Reading => {
  const top = from.open[0]
  if (!top) throw new Error('a repetition has a top onset')
  const onset = onsetAt(ground, from.top)
  let skipped = 0
  const open: Open[] = [untouched]
  for (let i = index - 1; i > from.top; i--) {
    skipped += lackCost(onsetAt(ground, i).keys.length)
    if (open.length < limit.openOnsets) open.push(untouched)
  }
  for (const old of from.open) if (open.length < limit.openOnsets) open.push(old)
  // What was leapt over is not waited for, or late notes would be paid back dearer than they were.
  const isLeap = skipped > limit.leapCost
  const ticks = onsetAt(ground, index).start - onset.start
  // After a stutter the music goes on from the second strike.
  const since = from.echoAt ?? top.at
  const passed = since === undefined ? 0 : strike.at - since
  return {
    ...from,
    cost:
      from.cost +
      dueCost(onset, top, false) -
      dueCost(onset, top, true) +
      (isLeap ? limit.leapCost : skipped) +
      (passed > 0 ? stepTimeCost(from.pace * ticks, passed) : 0),
    top: index,
    low: isLeap ? index : from.low,
    open,
    pace: passed > 0 && ticks > 0 ? nextPace(from.pace, passed / ticks) : from.pace,
    echoAt: undefined,
  }
}

/** How odd it is that the next onset comes after `passed` where `expected` was written (0 = unknown). */
const stepTimeCost = (expected: number, passed: number): number => {
  if (expected <= 0) return 0
  const ratio = passed / expected
  if (ratio < 0.7) return Math.min(3, (0.7 - ratio) * 6)
  return ratio > 1.6 ? Math.min(2, (ratio - 1.6) * 2) : 0
}

/** How odd it is that a note joins an onset so long after its first. */
const joinCost = (ground: Ground, from: Reading, back: number, at: Ms): number => {
  const first = from.open[back]?.at
  if (first === undefined) return 0
  const gap = from.pace * onsetAt(ground, from.top - back).gap || limit.unknownGap
  const free = Math.max(80, 0.35 * gap)
  return clamp((at - first - free) / Math.max(80, 0.4 * gap), 0, 1) * limit.oddTimeCost
}

/** The pace follows the player, a good third at a time, never by more than a factor of two. */
const nextPace = (pace: number, seen: number): number =>
  pace === 0 ? seen : 0.6 * pace + 0.4 * clamp(seen, pace / 2, pace * 2)

/** A note that needs not come but may: an ornament's, or the other hand's strike of a unison. */
const takeAuxiliary = (ground: Ground, from: Reading, strike: Strike): Reading | undefined => {
  const allows = (index: number): boolean => {
    const onset = ground.onsets[index]
    if (!onset) return false
    return (
      onset.auxiliaries.includes(strike.key) ||
      (index === from.top && onset.notes.some((n) => n.key === strike.key && n.ids.length > 1))
    )
  }
  const onset = [from.top, from.top + 1, from.top - 1].find(allows)
  if (onset === undefined) return undefined
  return { ...from, step: stepOf(from, strike, 'auxiliary', onset, -1, false, from.top) }
}

/** The key itself, not the finger, struck twice. */
const takeBounce = (from: Reading, strike: Strike): Reading | undefined => {
  let step = from.step
  while (step && strike.at - step.strike.at < limit.bounce) {
    if (step.strike.key === strike.key) {
      const bounced = stepOf(from, strike, 'auxiliary', step.onset, -1, false, from.top)
      return { ...from, cost: from.cost + limit.bounceCost, step: bounced }
    }
    step = step.before
  }
  return undefined
}

/** A key of the top onset, struck again. Further keys of it at once are the same slip. */
const takeEcho = (ground: Ground, from: Reading, strike: Strike): Reading | undefined => {
  const top = from.open[0]
  const note = onsetAt(ground, from.top).keys.indexOf(strike.key)
  if (!top || note < 0 || (top.mask & (1 << note)) === 0) return undefined
  const isSame = from.echoAt !== undefined && strike.at - from.echoAt < limit.echoTogether
  const gap = from.pace * onsetAt(ground, from.top).gap
  const isOld = top.at !== undefined && strike.at - top.at > Math.max(limit.settle, 1.6 * gap)
  return {
    ...from,
    cost:
      from.cost +
      (isSame ? limit.furtherEchoCost : limit.echoCost + (isOld ? limit.oddTimeCost : 0)),
    echoAt: strike.at,
    step: stepOf(from, strike, 'echo', from.top, note, false, from.top),
  }
}

/** A foreign key at the top onset or the one before it. */
const takeForeign = (
  ground: Ground,
  from: Reading,
  strike: Strike,
  back: 0 | 1,
): Reading | undefined => {
  const open = from.open[back]
  const index = from.top - back
  if (!open || index < from.low) return undefined
  const onset = onsetAt(ground, index)
  if (onset.keys.includes(strike.key)) return undefined
  const lacking = onset.keys.length - open.struck
  if (back === 1 && (open.foreign >= lacking || isExchanged(ground, from, back, strike.at)))
    return undefined
  const more: Open = { ...open, foreign: open.foreign + 1, at: open.at ?? strike.at }
  return {
    ...from,
    cost:
      from.cost -
      dueCost(onset, open, back === 0) +
      dueCost(onset, more, back === 0) +
      farCost(strike, onset.keys) +
      (back === 0 ? 0.75 * joinCost(ground, from, 0, strike.at) : 1),
    open: from.open.with(back, more),
    step: stepOf(from, strike, 'foreign', index, -1, false, from.top),
  }
}

/** A foreign key in place of the next onset, or of a note of it. */
const openForeign = (ground: Ground, from: Reading, strike: Strike): Reading | undefined => {
  const index = from.top + 1
  const onset = onsetAt(ground, index)
  if (onset.keys.includes(strike.key)) return undefined
  const next = moveOn(ground, from, strike, index)
  const wrong = begunWrong(strike.at)
  return {
    ...next,
    cost: next.cost + dueCost(onset, wrong, true) + farCost(strike, onset.keys),
    open: [wrong, ...next.open.slice(1)],
    step: stepOf(from, strike, 'foreign', index, -1, false, index),
  }
}

const farCost = (strike: Strike, keys: readonly Strike['key'][]): number =>
  isNear(strike.key, keys) ? 0 : limit.farKeyCost

export const clamp = (x: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, x))

const stepOf = (
  from: Reading,
  strike: Strike,
  act: 'note' | 'foreign' | 'echo' | 'auxiliary',
  onset: number,
  note: number,
  late: boolean,
  top: number,
): NonNullable<Reading['step']> => ({
  before: from.step,
  strike,
  act,
  onset,
  note,
  late,
  top,
  back: false,
})
