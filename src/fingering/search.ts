import type { Finger } from '@/music/music'
import { holdOf, type Hold } from './candidates'
import { choiceOf, fingersPlace, type Choice, type CostTable } from './costTable'
import type { Digits, Grip } from './grips'
import { bestLayer, insert, roomForLayers, type Layer } from './layers'
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
  const most = choices.reduce((largest, { ways }) => Math.max(largest, ways.length), 0)
  const room = roomForLayers(
    choices.map(({ ways }, i) => (choices[i - 1]?.ways.length ?? 1) * ways.length * count),
  )
  const search: Search = { table, count, room, scratch: roomForLayers([most * count]) }
  const layers: Layer[] = []
  for (let i = 0; i < choices.length; i++) layers.push(extend(choices, layers.at(-1), i, search))
  return traceBest(choices, layers, count)
}

interface Search {
  readonly table: CostTable
  readonly count: number
  readonly room: (i: number) => Layer
  readonly scratch: (i: 0) => Layer
}

const extend = (
  choices: readonly Choice[],
  last: Layer | undefined,
  i: number,
  search: Search,
): Layer => {
  const here = choiceAt(choices, i)
  const layer = search.room(i)
  const own = ownCosts(here, search.table)
  if (!last) {
    for (let c = 0; c < own.length; c++) insert(layer, c, search.count, own[c] ?? 0, -1)
    return layer
  }
  const before = choiceAt(choices, i - 1)
  const earlier = choices[i - 2]
  if (earlier && isLine(earlier.grip, before.grip, here.grip))
    extendLine(last, layer, [earlier, before, here], own, search)
  else extendPlain(last, layer, [before, here], own, search)
  return layer
}

const choiceAt = (choices: readonly Choice[], i: number): Choice => {
  const choice = choices[i]
  if (!choice) throw new Error(`there is no grip ${i}`)
  return choice
}

/** Three single notes: each pair goes on from each pair before it. */
const extendLine = (
  last: Layer,
  layer: Layer,
  [earlier, before, here]: readonly [Choice, Choice, Choice],
  own: Float64Array,
  { table, count }: Search,
): void => {
  const steps = table.step(before, here)
  const positions = table.position(earlier.grip, before.grip, here.grip)
  const [ones, twos, threes] = [earlier.ways.map(only), before.ways.map(only), here.ways.map(only)]
  for (let b = 0; b < twos.length; b++)
    for (let c = 0; c < threes.length; c++) {
      const pair = b * threes.length + c
      const step = (own[c] ?? 0) + (steps[pair] ?? 0)
      for (let a = 0; a < ones.length; a++) {
        const position = positions[fingersPlace(ones[a] ?? 5, twos[b] ?? 5, threes[c] ?? 5)] ?? 0
        const from = (a * twos.length + b) * count
        for (let rank = 0; rank < count; rank++) {
          const cost = (last.costs[from + rank] ?? Infinity) + step + position
          if (!insert(layer, pair, count, cost, a * count + rank)) break
        }
      }
    }
}

const only = (digits: Digits): Finger => digits[0] ?? 5

/** Elsewhere only the last grip counts: the best ways to each of its candidates go on to all of the next. */
const extendPlain = (
  last: Layer,
  layer: Layer,
  [before, here]: readonly [Choice, Choice],
  own: Float64Array,
  { table, count, scratch }: Search,
): void => {
  const steps = table.step(before, here)
  const ways = before.ways.length
  const best = bestLayer(last, scratch(0), ways, count)
  for (let b = 0; b < ways; b++)
    for (let c = 0; c < own.length; c++) {
      const pair = b * own.length + c
      const step = (own[c] ?? 0) + (steps[pair] ?? 0)
      for (let rank = 0; rank < count; rank++) {
        layer.costs[pair * count + rank] = (best.costs[b * count + rank] ?? Infinity) + step
        layer.from[pair * count + rank] = best.from[b * count + rank] ?? -1
      }
    }
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
