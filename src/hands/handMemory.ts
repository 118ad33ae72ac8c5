import { column, isSameLength, places, type Column, type Onsets, type Places } from './onsets'
import {
  centreWeights,
  idleWeights,
  leapWeights,
  likenessWeights,
  linkWeights,
  stretchPerSemitone,
} from './weights'

/** How many grips, and for how long, a hand remembers. */
const rememberedGrips = 6
const rememberedQuarters = 8
/** With the pedal a file may hold any number of notes in one hand; then these many, the newest, count. */
const mostHeld = 24
/** After this many quarters the hand's home is half way between the old one and the new grip. */
const homeQuarters = 9
const leastQuarters = 0.25

/** The grips that a hand took on any of the paths, by step: each path remembers but its newest one. */
export interface Grips {
  /** From which note to which, when, and the longest of the notes. */
  readonly from: Places
  readonly to: Places
  readonly at: Column
  readonly length: Column
  /** The hand's grip before. */
  readonly before: Places
}

export const gripsOf = (steps: number): Grips => ({
  from: places(steps),
  to: places(steps),
  at: column(steps),
  length: column(steps),
  before: places(steps),
})

/** What a hand has done. It is overwritten in place as its path goes on, for the same reason as columns. */
export interface HandMemory {
  readonly grips: Grips
  /** Its newest grip. */
  grip: number
  /** About where the hand is at home: it follows what the hand strikes, slowly. */
  centre: number
  /** When it struck last. */
  at: number
  /** The notes that it struck last and those that it still held then, by number. */
  readonly fingers: Places
  held: number
}

const none = -1

export const handAt = (centre: number, start: number, grips: Grips): HandMemory => ({
  grips,
  grip: none,
  centre,
  at: start,
  fingers: places(mostHeld),
  held: 0,
})

/** Makes `next` what `hand` is after it has struck these notes, if any, at this step. */
export const strike = (
  next: HandMemory,
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
  step: number,
): void => {
  next.grip = hand.grip
  next.centre = hand.centre
  next.at = hand.at
  next.held = 0
  for (let i = 0; i < hand.held; i++) {
    const note = hand.fingers[i] ?? 0
    if (from === to || isHeld(onsets, note, start)) next.fingers[next.held++] = note
  }
  if (from < to) addGrip(next, onsets, start, from, to, step)
}

const addGrip = (
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
  step: number,
): void => {
  const tooMany = hand.held + to - from - mostHeld
  if (tooMany > 0) {
    hand.fingers.copyWithin(0, tooMany, hand.held)
    hand.held -= tooMany
  }
  for (let note = from; note < to; note++) hand.fingers[hand.held++] = note
  const { grips } = hand
  grips.from[step] = from
  grips.to[step] = to
  grips.at[step] = start
  grips.length[step] = longest(onsets, from, to)
  grips.before[step] = hand.grip
  hand.grip = step
  const since = Math.max(leastQuarters, start - hand.at)
  hand.centre += ((middleOf(onsets, from, to) - hand.centre) * since) / (since + homeQuarters)
  hand.at = start
}

/** Whether both hold the same notes, however they came to them. */
export const isSameGrip = (a: HandMemory, b: HandMemory): boolean => {
  if (a.held !== b.held) return false
  for (let i = 0; i < a.held; i++) if ((a.fingers[i] ?? 0) !== (b.fingers[i] ?? 0)) return false
  return true
}

/** What a hand finds at an onset, whichever of its notes it strikes. */
export interface Outlook {
  idle: number
  /** What the links of the onset's notes below number i weigh together. */
  readonly links: Column
  lowest: number
  highest: number
}

/** Makes `outlook` that of the hand at these notes. */
export const lookAhead = (
  outlook: Outlook,
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
): void => {
  outlook.lowest = Infinity
  outlook.highest = -Infinity
  outlook.idle = idleWeights.rests
  for (let i = 0; i < hand.held; i++) {
    const note = hand.fingers[i] ?? 0
    if (isHeld(onsets, note, start)) {
      outlook.lowest = Math.min(outlook.lowest, onsets.keys[note] ?? 0)
      outlook.highest = Math.max(outlook.highest, onsets.keys[note] ?? 0)
      outlook.idle = idleWeights.holds
    } else if (isEnding(onsets, note, start) && outlook.highest < 0)
      outlook.idle = idleWeights.breaksOff
  }
  outlook.links[0] = 0
  for (let note = from; note < to; note++)
    outlook.links[note - from + 1] =
      (outlook.links[note - from] ?? 0) + weighLink(hand, onsets, start, note)
}

