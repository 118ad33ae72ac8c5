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

/** What a hand has done. It is overwritten in place as its path goes on, for the same reason as columns. */
export interface HandMemory {
  /** About where the hand is at home: it follows what the hand strikes, slowly. */
  centre: number
  /** When it struck last. */
  at: number
  /** The notes that it struck last and those that it still held then, by number. */
  readonly fingers: Places
  held: number
  /** Its last grips, the newest first: from which note to which, when, and the longest of their notes. */
  readonly gripFrom: Places
  readonly gripTo: Places
  readonly gripAt: Column
  readonly gripLength: Column
  grips: number
}

export const handAt = (centre: number, start: number): HandMemory => ({
  centre,
  at: start,
  fingers: places(mostHeld),
  held: 0,
  gripFrom: places(rememberedGrips),
  gripTo: places(rememberedGrips),
  gripAt: column(rememberedGrips),
  gripLength: column(rememberedGrips),
  grips: 0,
})

/** Makes `next` what `hand` is after it has struck these notes, if any. */
export const strike = (
  next: HandMemory,
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
): void => {
  next.centre = hand.centre
  next.at = hand.at
  const shift = from < to ? 1 : 0
  next.grips = Math.min(rememberedGrips, hand.grips + shift)
  for (let i = shift; i < next.grips; i++) {
    next.gripFrom[i] = hand.gripFrom[i - shift] ?? 0
    next.gripTo[i] = hand.gripTo[i - shift] ?? 0
    next.gripAt[i] = hand.gripAt[i - shift] ?? 0
    next.gripLength[i] = hand.gripLength[i - shift] ?? 0
  }
  next.held = 0
  for (let i = 0; i < hand.held; i++) {
    const note = hand.fingers[i] ?? 0
    if (shift === 0 || isHeld(onsets, note, start)) next.fingers[next.held++] = note
  }
  if (shift === 1) addGrip(next, onsets, start, from, to)
}

const addGrip = (
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
): void => {
  const tooMany = Math.max(0, hand.held + to - from - mostHeld)
  hand.fingers.copyWithin(0, tooMany, hand.held)
  hand.held -= tooMany
  for (let note = from; note < to; note++) hand.fingers[hand.held++] = note
  hand.gripFrom[0] = from
  hand.gripTo[0] = to
  hand.gripAt[0] = start
  hand.gripLength[0] = longest(onsets, from, to)
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

const weighLeap = (hand: HandMemory, onsets: Onsets, start: number, middle: number): number => {
  if (hand.grips === 0) return 0
  const last = middleOf(onsets, hand.gripFrom[0] ?? 0, hand.gripTo[0] ?? 0)
  const leap = Math.abs(middle - last)
  const quick = beyond(leap, 7) / (start - (hand.gripAt[0] ?? 0) + leastQuarters)
  return (leapWeights.quick * quick + leapWeights.wide * beyond(leap, 12)) / 12
}

/** A hand comes back to what it struck a short time ago, as figures of an accompaniment do. */
const weighLikeness = (
  hand: HandMemory,
  onsets: Onsets,
  start: number,
  from: number,
  to: number,
): number => {
  let nearest = Infinity
  let length = -1
  for (let i = 0; i < hand.grips && start - (hand.gripAt[i] ?? 0) <= rememberedQuarters; i++) {
    const wasFrom = hand.gripFrom[i] ?? 0
    const wasTo = hand.gripTo[i] ?? 0
    if (wasTo - wasFrom !== to - from) continue
    if (length < 0) length = longest(onsets, from, to)
    if (!isSameLength(hand.gripLength[i] ?? 0, length)) continue
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
