import { ms, tempo, type Ms } from '@/music/units'
import { mean, standardDeviation } from './line'
import type { Figures } from './repetition'
import type { HeardOnset } from './hearing'
import { gapsOf, paceOf } from './timing'
import { hands, type Hand } from '@/music/music'

/** A written note as it was struck and let go. */
export interface HeardNote {
  readonly onset: number
  readonly hand: Hand
  readonly at: Ms
  /** Undefined while still held. */
  readonly until: Ms | undefined
  readonly velocity: number
}

/** What a repetition measures besides its verdict; what cannot be measured is left out. */
export const measure = (
  heard: readonly HeardOnset[],
  notes: readonly HeardNote[],
  ticksPerQuarter: number,
): Figures => {
  const pace = paceOf(heard)
  const evenness = pace === undefined ? {} : evennessOf(heard, pace)
  const spreads = heard.filter((h) => h.spread > 0).map((h) => h.spread)
  const velocities = notes.map((n) => n.velocity)
  return {
    ...given('tempo', pace, (p) => tempo(60_000 / (p * ticksPerQuarter))),
    ...evenness,
    ...given('chordSpread', spreads.length > 0 ? Math.max(...spreads) : undefined, ms),
    ...given('velocityMean', mean(velocities), (v) => v),
    ...given('velocitySd', standardDeviation(velocities), (v) => v),
    ...given('overlap', overlapOf(notes), ms),
    ...given('handLag', handLagOf(notes), ms),
  }
}

const given = <K extends string, T>(
  name: K,
  value: number | undefined,
  brand: (n: number) => T,
): { readonly [P in K]?: T } => {
  const none: { [P in K]?: T } = {}
  return value === undefined ? none : { ...none, [name]: brand(value) }
}

/**
 * Evenness as the standard deviation of the gaps between onsets, against the written ones at the
 * steady tempo (the measure of Jabusch, Vauth & Altenmüller 2004, Mov. Disord. 19:171-180).
 */
const evennessOf = (heard: readonly HeardOnset[], pace: number): Partial<Figures> => {
  const gaps = gapsOf(heard)
  const sd = standardDeviation(gaps.map((g) => g.passed - pace * g.ticks))
  const cv = standardDeviation(gaps.map((g) => g.passed / (pace * g.ticks)))
  return { ...given('gapSd', sd, ms), ...given('gapCv', cv, (v) => v) }
}

/** Mean time from a note's successor in the same hand to its own end; negative is a gap. */
const overlapOf = (notes: readonly HeardNote[]): number | undefined =>
  mean(hands.flatMap((hand) => overlapsOf(notes.filter((n) => n.hand === hand))))

/** Of one hand, in the order of the score. */
const overlapsOf = (notes: readonly HeardNote[]): number[] => {
  const overlaps: number[] = []
  let here: number | undefined
  let hereAt: Ms | undefined
  let nextAt: Ms | undefined
  for (const note of notes.toReversed()) {
    if (note.onset !== here) [here, nextAt, hereAt] = [note.onset, hereAt, note.at]
    else if (hereAt === undefined || note.at < hereAt) hereAt = note.at
    if (nextAt !== undefined && note.until !== undefined) overlaps.push(note.until - nextAt)
  }
  return overlaps
}

/** Mean time by which the left hand comes after the right at the onsets that they share. */
const handLagOf = (notes: readonly HeardNote[]): number | undefined => {
  const lags: number[] = []
  if (new Set(notes.map((n) => n.hand)).size < 2) return undefined
  for (const onset of new Set(notes.map((n) => n.onset))) {
    const of = (hand: Hand): number | undefined =>
      mean(notes.filter((n) => n.onset === onset && n.hand === hand).map((n) => n.at))
    const left = of('left')
    const right = of('right')
    if (left !== undefined && right !== undefined) lags.push(left - right)
  }
  return mean(lags)
}
