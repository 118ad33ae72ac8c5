import type { Finger, Hand } from '@/music/music'
import { withDigits, type Digits, type Grip } from './grips'
import { runDigits, runKinds, runSteps, type RunKind } from './scaleTable'

/** A scale or broken chord in single notes, in one direction: the grips from one to another, both included. */
interface Run {
  readonly from: number
  readonly to: number
  readonly digits: readonly Finger[]
}

/** Fewer semitones in a row than these are fingered better by what stands around them. */
const leastSemitones = 7

/** The usual digits are made for whole octaves from tonic to tonic, and for whatever is longer than two. */
const isUsual = (kind: RunKind, length: number, begins: boolean, ends: boolean): boolean => {
  const octave = runSteps[kind].length
  if (kind === 'chromatic') return length >= leastSemitones
  return length > octave && ((begins && ends) || length > 2 * octave)
}

/** The grips with the usual digits of runs; a run in which other digits are given is left as it is. */
export const fixRuns = (grips: readonly Grip[], hand: Hand): readonly Grip[] => {
  const digits = new Map<number, Digits>()
  for (const run of findRuns(grips, hand)) {
    const isFree = run.digits.every((digit, i) => {
      const fixed = grips[run.from + i]?.keys[0]?.fixed
      return fixed === undefined || fixed === digit
    })
    // Where two runs meet in a note the first one's digit stands; in the table they agree.
    if (isFree)
      for (const [i, digit] of run.digits.entries())
        digits.set(run.from + i, digits.get(run.from + i) ?? [digit])
  }
  return digits.size === 0 ? grips : withDigits(grips, digits, 'fixed')
}

/** The runs of a hand, each with its usual digits; two may share the note where they turn. */
const findRuns = (grips: readonly Grip[], hand: Hand): readonly Run[] => {
  const side = hand === 'right' ? 1 : -1
  const keys = grips.map(({ keys: all }) => {
    const [only] = all
    return only && all.length === 1 && only.heldFrom === undefined ? side * only.place : undefined
  })
  const runs: Run[] = []
  let i = 0
  while (i < grips.length) {
    const found = longestRun(keys, i, slopeEnd(keys, grips, i))
    if (!found) i++
    else {
      const notes = keys.slice(i, found.to + 1).filter((key) => key !== undefined)
      runs.push({ from: i, to: found.to, digits: digitsOf(notes, found, hand) })
      i = found.to
    }
  }
  return runs
}

/** How far single notes go on in the direction in which they begin, without a rest. */
const slopeEnd = (
  keys: readonly (number | undefined)[],
  grips: readonly Grip[],
  from: number,
): number => {
  const direction = directionAt(keys, from)
  let to = from
  while (
    direction !== 0 &&
    directionAt(keys, to) === direction &&
    grips[to + 1]?.isAfterRest === false
  )
    to++
  return to
}

const directionAt = (keys: readonly (number | undefined)[], i: number): number => {
  const [here, next] = [keys[i], keys[i + 1]]
  return here === undefined || next === undefined ? 0 : Math.sign(next - here)
}

interface Found {
  readonly kind: RunKind
  readonly tonic: number
  readonly to: number
}

/** The longest run from a note on; of equal ones the one that begins, or ends, on its tonic, then the first kind. */
const longestRun = (
  keys: readonly (number | undefined)[],
  from: number,
  end: number,
): Found | undefined => {
  let best: (Found & { readonly worth: number }) | undefined
  if (end - from < 3) return undefined
  for (const kind of runKinds)
    for (let tonic = 0; tonic < 12; tonic++) {
      const to = followRun(keys, from, end, kind, tonic)
      const length = to - from + 1
      const begins = isTonic(keys[from], tonic)
      const ends = isTonic(keys[to], tonic)
      if (!isUsual(kind, length, begins, ends)) continue
      const worth = 4 * length + (begins ? 2 : 0) + (ends ? 1 : 0)
      if (!best || worth > best.worth) best = { kind, tonic, to, worth }
    }
  return best
}

const isTonic = (key: number | undefined, tonic: number): boolean =>
  key !== undefined && degreeClass(key, tonic) === 0

const degreeClass = (key: number, tonic: number): number => (((key - tonic) % 12) + 12) % 12

/** The last note that follows from the first by neighbouring degrees. */
const followRun = (
  keys: readonly (number | undefined)[],
  from: number,
  end: number,
  kind: RunKind,
  tonic: number,
): number => {
  const steps = runSteps[kind]
  const degreeOf = (i: number): number => {
    const key = keys[i]
    return key === undefined ? -1 : steps.indexOf(degreeClass(key, tonic))
  }
  let to = from
  let degree = degreeOf(from)
  if (degree < 0) return from
  const direction = directionAt(keys, from)
  while (to < end) {
    const next = (degree + direction + steps.length) % steps.length
    const [here, there] = [keys[to], keys[to + 1]]
    if (here === undefined || there === undefined || degreeOf(to + 1) !== next) break
    if (Math.abs(there - here) >= 12) break
    degree = next
    to++
  }
  return to
}

const digitsOf = (keys: readonly number[], found: Found, hand: Hand): readonly Finger[] => {
  const isUp = (keys[1] ?? 0) > (keys[0] ?? 0)
  const upward = upwardDigits(isUp ? keys : keys.toReversed(), found, hand)
  return isUp ? upward : upward.toReversed()
}

const upwardDigits = (keys: readonly number[], found: Found, hand: Hand): readonly Finger[] => {
  const { kind, tonic } = found
  const { first, inner, last } = runDigits(kind, tonic, hand)
  const digits = keys.map((key, i): Finger => {
    const degree = runSteps[kind].indexOf(degreeClass(key, tonic))
    if (degree === 0 && i === 0) return first
    if (degree === 0 && i === keys.length - 1) return last
    return inner[degree] ?? 1
  })
  if (kind === 'chromatic') return digits
  return withoutLastThumb(digits, isTonic(hand === 'right' ? keys.at(-1) : keys[0], tonic), hand)
}

/** Nobody passes the thumb for one last note on the side of the little finger: the next finger takes it. */
const withoutLastThumb = (
  digits: readonly Finger[],
  isOnTonic: boolean,
  hand: Hand,
): readonly Finger[] => {
  const outward = hand === 'right' ? digits : digits.toReversed()
  const before = outward.at(-2)
  if (isOnTonic || outward.at(-1) !== 1 || before === undefined || before === 5) return digits
  const kept = [...outward.slice(0, -1), next[before]]
  return hand === 'right' ? kept : kept.toReversed()
}

const next: Readonly<Record<1 | 2 | 3 | 4, Finger>> = { 1: 2, 2: 3, 3: 4, 4: 5 }
