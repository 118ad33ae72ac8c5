import type { Finger } from '@/music/music'
import type { Spans } from './spans'

/** One finger on one key. */
export interface Touch {
  readonly finger: Finger
  /** The key, counted in semitones from the thumb's side to the little finger's: negative numbers in the left hand. */
  readonly place: number
  readonly black: boolean
}

/**
 * What a fingering can cost: the twelve rules of Parncutt et al. 1997, and three of ours for what
 * they do not speak of. `move`: the hand is lifted to another place. `change`: the same keys again
 * with another finger. `beyond`: ten a semitone beyond what is practical (Balliauw et al. 2017).
 */
export const rules = [
  'stretch',
  'smallSpan',
  'largeSpan',
  'positionCount',
  'positionSize',
  'weakFinger',
  'threeFourFive',
  'threeToFour',
  'fourOnBlack',
  'thumbOnBlack',
  'fiveOnBlack',
  'thumbPassing',
  'move',
  'change',
  'beyond',
] as const
export type Rule = (typeof rules)[number]
export type Costs = Readonly<Partial<Record<Rule, number>>>

export const sumOf = (costs: Costs): number => {
  let sum = 0
  for (const rule of rules) sum += costs[rule] ?? 0
  return sum
}

/** Semitones from the lower finger's key to the higher finger's; negative where they cross. */
const apart = (one: Touch, other: Touch): number =>
  one.finger <= other.finger ? other.place - one.place : one.place - other.place

const outside = (n: number, from: number, to: number): number => Math.max(0, from - n, n - to)

const usesThumb = (one: Touch, other: Touch): boolean => one.finger === 1 || other.finger === 1

/** Rules 1 to 3: what two fingers span, one after the other or together. */
export const spanCosts = (one: Touch, other: Touch, spans: Spans): Costs => {
  const span = spans.between(one.finger, other.finger)
  const distance = apart(one, other)
  const each = usesThumb(one, other) ? 1 : 2
  return {
    stretch: 2 * outside(distance, span.minComfortable, span.maxComfortable),
    smallSpan: each * Math.max(0, span.minRelaxed - distance),
    largeSpan: each * Math.max(0, distance - span.maxRelaxed),
    beyond: 10 * outside(distance, span.minPractical, span.maxPractical),
  }
}

/** The sum of rules 1 to 3. */
export const spanCost = (one: Touch, other: Touch, spans: Spans): number => {
  const span = spans.between(one.finger, other.finger)
  const distance = apart(one, other)
  const each = usesThumb(one, other) ? 1 : 2
  return (
    2 * outside(distance, span.minComfortable, span.maxComfortable) +
    each * outside(distance, span.minRelaxed, span.maxRelaxed)
  )
}

/** Whether two different fingers cannot do it: never proposed where it can be avoided. */
export const isImpractical = (one: Touch, other: Touch, spans: Spans): boolean => {
  if (one.place === other.place) return false
  const span = spans.between(one.finger, other.finger)
  return outside(apart(one, other), span.minPractical, span.maxPractical) > 0
}

/** Farther than any two fingers reach. */
const isLeap = (from: Touch, to: Touch, spans: Spans): boolean =>
  Math.abs(to.place - from.place) > spans.widest

/** Farther than thumb and little finger reach in comfort: there the hand may be lifted and the line go on. */
export const isFar = (from: Touch, to: Touch, spans: Spans): boolean =>
  Math.abs(to.place - from.place) > spans.between(1, 5).maxComfortable

/** The hand leaves the keys between two notes: at a leap, with one finger on two keys, and where to reach would cost more. */
export const isLifted = (from: Touch, to: Touch, spans: Spans): boolean => {
  if (from.place === to.place) return false
  if (from.finger === to.finger || isLeap(from, to, spans)) return true
  if (!isImpractical(from, to, spans)) return false
  return sumOf(spanCosts(from, to, spans)) > sumOf(liftCosts(from, to, spans))
}

/** Lifting the hand costs three, and half a point for each semitone that it moves. */
export const moveCost = (semitones: number): number => 3 + Math.abs(semitones) / 2

