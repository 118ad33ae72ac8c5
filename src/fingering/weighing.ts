import type { Tick } from '@/music/units'
import type { Hold } from './candidates'
import { distanceOf, wordOf } from './costTable'
import type { Grip } from './grips'
import { isThumbPassing, rules, sumOf, type Costs, type Rule } from './rules'
import type { Path } from './search'
import type { Spans } from './spans'
import { isLine, linePosition, weighGrip, weighStep, type Weight } from './weights'

/** What one onset costs: its grip and the way to it. */
export interface OnsetCost {
  readonly start: Tick
  readonly cost: number
  /** How far the thumb goes under, or a finger over it, to get here: semitones, 0 where neither does. */
  readonly thumbPassing: number
}

/** What a fingering costs, in all, by rule and by onset. */
export interface Weighed {
  readonly cost: number
  readonly costs: Costs
  /** How often it asks for what cannot be done. */
  readonly impractical: number
  readonly onsets: readonly OnsetCost[]
}

/** A weight, and how often it has been met: a piece is made of a few hundred. */
interface Tallied {
  readonly weight: Weight
  times: number
}
type Tally = Map<string, Tallied>

export const weighPath = (grips: readonly Grip[], path: Path, spans: Spans): Weighed => {
  const tally: Tally = new Map()
  const onsets = weighOnsets(grips, path, spans, tally)
  const costs = sumTally(tally)
  const all = [...tally.values()]
  return {
    cost: sumOf(costs),
    costs,
    impractical: all.reduce((sum, { weight, times }) => sum + weight.impractical * times, 0),
    onsets,
  }
}

export const weighOnsets = (
  grips: readonly Grip[],
  { holds }: Path,
  spans: Spans,
  tally: Tally = new Map(),
): readonly OnsetCost[] => {
  const words = grips.map((grip, i) => `${wordOf(grip)}:${digitsOf(holds[i])}`)
  return grips.map(({ start }, i) => ({
    start,
    cost: costAt(grips, holds, words, i, spans, tally),
    thumbPassing: thumbPassingAt(grips, holds, i),
  }))
}

const digitsOf = (hold: Hold = []): string => hold.map(({ finger }) => finger).join('')

const costAt = (
  grips: readonly Grip[],
  holds: readonly Hold[],
  words: readonly string[],
  i: number,
  spans: Spans,
  tally: Tally,
): number => {
  const three = grips[i]
  const third = holds[i]
  const word = words[i] ?? ''
  if (!three || !third) return 0
  const own = count(tally, word, () => weighGrip(three, third, spans))
  const two = grips[i - 1]
  const second = holds[i - 1]
  if (!two || !second) return own.cost
  const before = `${words[i - 1]}>${distanceOf(two, three)}>${word}`
  const step = count(tally, before, () => weighStep(two, second, three, third, spans))
  const one = grips[i - 2]
  const first = holds[i - 2]
  if (!one || !first || !isLine(one, two, three)) return own.cost + step.cost
  const line = `${words[i - 2]}>${distanceOf(one, two)}>${before}`
  const position = count(tally, line, () => linePosition(first, second, third, spans))
  return own.cost + step.cost + position.cost
}

const count = (tally: Tally, word: string, find: () => Weight): Weight => {
  const known = tally.get(word) ?? { weight: find(), times: 0 }
  if (known.times++ === 0) tally.set(word, known)
  return known.weight
}

const sumTally = (tally: Tally): Costs => {
  const sums: Partial<Record<Rule, number>> = {}
  for (const rule of rules) {
    let sum = 0
    for (const { weight, times } of tally.values()) sum += (weight.costs[rule] ?? 0) * times
    if (sum > 0) sums[rule] = sum
  }
  return sums
}

const thumbPassingAt = (grips: readonly Grip[], holds: readonly Hold[], i: number): number => {
  const from = holds[i - 1]
  const to = holds[i]
  if (from?.length !== 1 || to?.length !== 1 || grips[i]?.isAfterRest !== false) return 0
  const one = from[0]
  const other = to[0]
  return one && other && isThumbPassing(one, other) ? Math.abs(other.place - one.place) : 0
}
