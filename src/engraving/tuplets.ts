import { quarter } from './parts'
import type { Grid } from './pulses'

/** A region where `num` values stand in the place of `numbase`: 3:2 is a triplet. */
export interface Tuplet {
  readonly start: number
  readonly end: number
  readonly num: number
  readonly numbase: number
  /** The real length of one of the `num` values. */
  readonly step: number
}

/** The tuplets that onsets on their grids ask for, each inside its bar. `starts` in any order. */
export const findTuplets = (grids: readonly Grid[], starts: readonly number[]): Tuplet[] => {
  const found: Tuplet[] = []
  for (const [i, grid] of grids.entries()) {
    const end = grid.start + grid.length
    if (found.at(-1)?.start === grid.start - grid.length && found.at(-1)?.end === end) continue
    const inner = starts.filter((at) => at > grid.start && at < end)
    if (inner.every((at) => isBinary(at - grid.start, grid.length))) continue
    const next = grids[i + 1]
    if (next && opensPair(grid, next, starts)) found.push(triplet(grid.start, grid.length * 2))
    else found.push(...tupletsOf(grid, inner))
  }
  return found
}

/** Two pulses whose border no onset marks, in thirds of both together: a triplet of the larger value. */
const opensPair = (grid: Grid, next: Grid, starts: readonly number[]): boolean => {
  if (grid.division !== 3 || next.division !== 3 || grid.metre !== next.metre) return false
  if (grid.index % 2 === 1 || grid.length !== next.length || grid.length < quarter) return false
  const border = next.start
  const inside = (from: Grid): boolean =>
    starts.some((at) => at > from.start && at < from.start + from.length)
  return !starts.includes(border) && inside(grid) && inside(next)
}

const tupletsOf = ({ start, length, division }: Grid, inner: readonly number[]): Tuplet[] => {
  const whole = (num: number, numbase: number): Tuplet[] => [
    { start, end: start + length, num, numbase, step: length / num },
  ]
  if (division === 3) return whole(3, 2)
  if (division === 5 || division === 7) return whole(division, 4)
  const middle = start + length / 2
  if (!inner.includes(middle) && division === 6) return whole(3, 2)
  const halves = [start, middle].filter((from) =>
    inner.some((at) => at > from && at < from + length / 2 && !isBinary(at - from, length / 2)),
  )
  if (halves.length === 2 && division === 6) return whole(6, 4)
  return halves.map((from) => triplet(from, length / 2))
}

const triplet = (start: number, length: number): Tuplet => ({
  start,
  end: start + length,
  num: 3,
  numbase: 2,
  step: length / 3,
})

/** Whether halving alone leads to a place inside a length. */
export const isBinary = (place: number, length: number): boolean => (place * 16) % length === 0
