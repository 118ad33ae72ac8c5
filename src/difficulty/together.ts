import type { Tick } from '@/music/units'
import type { Stroke } from './strokes'

/** Something that both hands make together at a place, counted in strokes. */
export interface JointStroke {
  readonly start: Tick
  readonly count: number
}

/** A place where the hands divide the time between two common strokes unlike: right 3, left 2. */
export interface CrossRhythm extends JointStroke {
  readonly right: number
  readonly left: number
}

/**
 * Rhythms that do not divide: between two strokes that both hands have in common each hand makes some
 * even gaps; where both make more than one and neither number divides the other, every stroke between
 * counts 1. Three against two: 2 strokes of the one and 1 of the other, at the first of them: 3.
 */
export const crossRhythms = (
  right: readonly Stroke[],
  left: readonly Stroke[],
): readonly CrossRhythm[] => {
  const found: CrossRhythm[] = []
  let common: readonly [right: number, left: number] | undefined
  let [r, l] = [0, 0]
  for (;;) {
    const [one, other] = [right[r], left[l]]
    if (!one || !other) return found
    if (one.start === other.start) {
      const rhythm =
        common && rhythmBetween(right.slice(common[0], r + 1), left.slice(common[1], l + 1))
      if (rhythm) found.push(rhythm)
      common = [r, l]
    }
    if (one.start <= other.start) r++
    if (other.start <= one.start) l++
  }
}

const rhythmBetween = (
  right: readonly Stroke[],
  left: readonly Stroke[],
): CrossRhythm | undefined => {
  const [one, other] = [right.length - 1, left.length - 1]
  const start = right[0]?.start
  const isCrossed = Math.min(one, other) > 1 && one % other !== 0 && other % one !== 0
  return start !== undefined && isCrossed && isEven(right) && isEven(left)
    ? { start, count: one + other - 2, right: one, left: other }
    : undefined
}

/** All gaps within a twentieth of their mean, since ticks round. */
const isEven = (strokes: readonly Stroke[]): boolean => {
  const [first, last] = [strokes[0], strokes.at(-1)]
  if (!first || !last) return false
  const mean = (last.start - first.start) / (strokes.length - 1)
  return strokes.every(({ start }, i) => {
    const gap = start - (strokes[i - 1]?.start ?? start - mean)
    return Math.abs(gap - mean) <= mean / 20
  })
}

/**
 * Crossing hands: 1 at each stroke where the left hand's highest key lies above the right hand's lowest,
 * of what is struck there or still sounds.
 */
export const crossedStrokes = (
  right: readonly Stroke[],
  left: readonly Stroke[],
): readonly JointStroke[] => {
  const found: JointStroke[] = []
  let [r, l] = [0, 0]
  while (r < right.length || l < left.length) {
    const [one, other] = [right[r], left[l]]
    const start = earlier(one, other)
    if (start === undefined) return found
    if (one?.start === start) r++
    if (other?.start === start) l++
    if (isAbove(left[l - 1], right[r - 1], start)) found.push({ start, count: 1 })
  }
  return found
}

const earlier = (one: Stroke | undefined, other: Stroke | undefined): Tick | undefined => {
  if (!one || !other) return (one ?? other)?.start
  return one.start < other.start ? one.start : other.start
}

const isAbove = (left: Stroke | undefined, right: Stroke | undefined, at: Tick): boolean =>
  left !== undefined &&
  right !== undefined &&
  left.end > at &&
  right.end > at &&
  (left.keys.at(-1) ?? 0) > right.keys[0]
