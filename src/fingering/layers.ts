/**
 * One step of the search. For each pair of candidates, of the grip before and of this one, the costs
 * of the best ways to it (`count` places each, infinite where there are fewer), and where each came
 * from: the candidate two grips before times `count`, plus its rank there.
 */
export interface Layer {
  readonly costs: Float64Array
  readonly from: Int32Array
}

/**
 * Room for layers of these sizes, one after the other: rows of a long piece made one by one cost more
 * than the search. Where each way came from is kept to the end, costs until the layer after the next.
 */
export const roomForLayers = (sizes: readonly number[]): ((i: number) => Layer) => {
  const starts: number[] = []
  let all = 0
  for (const size of sizes) {
    starts.push(all)
    all += size
  }
  const from = new Int32Array(all).fill(-1)
  const largest = sizes.reduce((most, size) => Math.max(most, size), 0)
  const costs = [new Float64Array(largest), new Float64Array(largest)] as const
  return (i) => {
    const size = sizes[i] ?? 0
    const start = starts[i] ?? 0
    return {
      costs: (i % 2 === 0 ? costs[0] : costs[1]).subarray(0, size).fill(Infinity),
      from: from.subarray(start, start + size),
    }
  }
}

/** Puts a way into its place among the best of a pair; false when it is none of them. */
export const insert = (
  { costs, from }: Layer,
  pair: number,
  count: number,
  cost: number,
  origin: number,
): boolean => {
  const first = pair * count
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

/** Puts the best ways to each candidate of a layer's own grip, wherever they came from, into an empty layer. */
export const bestLayer = (layer: Layer, best: Layer, candidates: number, count: number): Layer => {
  const earlier = layer.costs.length / (candidates * count)
  for (let b = 0; b < candidates; b++)
    for (let a = 0; a < earlier; a++)
      for (let rank = 0; rank < count; rank++) {
        const cost = layer.costs[(a * candidates + b) * count + rank] ?? Infinity
        if (!insert(best, b, count, cost, a * count + rank)) break
      }
  return best
}
