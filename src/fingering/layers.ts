/**
 * One step of the search. For each pair of candidates, of the grip before and of this one, the costs
 * of the best ways to it (`count` places each, infinite where there are fewer), and where each came
 * from: the candidate two grips before times `count`, plus its rank there.
 */
export interface Layer {
  readonly costs: number[]
  readonly from: number[]
}

export const emptyLayer = (pairs: number, count: number): Layer => ({
  costs: rowOf(Infinity, pairs * count),
  from: rowOf(-1, pairs * count),
})

const rowOf = (value: number, length: number): number[] => {
  const row: number[] = []
  for (let i = 0; i < length; i++) row.push(value)
  return row
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

/** The best ways to each candidate of a layer's own grip, wherever they came from. */
export const bestLayer = (layer: Layer, candidates: number, count: number): Layer => {
  const best = emptyLayer(candidates, count)
  const earlier = layer.costs.length / (candidates * count)
  for (let b = 0; b < candidates; b++)
    for (let a = 0; a < earlier; a++)
      for (let rank = 0; rank < count; rank++) {
        const cost = layer.costs[(a * candidates + b) * count + rank] ?? Infinity
        if (!insert(best, b, count, cost, a * count + rank)) break
      }
  return best
}