/** Semitones from the thumb to each finger of a hand at rest over five neighbouring white keys. */
const fromThumb: Readonly<Record<Finger, number>> = { 1: 0, 2: 2, 3: 4, 4: 5, 5: 7 }

/** Where the thumb of a hand at rest lies that has this finger on this key. */
export const thumbPlace = ({ place, finger }: Touch): number => place - fromThumb[finger]

/** To lift the hand within its reach breaks the line, as much as a semitone beyond what is practical. */
const liftCosts = (from: Touch, to: Touch, spans: Spans): Costs => ({
  move: moveCost(thumbPlace(to) - thumbPlace(from)),
  beyond: from.finger === to.finger || isFar(from, to, spans) ? 0 : 10,
})

/** Rule 6 and the first part of rule 10: what a finger costs by itself. */
export const noteCosts = ({ finger, black }: Touch): Costs => ({
  weakFinger: finger >= 4 ? 1 : 0,
  thumbOnBlack: finger === 1 && black ? 1 : 0,
})

/** Rules 1 to 3 and 8 to 12: from one note to the next. */
export const stepCosts = (from: Touch, to: Touch, spans: Spans): Costs => {
  if (from.finger === to.finger && from.place === to.place) return {}
  if (isLifted(from, to, spans)) return liftCosts(from, to, spans)
  return {
    ...spanCosts(from, to, spans),
    threeToFour: from.finger === 3 && to.finger === 4 ? 1 : 0,
    fourOnBlack: isFourOnBlack(from, to) || isFourOnBlack(to, from) ? 1 : 0,
    thumbOnBlack: 2 * (besideWhite(1, from, to) + besideWhite(1, to, from)),
    fiveOnBlack: 2 * (besideWhite(5, from, to) + besideWhite(5, to, from)),
    thumbPassing: passingCost(from, to),
  }
}

/** Rule 9. */
const isFourOnBlack = (three: Touch, four: Touch): boolean =>
  three.finger === 3 && !three.black && four.finger === 4 && four.black

const besideWhite = (finger: Finger, touch: Touch, beside: Touch): number =>
  touch.finger === finger && touch.black && !beside.black ? 1 : 0

/** The thumb goes under a finger, or a finger over the thumb; in a broken chord farther than in a line. */
export const isThumbPassing = (from: Touch, to: Touch): boolean =>
  usesThumb(from, to) && apart(from, to) < 0 && apart(from, to) >= -farthestPassing

/** A fifth: what lies farther apart is a move of the hand, whatever the fingers. */
const farthestPassing = 7

/** Rule 12: 1 on the same level, 3 with the thumb on black and the finger on white, else nothing. */
const passingCost = (from: Touch, to: Touch): number => {
  if (!isThumbPassing(from, to)) return 0
  if (from.black === to.black) return 1
  const thumb = from.finger === 1 ? from : to
  return thumb.black ? 3 : 0
}

/** Rules 4, 5 and 7: what three notes in a row ask of the hand's position. */
export const positionCosts = (one: Touch, two: Touch, three: Touch, spans: Spans): Costs => {
  const uses = (finger: Finger): boolean =>
    one.finger === finger || two.finger === finger || three.finger === finger
  const threeFourFive = uses(3) && uses(4) && uses(5) ? 1 : 0
  if (isLifted(one, two, spans) || isLifted(two, three, spans)) return { threeFourFive }
  // The published totals count a return to the same key by another finger as half a change.
  if (one.place === three.place)
    return { threeFourFive, positionCount: one.finger === three.finger ? 0 : 1 }
  const span = spans.between(one.finger, three.finger)
  const distance = apart(one, three)
  const positionSize = outside(distance, span.minComfortable, span.maxComfortable)
  if (positionSize === 0) return { threeFourFive }
  const isFull =
    two.finger === 1 &&
    Math.sign(two.place - one.place) * Math.sign(three.place - two.place) > 0 &&
    outside(distance, span.minPractical, span.maxPractical) > 0
  return { threeFourFive, positionSize, positionCount: isFull ? 2 : 1 }
}
