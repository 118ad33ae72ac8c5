import type { Bar } from '@/music/music'
import { quarter, toParts } from './parts'

/** One bar in parts, and where its accents fall. */
export interface Metre {
  readonly number: number
  readonly start: number
  readonly end: number
  /** A pickup lacks this much at its beginning. */
  readonly lacking: number
  /** Starts of the beamed groups, from the start of a full bar: quarters in 4/4, dotted quarters in 6/8. */
  readonly beats: readonly number[]
  /** Where the bar falls in two; no value may hide it. */
  readonly middle: number | undefined
  /** The unit inside which rhythms are read: a quarter, or the eighth of 3/8, 6/8, 7/8. */
  readonly pulse: number
  /** Beats that share one beam when all their notes are eighths. */
  readonly joins: readonly (readonly number[])[]
}

export const metreOf = (bar: Bar, ticksPerQuarter: number): Metre => {
  const start = Math.round(toParts(bar.start, ticksPerQuarter))
  const end = Math.round(toParts(bar.start + bar.length, ticksPerQuarter))
  const { beats, beatType } = bar.time
  const unit = (4 * quarter) / beatType
  const full = beats * unit
  const groups = groupsOf(beats, beatType)
  return {
    number: bar.number,
    start,
    end,
    lacking: bar.number === 0 ? Math.max(0, full - (end - start)) : 0,
    beats: startsOf(groups).map((n) => n * unit),
    middle: middleOf(beats, beatType, unit),
    pulse: beatType >= 8 ? quarter / 2 : quarter,
    joins: joinsOf(beats, beatType),
  }
}

/**
 * How strong a place in the bar is: 0 the bar line, 1 the middle, 2 a beat, 3 a pulse inside a beat,
 * 4 its half, 5 its quarter and so on; the smaller the stronger.
 */
export const strengthAt = (metre: Metre, at: number): number => {
  const place = at - metre.start + metre.lacking
  if (at === metre.start || at === metre.end || place === 0) return 0
  if (place === metre.middle) return 1
  if (metre.beats.includes(place)) return 2
  const inside = place - (metre.beats.findLast((beat) => beat <= place) ?? 0)
  return 3 + halvings(inside, metre.pulse)
}

/** Which beat a place belongs to, counted from 0. */
export const beatAt = (metre: Metre, at: number): number => {
  const place = at - metre.start + metre.lacking
  return Math.max(
    0,
    metre.beats.findLastIndex((beat) => beat <= place),
  )
}

/** How often `unit` must be halved until the place falls on it. */
export const halvings = (place: number, unit: number): number => {
  let count = 0
  for (let step = unit; count < 8; step /= 2, count++) if (place % step === 0) return count
  return count
}

/** How many units of the time signature each beat holds. Common practice, no source. */
const groupsOf = (beats: number, beatType: number): readonly number[] => {
  if (beatType < 8) return Array.from({ length: beats }, () => 1)
  if (beats % 3 === 0) return Array.from({ length: beats / 3 }, () => 3)
  const pairs = Array.from({ length: Math.floor(beats / 2) }, () => 2)
  if (beats % 2 === 0) return pairs
  if (beats === 1) return [1]
  return beats === 5 ? [3, 2] : [...pairs.slice(1), 3]
}

const startsOf = (groups: readonly number[]): number[] =>
  groups.map((_, i) => groups.slice(0, i).reduce((sum, n) => sum + n, 0))

const middleOf = (beats: number, beatType: number, unit: number): number | undefined => {
  if (beatType < 8 && beats === 5) return 3 * unit
  if (beatType < 8 && beats === 7) return 4 * unit
  const halves = beatType < 8 ? beats >= 4 && beats % 2 === 0 : beats >= 12 && beats % 2 === 0
  return halves ? (beats / 2) * unit : undefined
}

/** 2/4 and each half of 4/4 join two beats, 3/4 all three. Common practice, no source. */
const joinsOf = (beats: number, beatType: number): readonly (readonly number[])[] => {
  if (beatType !== 4) return []
  if (beats === 2) return [[0, 1]]
  if (beats === 3) return [[0, 1, 2]]
  if (beats === 4)
    return [
      [0, 1],
      [2, 3],
    ]
  return []
}
