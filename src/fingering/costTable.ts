import type { Finger } from '@/music/music'
import type { Hold } from './candidates'
import type { Grip } from './grips'
import { positionCosts, sumOf, type Touch } from './rules'
import type { Spans } from './spans'
import { weighGrip, weighStep, type Weight } from './weights'

/** The costs of `weights.ts` as plain numbers for the search, those of single notes remembered. */
export interface CostTable {
  readonly spans: Spans
  readonly grip: (grip: Grip, hold: Hold) => number
  readonly step: (from: Grip, before: Hold, to: Grip, after: Hold) => number
  /** Of three single notes in a row, by their fingers (`fingersPlace`). */
  readonly position: (one: Grip, two: Grip, three: Grip) => Float64Array
}

/** What cannot be done is chosen only where nothing else is left: it outweighs all that a long piece costs by the rules. */
const impracticalCost = 1e6

const total = ({ cost, impractical }: Weight): number => cost + impractical * impracticalCost

/** The place of three fingers among the costs of a position. */
export const fingersPlace = (one: Finger, two: Finger, three: Finger): number =>
  (one * 6 + two) * 6 + three

export const costTable = (spans: Spans): CostTable => {
  const notes = new Map<number, number>()
  const steps = new Map<number, number>()
  const positions = new Map<number, Float64Array>()
  return {
    spans,
    grip: (grip, hold) => {
      const only = hold[0]
      return only && hold.length === 1 && grip.keys[0]?.heldFrom === undefined
        ? remember(notes, noteWord(only), () => total(weighGrip(grip, hold, spans)))
        : total(weighGrip(grip, hold, spans))
    },
    step: (from, before, to, after) => {
      const one = before[0]
      const other = after[0]
      const isMelodic = before.length === 1 && after.length === 1 && !to.isAfterRest
      return one && other && isMelodic && to.keys[0]?.heldFrom === undefined
        ? remember(steps, stepWord(one, other), () =>
            total(weighStep(from, before, to, after, spans)),
          )
        : total(weighStep(from, before, to, after, spans))
    },
    position: (...grips) => {
      const word = stepsWord(...grips, spans)
      const before = positions.get(word)
      if (before) return before
      const costs = positionsByFingers(...grips, spans)
      positions.set(word, costs)
      return costs
    },
  }
}

const remember = (known: Map<number, number>, word: number, find: () => number): number => {
  const before = known.get(word)
  if (before !== undefined) return before
  const cost = find()
  known.set(word, cost)
  return cost
}

/** Semitones from one key to another lie within -127 and 127. */
const distance = (from: Touch, to: Touch): number => to.place - from.place + 128

const colour = ({ black }: Touch): number => (black ? 1 : 0)

const noteWord = (touch: Touch): number => touch.finger * 2 + colour(touch)

/** A number for all that the cost of a step depends on: two fingers, the distance and the colours. */
const stepWord = (from: Touch, to: Touch): number =>
  ((from.finger * 6 + to.finger) * 256 + distance(from, to)) * 4 + colour(from) * 2 + colour(to)

/** A number for two steps of a line; all leaps are one, since the hand's position ends with them. */
const stepsWord = (one: Grip, two: Grip, three: Grip, { widest }: Spans): number => {
  const reach = widest + 1
  const step = (from: Grip, to: Grip): number =>
    Math.max(-reach, Math.min(reach, placeOf(to) - placeOf(from))) + reach
  return step(one, two) * 256 + step(two, three)
}

const placeOf = ({ keys }: Grip): number => keys[0]?.place ?? 0

const positionsByFingers = (one: Grip, two: Grip, three: Grip, spans: Spans): Float64Array => {
  const costs = new Float64Array(6 ** 3)
  const touch = (grip: Grip, finger: Finger): Touch => ({
    finger,
    place: placeOf(grip),
    black: grip.keys[0]?.black ?? false,
  })
  for (const a of fingers)
    for (const b of fingers)
      for (const c of fingers)
        costs[fingersPlace(a, b, c)] = sumOf(
          positionCosts(touch(one, a), touch(two, b), touch(three, c), spans),
        )
  return costs
}

const fingers: readonly Finger[] = [1, 2, 3, 4, 5]
