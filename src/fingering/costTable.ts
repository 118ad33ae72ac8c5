import type { Finger } from '@/music/music'
import { candidatesOf, holdOf, type Hold } from './candidates'
import type { Digits, Grip } from './grips'
import { positionCosts, sumOf, type Touch } from './rules'
import type { Spans } from './spans'
import { weighGrip, weighStep, type Weight } from './weights'

/** A grip as the search sees it: with its candidates, and a word for all that its costs depend on. */
export interface Choice {
  readonly grip: Grip
  readonly ways: readonly Digits[]
  readonly word: string
}

/** The costs of `weights.ts` as rows of plain numbers for the search; what has been met once is remembered. */
export interface CostTable {
  readonly spans: Spans
  /** Of each way to finger a grip. */
  readonly grip: (choice: Choice) => Float64Array
  /** From each way of one to each way of the next: those of the first one to all, then of the second. */
  readonly step: (from: Choice, to: Choice) => Float64Array
  /** Of three single notes in a row, by their fingers (`fingersPlace`). */
  readonly position: (one: Grip, two: Grip, three: Grip) => Float64Array
}

/** What cannot be done is chosen only where nothing else is left: it outweighs all that a long piece costs by the rules. */
const impracticalCost = 1e6

export const choiceOf = (grip: Grip): Choice => ({
  grip,
  ways: candidatesOf(grip),
  word: wordOf(grip),
})

/** Equal for grips of one shape, wherever they lie. */
export const wordOf = ({ keys, isAfterRest }: Grip): string => {
  const low = keys[0]?.place ?? 0
  let word = isAfterRest ? 'r' : ''
  for (const { place, black, heldFrom, fixed } of keys)
    word += `${place - low}${black ? 'b' : 'w'}${heldFrom ?? ''}${fixed === undefined ? '' : `f${fixed}`},`
  return word
}

/** One for each hand size, also for the next hand and the next piece: music is made of the same few steps. */
export const costTable = (spans: Spans): CostTable => {
  const known = tables.get(spans) ?? createTable(spans)
  tables.set(spans, known)
  return known
}

const tables = new WeakMap<Spans, CostTable>()

const createTable = (spans: Spans): CostTable => {
  const grips = new Map<string, Float64Array>()
  const steps = new Map<string, Float64Array>()
  const positions = new Map<number, Float64Array>()
  return {
    spans,
    grip: (choice) =>
      remember(grips, choice.word, () =>
        Float64Array.from(holdsOf(choice), (hold) => total(weighGrip(choice.grip, hold, spans))),
      ),
    step: (from, to) =>
      remember(steps, `${from.word}>${distanceOf(from.grip, to.grip)}>${to.word}`, () =>
        stepsBetween(from, to, spans),
      ),
    position: (...three) =>
      remember(positions, stepsWord(...three, spans), () => positionsByFingers(...three, spans)),
  }
}

const total = ({ cost, impractical }: Weight): number => cost + impractical * impracticalCost

const holdsOf = ({ grip, ways }: Choice): readonly Hold[] =>
  ways.map((digits) => holdOf(grip, digits))

const stepsBetween = (from: Choice, to: Choice, spans: Spans): Float64Array => {
  const [before, after] = [holdsOf(from), holdsOf(to)]
  const costs = new Float64Array(before.length * after.length)
  let place = 0
  for (const one of before)
    for (const other of after)
      costs[place++] = total(weighStep(from.grip, one, to.grip, other, spans))
  return costs
}

const remember = <Word>(
  known: Map<Word, Float64Array>,
  word: Word,
  find: () => Float64Array,
): Float64Array => {
  const before = known.get(word)
  if (before) return before
  const costs = find()
  known.set(word, costs)
  return costs
}

/** The place of three fingers among the costs of a position. */
export const fingersPlace = (one: Finger, two: Finger, three: Finger): number =>
  (one * 6 + two) * 6 + three

/** A number for two steps of a line; all leaps are one, since the hand's position ends with them. */
const stepsWord = (one: Grip, two: Grip, three: Grip, { widest }: Spans): number => {
  const reach = widest + 1
  const step = (from: Grip, to: Grip): number =>
    Math.max(-reach, Math.min(reach, distanceOf(from, to))) + reach
  return step(one, two) * 256 + step(two, three)
}

const placeOf = ({ keys }: Grip): number => keys[0]?.place ?? 0

/** Semitones from the key at the thumb's side of one grip to that of the next. */
export const distanceOf = (from: Grip, to: Grip): number => placeOf(to) - placeOf(from)

const positionsByFingers = (one: Grip, two: Grip, three: Grip, spans: Spans): Float64Array => {
  const costs = new Float64Array(6 ** 3)
  const touches = (grip: Grip): readonly Touch[] =>
    fingers.map((finger) => ({
      finger,
      place: placeOf(grip),
      black: grip.keys[0]?.black ?? false,
    }))
  const [ones, twos, threes] = [touches(one), touches(two), touches(three)]
  for (const a of ones)
    for (const b of twos)
      for (const c of threes)
        costs[fingersPlace(a.finger, b.finger, c.finger)] = sumOf(positionCosts(a, b, c, spans))
  return costs
}

const fingers: readonly Finger[] = [1, 2, 3, 4, 5]
