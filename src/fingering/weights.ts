import type { Finger } from '@/music/music'
import type { Hold } from './candidates'
import { mostKeys, type Grip } from './grips'
import {
  isFar,
  isImpractical,
  isLifted,
  moveCost,
  noteCosts,
  positionCosts,
  rules,
  spanCost,
  spanCosts,
  stepCosts,
  sumOf,
  thumbPlace,
  type Costs,
  type Rule,
  type Touch,
} from './rules'
import type { Spans } from './spans'

/** What a part of a fingering costs, and how often it asks for what cannot be done. */
export interface Weight {
  readonly costs: Costs
  /** The sum of the costs. */
  readonly cost: number
  readonly impractical: number
}

const weight = (costs: Costs, impractical = 0): Weight => ({
  costs,
  cost: sumOf(costs),
  impractical,
})

const weightless = weight({})

/**
 * The vertical cost after Al Kasimi, Nichols & Raphael 2007: each finger by itself, rules 1 to 3
 * between neighbouring fingers and between the outer ones, and thumb and little finger on black keys
 * beside white ones. Of a single note it is rules 6 and 10 of Parncutt et al.
 */
export const weighGrip = (grip: Grip, all: Hold, spans: Spans): Weight => {
  const parts: Costs[] = []
  let impractical = 0
  for (let i = 0; i < all.length; i++) {
    const touch = all[i]
    if (touch && isStruck(grip, i)) parts.push(noteCosts(touch))
  }
  for (const [i, j] of spansWithin[all.length] ?? spansWithin[mostKeys] ?? []) {
    const one = all[i]
    const other = all[j]
    if (!one || !other || !(isStruck(grip, i) || isStruck(grip, j))) continue
    parts.push(spanCosts(one, other, spans))
    if (isImpractical(one, other, spans) || other.place - one.place > spans.widestChord)
      impractical++
  }
  if (all.length > 1 && all.some(({ black }) => !black)) parts.push(outerOnBlack(all))
  return weight(addCosts(parts), impractical)
}

const isStruck = (grip: Grip, i: number): boolean => grip.keys[i]?.heldFrom === undefined

/** The neighbouring and the outer keys of chords of none to five keys. */
const spansWithin: readonly (readonly (readonly [number, number])[])[] = [0, 1, 2, 3, 4, 5].map(
  (count) => [
    ...Array.from({ length: Math.max(0, count - 1) }, (_, i) => [i, i + 1] as const),
    ...(count > 2 ? [[0, count - 1] as const] : []),
  ],
)

/** Rules 10 and 11 in a chord: thumb or little finger reaches in between black keys. */
const outerOnBlack = (all: Hold): Costs => {
  const on = (finger: Finger): number =>
    all.some((touch) => touch.finger === finger && touch.black) ? 2 : 0
  return { thumbOnBlack: on(1), fiveOnBlack: on(5) }
}

/**
 * The horizontal cost from one grip to the next. Between single notes it is the rules of Parncutt et
 * al. With chords it is the cheaper of two ways: the fingers reach their keys from where they lie,
 * rules 1 to 3 averaged over the notes, or the hand is lifted. Nothing after a rest.
 */
export const weighStep = (
  from: Grip,
  before: Hold,
  to: Grip,
  after: Hold,
  spans: Spans,
): Weight => {
  if (to.isAfterRest) return weightless
  const one = before[0]
  const other = after[0]
  if (!one || !other) return weightless
  if (before.length === 1 && after.length === 1)
    return to.keys[0]?.heldFrom === undefined ? melodicStep(one, other, spans) : weightless
  if (isSameKeys(from, to)) return weight({ change: changed(before, after) })
  return to.keys.some(({ heldFrom }) => heldFrom !== undefined)
    ? heldStep(to, before, after, spans)
    : chordStep(before, after, spans)
}

const melodicStep = (from: Touch, to: Touch, spans: Spans): Weight =>
  weight(stepCosts(from, to, spans), isForbidden(from, to, spans) ? 1 : 0)

