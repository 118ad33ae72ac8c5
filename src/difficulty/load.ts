import type { KeySignature } from '@/music/music'
import {
  alteredNotes,
  furtherNotes,
  leapBits,
  levelChanges,
  repeatedKeys,
  stretchShare,
  strokesASecond,
  trilledStrokes,
  type SpanMm,
} from './features'
import type { Stroke } from './strokes'

/** What makes music difficult, each measured in its own unit (features.ts, together.ts). */
export const features = [
  'speed',
  'leap',
  'stretch',
  'chords',
  'repeats',
  'trill',
  'topography',
  'fingering',
  'thumb',
  'accidentals',
  'crossing',
  'rhythm',
] as const
export type Feature = (typeof features)[number]

/** Points of each feature. One point is the work of one slow stroke. */
export type Points = Readonly<Partial<Record<Feature, number>>>

/**
 * What one unit of each feature weighs against a slow stroke. The published models agree on the features
 * and publish no weights that hold beyond their own data; these were set so that exercises made by rule
 * come in the order in which method books bring them: five fingers, scale, broken chord, thirds, octaves.
 */
export const weights: Readonly<Record<Feature, number>> = {
  // A stroke, besides what its speed adds.
  speed: 1,
  // A leap of two octaves in half a second (some three bits) is as much as nine strokes more.
  leap: 3,
  // A chord as wide as the hand is worth two strokes.
  stretch: 2,
  // Each further note is as much as a stroke of its own, though it goes with the first.
  chords: 1,
  repeats: 0.3,
  // A trill is a motion that runs by itself once it goes.
  trill: 0.4,
  topography: 0.15,
  // What a note costs beyond the usual in the fingering model; a semitone's stretch is 2 points there.
  fingering: 0.2,
  // In a scale the thumb passes a semitone or two, in a broken chord a fourth.
  thumb: 0.15,
  // A note that has to be read and remembered against the key.
  accidentals: 0.25,
  crossing: 0.8,
  // Each stroke between those of the other hand has to be placed by itself, against its pulse.
  rhythm: 2.4,
}

/** At so many strokes a second each weighs twice; at the ceiling of about twelve, two and a half times. */
const doubledSpeed = 8
/** Nobody strikes faster: what follows sooner is one gesture, or a chord that was played into the file. */
const topSpeed = 16

/** What the proposed fingering costs at a place, and how far the thumb passes there, semitones. */
export interface FingerWork {
  readonly cost: number
  readonly thumbPassing: number
}

/** Points of the fingering model that a note costs in easy music. */
const usualCost = 1
/** More than this beyond the usual is not fingered but leapt to, and counted there. */
const mostAwkward = 4

/** Awkward fingers: points of the fingering model (Parncutt et al. 1997) beyond the usual, at most 4. */
export const awkwardness = (cost: number, { keys }: Pick<Stroke, 'keys'>): number =>
  Math.max(0, Math.min(mostAwkward, cost - usualCost * keys.length))

export interface HandWork {
  readonly strokes: readonly Stroke[]
  /** What the proposed fingering asks for at the place of each stroke. */
  readonly fingers: ReadonlyMap<number, FingerWork>
  readonly span: SpanMm
  readonly signatures: readonly KeySignature[]
}

/** The points of one stroke of a hand. */
export const pointsOfStroke = (
  { strokes, fingers, span, signatures }: HandWork,
  i: number,
): Points => {
  const stroke = strokes[i]
  const before = strokes[i - 1]
  if (!stroke) return {}
  const work = fingers.get(stroke.start)
  return {
    speed: weights.speed * (1 + Math.min(topSpeed, strokesASecond(stroke)) / doubledSpeed),
    leap: weights.leap * leapBits(before, stroke, span),
    stretch: weights.stretch * stretchShare(stroke, span),
    chords: weights.chords * furtherNotes(stroke),
    repeats: weights.repeats * repeatedKeys(before, stroke),
    trill: weights.trill * trilledStrokes(strokes.slice(Math.max(0, i - 3), i), stroke),
    topography: weights.topography * levelChanges(before, stroke),
    fingering: weights.fingering * awkwardness(work?.cost ?? 0, stroke),
    thumb: weights.thumb * (work?.thumbPassing ?? 0),
    accidentals: weights.accidentals * alteredNotes(stroke, signatures),
  }
}

export const sumOfPoints = (points: Points): number =>
  features.reduce((sum, feature) => sum + (points[feature] ?? 0), 0)

/** Feature by feature. */
export const sumPoints = (all: readonly Points[]): Points => {
  const sum: Partial<Record<Feature, number>> = {}
  for (const points of all)
    for (const feature of features) {
      const more = points[feature] ?? 0
      if (more !== 0) sum[feature] = (sum[feature] ?? 0) + more
    }
  return sum
}

export const scalePoints = (points: Points, by: number): Points => {
  const scaled: Partial<Record<Feature, number>> = {}
  for (const feature of features) {
    const value = points[feature] ?? 0
    if (value !== 0) scaled[feature] = value * by
  }
  return scaled
}
