import { holdOf, type Hold } from './candidates'
import { choiceOf, fingersPlace, type Choice, type CostTable } from './costTable'
import type { Digits, Grip } from './grips'
import { bestLayer, emptyLayer, insert, type Layer } from './layers'
import { isLine } from './weights'

/** One way to finger a row of grips. */
export interface Path {
  readonly holds: readonly Hold[]
  /** What it costs, with what cannot be done. */
  readonly cost: number
}

/**
 * The cheapest ways to finger the grips, cheapest first, by dynamic programming over the last two
 * grips: what comes depends on no more than these. Of each pair of candidates the best `count` ways
 * to it are kept, so that the work grows with the number of grips.
 */
export const searchPaths = (
  grips: readonly Grip[],
  table: CostTable,
  count: number,
): readonly Path[] => {
  const choices = grips.map(choiceOf)
  const layers: Layer[] = []
  for (const i of grips.keys()) layers.push(extend(choices, layers.at(-1), i, table, count))
  return traceBest(choices, layers, count)
}

const extend = (
  choices: readonly Choice[],
  last: Layer | undefined,
  i: number,
  table: CostTable,
  count: number,
): Layer => {
  const here = choiceAt(choices, i)
  const own = ownCosts(here, table)
  if (!last) {
    const layer = emptyLayer(own.length, count)
    for (const [c, cost] of own.entries()) insert(layer, c, count, cost, -1)
    return layer
  }
  const before = choiceAt(choices, i - 1)
  const earlier = choices[i - 2]
  const steps = table.step(before, here)
  return earlier && isLine(earlier.grip, before.grip, here.grip)
    ? extendLine(last, [earlier, before, here], own, steps, table, count)
    : extendPlain(last, before.ways.length, own, steps, count)
}

const choiceAt = (choices: readonly Choice[], i: number): Choice => {
  const choice = choices[i]
  if (!choice) throw new Error(`there is no grip ${i}`)
  return choice
}

/** Three single notes: each pair goes on from each pair before it. */
const extendLine = (
  last: Layer,
  [earlier, before, here]: readonly [Choice, Choice, Choice],
  own: Float64Array,
  steps: Float64Array,
  table: CostTable,
  count: number,
): Layer => {
  const layer = emptyLayer(before.ways.length * here.ways.length, count)
  const positions = table.position(earlier.grip, before.grip, here.grip)
  for (let b = 0; b < before.ways.length; b++)
    for (let c = 0; c < here.ways.length; c++) {
      const pair = b * here.ways.length + c
      const step = (own[c] ?? 0) + (steps[pair] ?? 0)
      for (let a = 0; a < earlier.ways.length; a++) {
        const position = positions[placeOf(earlier.ways[a], before.ways[b], here.ways[c])] ?? 0
        const from = (a * before.ways.length + b) * count
        for (let rank = 0; rank < count; rank++) {
          const cost = (last.costs[from + rank] ?? Infinity) + step + position
          if (!insert(layer, pair, count, cost, a * count + rank)) break
        }
      }
    }
  return layer
}

const placeOf = (
  one: Digits | undefined,
  two: Digits | undefined,
  three: Digits | undefined,
): number => fingersPlace(one?.[0] ?? 5, two?.[0] ?? 5, three?.[0] ?? 5)

/** Elsewhere only the last grip counts: the best ways to each of its candidates go on to all of the next. */
const extendPlain = (
  last: Layer,
  before: number,
  own: Float64Array,
  steps: Float64Array,
  count: number,
): Layer => {
  const best = bestLayer(last, before, count)
  const layer = emptyLayer(before * own.length, count)
  for (let b = 0; b < before; b++)
    for (let c = 0; c < own.length; c++) {
      const pair = b * own.length + c
      const step = (own[c] ?? 0) + (steps[pair] ?? 0)
      for (let rank = 0; rank < count; rank++) {
        layer.costs[pair * count + rank] = (best.costs[b * count + rank] ?? Infinity) + step
        layer.from[pair * count + rank] = best.from[b * count + rank] ?? -1
      }
    }
  return layer
}

/** What each way to finger a grip costs by itself, with fingers unlike those of a like group. */
const ownCosts = (choice: Choice, table: CostTable): Float64Array => {
  const costs = table.grip(choice)
  const { keys } = choice.grip
  if (!keys.some(({ preferred }) => preferred !== undefined)) return costs
  return costs.map((cost, w) => {
    const others = keys.filter(
      ({ preferred }, k) => preferred !== undefined && preferred !== choice.ways[w]?.[k],
    )
    return cost + unlike * others.length
  })
}

/**
 * For each finger that is not as in a like group: about what passing the thumb and the change of
 * position with it cost, so that the fingers differ only where it would be worse.
 */
const unlike = 8

/** The best ends of all, each followed back to the beginning. */
const traceBest = (
  choices: readonly Choice[],
  layers: readonly Layer[],
  count: number,
): readonly Path[] => {
  const last = layers.at(-1)
  if (!last) return []
  const ends = [...last.costs.entries()]
    .filter(([, cost]) => cost < Infinity)
    .toSorted((a, b) => a[1] - b[1])
    .slice(0, count)
  return ends.map(([end, cost]) => ({ holds: trace(choices, layers, count, end), cost }))
}

const trace = (
  choices: readonly Choice[],
  layers: readonly Layer[],
  count: number,
  end: number,
): readonly Hold[] => {
  const holds: Hold[] = []
  let place = end
  for (let i = layers.length - 1; i >= 0; i--) {
    const { grip, ways } = choiceAt(choices, i)
    const before = choices[i - 1]?.ways.length ?? 1
    const pair = Math.floor(place / count)
    const b = Math.floor(pair / ways.length)
    holds.push(holdOf(grip, ways[pair % ways.length] ?? []))
    const origin = layers[i]?.from[place] ?? -1
    place = (Math.floor(origin / count) * before + b) * count + (origin % count)
  }
  return holds.reverse()
}
