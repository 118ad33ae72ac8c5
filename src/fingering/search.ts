import { candidatesOf, type Hold } from './candidates'
import { fingersPlace, type CostTable } from './costTable'
import type { Grip } from './grips'
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
  const ways = grips.map(candidatesOf)
  const layers: Layer[] = []
  for (const i of grips.keys()) layers.push(extend(grips, ways, layers.at(-1), i, table, count))
  return traceBest(ways, layers, count)
}

/**
 * For each pair of candidates, of the grip before and of this one, the costs of the best ways to it
 * (`count` places each, infinite where there are fewer), and where each came from: the candidate
 * two grips before times `count`, plus its rank there.
 */
interface Layer {
  readonly costs: Float64Array
  readonly from: Int32Array
}

const extend = (
  grips: readonly Grip[],
  ways: readonly (readonly Hold[])[],
  last: Layer | undefined,
  i: number,
  table: CostTable,
  count: number,
): Layer => {
  const grip = gripAt(grips, i)
  const here = ways[i] ?? []
  const before = ways[i - 1] ?? [[]]
  const own = here.map((hold) => table.grip(grip, hold) + unlikeCost(grip, hold))
  const layer = {
    costs: new Float64Array(before.length * here.length * count).fill(Infinity),
    from: new Int32Array(before.length * here.length * count).fill(-1),
  }
  if (!last) {
    for (const [c, cost] of own.entries()) insert(layer, c, count, cost, -1)
    return layer
  }
  const previous = gripAt(grips, i - 1)
  const earlier = ways[i - 2] ?? [[]]
  const first = grips[i - 2]
  const positions =
    first && isLine(first, previous, grip) ? table.position(first, previous, grip) : undefined
  for (let b = 0; b < before.length; b++)
    for (let c = 0; c < here.length; c++) {
      const holdB = before[b] ?? []
      const holdC = here[c] ?? []
      const step = (own[c] ?? 0) + table.step(previous, holdB, grip, holdC)
      for (let a = 0; a < earlier.length; a++) {
        const cost = step + positionCost(positions, earlier[a], holdB, holdC)
        const state = (a * before.length + b) * count
        for (let rank = 0; rank < count; rank++) {
          const whole = (last.costs[state + rank] ?? Infinity) + cost
          if (!insert(layer, b * here.length + c, count, whole, a * count + rank)) break
        }
      }
    }
  return layer
}

const positionCost = (
  costs: Float64Array | undefined,
  before: Hold | undefined,
  between: Hold,
  after: Hold,
): number => {
  const one = before?.[0]
  const two = between[0]
  const three = after[0]
  if (!costs || !one || !two || !three) return 0
  return costs[fingersPlace(one.finger, two.finger, three.finger)] ?? 0
}

/**
 * For each finger that is not as in a like group: about what passing the thumb and the change of
 * position with it cost, so that the fingers differ only where it would be worse.
 */
const unlike = 8

const unlikeCost = ({ keys }: Grip, hold: Hold): number => {
  let cost = 0
  for (let k = 0; k < keys.length; k++) {
    const preferred = keys[k]?.preferred
    if (preferred !== undefined && preferred !== hold[k]?.finger) cost += unlike
  }
  return cost
}

const gripAt = (grips: readonly Grip[], i: number): Grip => {
  const grip = grips[i]
  if (!grip) throw new Error(`there is no grip ${i}`)
  return grip
}

/** Puts a way into its place among the best; false when it is none of them. */
const insert = (
  { costs, from }: Layer,
  state: number,
  count: number,
  cost: number,
  origin: number,
): boolean => {
  const first = state * count
  let place = first + count - 1
  if (cost >= (costs[place] ?? 0)) return false
  for (; place > first && cost < (costs[place - 1] ?? Infinity); place--) {
    costs[place] = costs[place - 1] ?? Infinity
    from[place] = from[place - 1] ?? -1
  }
  costs[place] = cost
  from[place] = origin
  return true
}

/** The best ends of all, each followed back to the beginning. */
const traceBest = (
  ways: readonly (readonly Hold[])[],
  layers: readonly Layer[],
  count: number,
): readonly Path[] => {
  const last = layers.at(-1)
  if (!last) return []
  const ends = [...last.costs.entries()]
    .filter(([, cost]) => cost < Infinity)
    .toSorted((a, b) => a[1] - b[1])
    .slice(0, count)
  return ends.map(([end, cost]) => ({ holds: trace(ways, layers, count, end), cost }))
}

const trace = (
  ways: readonly (readonly Hold[])[],
  layers: readonly Layer[],
  count: number,
  end: number,
): readonly Hold[] => {
  const path: Hold[] = []
  let place = end
  for (let i = layers.length - 1; i >= 0; i--) {
    const here = ways[i] ?? []
    const before = ways[i - 1] ?? [[]]
    const state = Math.floor(place / count)
    const b = Math.floor(state / here.length)
    path.push(here[state % here.length] ?? [])
    const origin = layers[i]?.from[place] ?? -1
    const a = Math.floor(origin / count)
    place = (a * before.length + b) * count + (origin % count)
  }
  return path.reverse()
}