/** One finger on two keys in a row, or farther than practical; but far away the hand may be lifted. */
export const isForbidden = (from: Touch, to: Touch, spans: Spans): boolean => {
  if (isLifted(from, to, spans)) return !isFar(from, to, spans)
  return isImpractical(from, to, spans)
}

const isSameKeys = (from: Grip, to: Grip): boolean =>
  from.keys.length === to.keys.length &&
  to.keys.every(({ place, heldFrom }, i) => heldFrom === undefined && place === from.keys[i]?.place)

/** The same chord again with other fingers: one a finger (Balliauw et al. 2017, rule 15). */
const changed = (before: Hold, after: Hold): number =>
  after.filter(({ finger }, i) => finger !== before[i]?.finger).length

/** To take over a held key with another finger. Fingers are changed silently now and then (common practice, no source). */
const substitution = 4

/** With a key held on the hand stays: the freed fingers go to the struck keys as in a melody. */
const heldStep = (to: Grip, before: Hold, after: Hold, spans: Spans): Weight => {
  const heldFrom = to.keys.map((key) => key.heldFrom)
  const freed = before.filter((_, i) => !heldFrom.includes(i))
  const struck = after.filter((_, i) => heldFrom[i] === undefined)
  const taken = after.filter((touch, i) => {
    const was = heldFrom[i]
    return was !== undefined && before[was]?.finger !== touch.finger
  })
  const [one, other] = [freed[0], struck[0]]
  const change = substitution * taken.length
  if (one && other && freed.length === 1 && struck.length === 1) {
    const { costs, impractical } = melodicStep(one, other, spans)
    return weight(addCosts([costs, { change }]), impractical)
  }
  const moved = one && other ? chordStep(freed, struck, spans).costs : {}
  return weight(addCosts([moved, { change }]))
}

const chordStep = (before: Hold, after: Hold, spans: Spans): Weight => {
  const lifted = moveCost(handPlace(after) - handPlace(before))
  const stretched = reachCost(before, after, spans, lifted)
  return stretched < lifted
    ? { costs: { stretch: stretched }, cost: stretched, impractical: 0 }
    : { costs: { move: lifted }, cost: lifted, impractical: 0 }
}

/**
 * Rules 1 to 3 over all pairs, for each note of the larger chord; infinite where a finger cannot get
 * there or it costs more than it may.
 */
const reachCost = (before: Hold, after: Hold, spans: Spans, atMost: number): number => {
  const notes = Math.max(before.length, after.length)
  let sum = 0
  for (const from of before)
    for (const to of after) {
      if (from.finger === to.finger && from.place === to.place) continue
      if (from.finger === to.finger || from.place === to.place) return Infinity
      if (isImpractical(from, to, spans)) return Infinity
      sum += spanCost(from, to, spans)
      if (sum > atMost * notes) return Infinity
    }
  return sum / notes
}

/** Where the hand lies: the place of its thumb, were it at rest. */
const handPlace = (all: Hold): number => {
  let sum = 0
  for (const touch of all) sum += thumbPlace(touch)
  return sum / all.length
}

/** Rules 4, 5 and 7 over three grips of single notes. */
export const linePosition = ([one]: Hold, [two]: Hold, [three]: Hold, spans: Spans): Weight =>
  one && two && three ? weight(positionCosts(one, two, three, spans)) : weightless

/** Three single notes, all struck, without a rest between them. */
export const isLine = (one: Grip, two: Grip, three: Grip): boolean =>
  one.keys.length === 1 &&
  two.keys.length === 1 &&
  three.keys.length === 1 &&
  !two.isAfterRest &&
  !three.isAfterRest

export const addCosts = (parts: readonly Costs[]): Costs => {
  const sums: Partial<Record<Rule, number>> = {}
  for (const rule of rules) {
    let sum = 0
    for (const part of parts) sum += part[rule] ?? 0
    if (sum > 0) sums[rule] = sum
  }
  return sums
}
