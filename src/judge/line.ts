/** The middle value; of an even number, the mean of the two in the middle. Undefined of none. */
export const median = (values: readonly number[]): number | undefined => {
  if (values.length === 0) return undefined
  const sorted = values.toSorted((a, b) => a - b)
  const half = Math.floor(sorted.length / 2)
  const high = sorted[half]
  const low = sorted[half - 1]
  if (high === undefined) return undefined
  return sorted.length % 2 === 1 || low === undefined ? high : (low + high) / 2
}

export interface Point {
  readonly x: number
  readonly y: number
}

export interface Line {
  readonly slope: number
  readonly offset: number
}

/** Beyond this many points, pairs further apart than this many points are left out: linear, not square. */
const reach = 60

/**
 * The Theil-Sen line: the median of the slopes of all pairs of points, through the median offset.
 * Up to 29 % of the points may be anywhere without moving it far (Sen 1968, J. Am. Stat. Assoc. 63).
 * Undefined with fewer than two different x.
 */
export const fitLine = (points: readonly Point[]): Line | undefined => {
  const slopes: number[] = []
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < Math.min(points.length, i + reach); j++) {
      const a = points[i]
      const b = points[j]
      if (a && b && b.x !== a.x) slopes.push((b.y - a.y) / (b.x - a.x))
    }
  }
  const slope = median(slopes)
  if (slope === undefined) return undefined
  const offset = median(points.map((p) => p.y - slope * p.x))
  return offset === undefined ? undefined : { slope, offset }
}

export const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, v) => sum + v, 0) / values.length

/** Sample standard deviation (divided by n - 1); undefined of fewer than two. */
export const standardDeviation = (values: readonly number[]): number | undefined => {
  const m = mean(values)
  if (m === undefined || values.length < 2) return undefined
  return Math.sqrt(values.reduce((sum, v) => sum + (v - m) ** 2, 0) / (values.length - 1))
}