const isHeld = ({ heldTo }: Onsets, note: number, start: number): boolean =>
  (heldTo[note] ?? 0) > start

const isEnding = ({ heldTo, overFrom }: Onsets, note: number, start: number): boolean =>
  (heldTo[note] ?? 0) <= start && start <= (overFrom[note] ?? 0)

/** A note goes on from the nearest one that ends where it begins. */
const weighLink = (hand: HandMemory, onsets: Onsets, start: number, note: number): number => {
  let nearest = Infinity
  let alike = false
  for (let i = 0; i < hand.held; i++) {
    const before = hand.fingers[i] ?? 0
    if (!isEnding(onsets, before, start)) continue
    const distance = Math.abs((onsets.keys[before] ?? 0) - (onsets.keys[note] ?? 0))
    if (distance > nearest) continue
    const same = isSameLength(onsets.lengths[before] ?? 0, onsets.lengths[note] ?? 0)
    alike = same || (alike && distance === nearest)
    nearest = distance
  }
  if (nearest === Infinity) return linkWeights.none
  return (alike ? linkWeights.sameLength : linkWeights.otherLength)[nearest] ?? 0
}

/** What speaks for it that the hand strikes these notes, after all that it has done. */
export const weighGrip = (
  outlook: Outlook,
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
): number => {
  const low = onsets.keys[from] ?? 0
  const high = onsets.keys[to - 1] ?? 0
  // Beyond an octave, held notes included, it is the pedal that holds.
  const span = Math.max(outlook.highest, high) - Math.min(outlook.lowest, low)
  const middle = (low + high) / 2
  const away = Math.abs(middle - hand.centre)
  return (
    stretchPerSemitone * beyond(Math.min(span, 12), 7) +
    (centreWeights.away * away + centreWeights.farAway * beyond(away, 7)) / 12 +
    weighLeap(hand, onsets, start, middle) +
    weighLikeness(hand, onsets, start, from, to)
  )
}

const weighLeap = (
  { grips, grip }: HandMemory,
  onsets: Onsets,
  start: number,
  middle: number,
): number => {
  if (grip === none) return 0
  const last = middleOf(onsets, grips.from[grip] ?? 0, grips.to[grip] ?? 0)
  const leap = Math.abs(middle - last)
  const quick = beyond(leap, 7) / (start - (grips.at[grip] ?? 0) + leastQuarters)
  return (leapWeights.quick * quick + leapWeights.wide * beyond(leap, 12)) / 12
}

/** A hand comes back to what it struck a short time ago, as figures of an accompaniment do. */
const weighLikeness = (
  { grips, grip: newest }: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
): number => {
  const length = longest(onsets, from, to)
  let nearest = Infinity
  let grip = newest
  for (let i = 0; i < rememberedGrips && grip !== none; i++, grip = grips.before[grip] ?? none) {
    if (start - (grips.at[grip] ?? 0) > rememberedQuarters) break
    const wasFrom = grips.from[grip] ?? 0
    const wasTo = grips.to[grip] ?? 0
    if (wasTo - wasFrom !== to - from) continue
    if (!isSameLength(grips.length[grip] ?? 0, length)) continue
    const moved =
      Math.abs((onsets.keys[wasFrom] ?? 0) - (onsets.keys[from] ?? 0)) +
      Math.abs((onsets.keys[wasTo - 1] ?? 0) - (onsets.keys[to - 1] ?? 0))
    nearest = Math.min(nearest, moved)
  }
  return nearest === Infinity ? likenessWeights.none : (likenessWeights.moved[nearest] ?? 0)
}

const longest = ({ lengths }: Onsets, from: number, to: number): number => {
  let length = 0
  for (let note = from; note < to; note++) length = Math.max(length, lengths[note] ?? 0)
  return length
}

const middleOf = ({ keys }: Onsets, from: number, to: number): number =>
  ((keys[from] ?? 0) + (keys[to - 1] ?? 0)) / 2

const beyond = (value: number, limit: number): number => Math.max(0, value - limit)
