import type { KeySignature } from '@/music/music'
import {
  alteredNotes,
  awkwardness,
  furtherNotes,
  leapBits,
  levelChanges,
  passedSemitones,
  repeatedKeys,
  stretchShare,
  strokesASecond,
  trilledStrokes,
  type FingerWork,
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

/** Points of each feature, in the order of `features`. One point is the work of one slow stroke. */
export type Points = readonly number[]

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

export interface HandWork {
  readonly strokes: readonly Stroke[]
  /** What the proposed fingering asks for at the place of each stroke. */
  readonly fingers: ReadonlyMap<number, FingerWork>
  readonly span: SpanMm
  readonly signatures: readonly KeySignature[]
}

/** What no stroke has, both hands together do. */
const none = 0

/** The points of one stroke of a hand. */
export const pointsOfStroke = (
  { strokes, fingers, span, signatures }: HandWork,
  i: number,
): Points => {
  const stroke = strokes[i]
  if (!stroke) return noPoints
  const before = strokes[i - 1]
  const work = fingers.get(stroke.start)
  // In the order of `features`.
  return [
    weights.speed * (1 + Math.min(topSpeed, strokesASecond(stroke)) / doubledSpeed),
    weights.leap * leapBits(before, stroke, span),
    weights.stretch * stretchShare(stroke, span),
    weights.chords * furtherNotes(stroke),
    weights.repeats * repeatedKeys(before, stroke),
    weights.trill * trilledStrokes(strokes, i),
    weights.topography * levelChanges(before, stroke),
    weights.fingering * awkwardness(work, stroke),
    weights.thumb * passedSemitones(work),
    weights.accidentals * alteredNotes(stroke, signatures),
    none,
    none,
  ]
}

export const noPoints: Points = features.map(() => 0)

/** The points of one feature alone. */
export const pointsFor = (feature: Feature, points: number): Points =>
  features.map((each) => (each === feature ? points : 0))

export const pointsIn = (points: Points, feature: Feature): number =>
  points[features.indexOf(feature)] ?? 0

export const sumOfPoints = (points: Points): number => {
  let sum = 0
  for (const each of points) sum += each
  return sum
}

/** Feature by feature. */
export const sumPoints = (all: readonly Points[]): Points => {
  const sum = [...noPoints]
  for (const points of all)
    for (let f = 0; f < sum.length; f++) sum[f] = (sum[f] ?? 0) + (points[f] ?? 0)
  return sum
}

export const scalePoints = (points: Points, by: number): Points => points.map((each) => each * by)
