/**
 * How difficult a piece is, where, and why.
 *
 * stroke: all keys that one hand strikes together, in time at the goal tempo (strokes.ts). feature: one
 * thing that makes music difficult, in its own unit (features.ts for a hand, together.ts for both).
 * points: what a feature weighs against one slow stroke (load.ts). local difficulty: points a second in
 * a beat, of a hand or of both. hard spot: a stretch of beats that stands out of the piece, with its
 * reasons (spots.ts, reasons.ts), which `src/text/spots.ts` says in words of the trade, with a way to practise each.
 *
 * What it cannot see: voicing, pedalling, memory, nerves.
 *
 * Example: sixteenths on five neighbouring keys at 120 quarters a minute are 8 strokes a second, about
 * 18 points a second; the same an octave apart in each hand about twice that.
 */
import { fingerWork } from '@/fingering/fingering'
import { widestOf, type HandReach } from '@/fingering/spans'
import type { Hand, Score } from '@/music/music'
import type { Tempo, Tick } from '@/music/units'
import { beatsOf, placeInBeats, type Beat } from './beats'
import type { FingerWork, SpanMm } from './features'
import { octaveMm, whiteKeyMm } from './keyboard'
import {
  noPoints,
  pointsFor,
  pointsOfStroke,
  sumPoints,
  weights,
  type HandWork,
  type Points,
} from './load'
import { reasonsFor, type Reason } from './reasons'
import { findSpots, type BeatLoad, type Spot } from './spots'
import { clockOf, strokesOf, type Stroke } from './strokes'
import { crossedStrokes, crossRhythms } from './together'
import { rateWhole, type Extent, type WholeDifficulty } from './whole'

export interface DifficultySettings {
  /** Quarters a minute at the beginning; later changes keep their proportion. As the score says where it is left out. */
  readonly tempo?: Tempo
  /** Medium where it is left out. */
  readonly span?: HandReach
}

/** A stretch that stands out of the piece, with what a pianist would say of it. */
export interface HardSpot extends Omit<Spot, 'causes'> {
  /** One for each of its causes, the weightiest first. */
  readonly reasons: readonly Reason[]
}

export interface Difficulty extends WholeDifficulty {
  /** The hardest first. */
  readonly spots: readonly HardSpot[]
}

/** The widest chord in millimetres, from C: an octave, a ninth, a tenth; other intervals by their semitones. */
const spanMm = (span: HandReach): number =>
  whiteKeysOf.get(widestOf(span)) ?? (widestOf(span) * octaveMm) / 12

const whiteKeysOf: ReadonlyMap<number, number> = new Map([
  [12, octaveMm],
  [14, octaveMm + whiteKeyMm],
  [16, octaveMm + 2 * whiteKeyMm],
])

/** How difficult a piece is at its goal tempo, and its hard spots. */
export const assessDifficulty = (
  score: Score,
  { tempo, span = 'medium' }: DifficultySettings = {},
): Difficulty => {
  const clock = clockOf(score, tempo)
  const right = strokesOf(score.notes, 'right', clock)
  const left = strokesOf(score.notes, 'left', clock)
  const beats = beatsOf(score, clock)
  const loads = loadBeats(score, beats, right, left, span)
  const sounding = loads.filter(({ beat }) => isBetween(beat, right, left))
  return {
    ...rateWhole(
      sounding.map((load) => ({
        seconds: load.beat.seconds,
        points: load.both,
      })),
      extentOf(score),
    ),
    spots: findSpots(sounding).map((spot) => explain(spot, right, left, spanMm(span))),
  }
}

const extentOf = ({ notes, keys }: Score): Extent => {
  let [low, high] = [Infinity, -Infinity]
  for (const { key } of notes) {
    low = Math.min(low, key)
    high = Math.max(high, key)
  }
  return {
    notes: notes.length,
    compass: Math.max(0, high - low),
    fifths: Math.max(0, ...keys.map(({ fifths }) => Math.abs(fifths))),
  }
}

/** From the first stroke to the last. */
const isBetween = (beat: Beat, ...hands: readonly (readonly Stroke[])[]): boolean => {
  const first = Math.min(...hands.map((strokes) => strokes[0]?.start ?? Infinity))
  const last = Math.max(...hands.map((strokes) => strokes.at(-1)?.start ?? -Infinity))
  return beat.end > first && beat.start <= last
}

const loadBeats = (
  score: Score,
  beats: readonly Beat[],
  right: readonly Stroke[],
  left: readonly Stroke[],
  span: HandReach,
): readonly BeatLoad[] => {
  const ofHand = (hand: Hand, strokes: readonly Stroke[]): readonly Points[] => {
    const work = workOf(score, hand, strokes, span)
    return spread(beats, strokes, (i) => pointsOfStroke(work, i))
  }
  const [rights, lefts] = [ofHand('right', right), ofHand('left', left)]
  const joints = jointPoints(right, left)
  const together = spread(beats, joints, (i) => joints[i]?.points ?? noPoints)
  return beats.map((beat, i) => {
    const [one = noPoints, other = noPoints] = [rights[i], lefts[i]]
    return {
      beat,
      right: one,
      left: other,
      both: sumPoints([one, other, together[i] ?? noPoints]),
    }
  })
}

const workOf = (
  { notes, keys, ticksPerQuarter }: Score,
  hand: Hand,
  strokes: readonly Stroke[],
  span: HandReach,
): HandWork => {
  const fingers = new Map<number, FingerWork>()
  for (const { start, cost, thumbPassing } of fingerWork(notes, {
    hand,
    ticksPerQuarter,
    span,
  })) {
    const before = fingers.get(start)
    fingers.set(start, {
      cost: cost + (before?.cost ?? 0),
      thumbPassing: Math.max(thumbPassing, before?.thumbPassing ?? 0),
    })
  }
  return { strokes, fingers, span: spanMm(span), signatures: keys }
}

const jointPoints = (
  right: readonly Stroke[],
  left: readonly Stroke[],
): readonly { readonly start: Tick; readonly points: Points }[] =>
  [
    ...crossRhythms(right, left).map(({ start, count }) => ({
      start,
      points: pointsFor('rhythm', weights.rhythm * count),
    })),
    ...crossedStrokes(right, left).map(({ start, count }) => ({
      start,
      points: pointsFor('crossing', weights.crossing * count),
    })),
  ].toSorted((a, b) => a.start - b.start)

/** The points a second of each beat, from those of some sorted places. */
const spread = (
  beats: readonly Beat[],
  places: readonly { readonly start: Tick }[],
  pointsAt: (i: number) => Points,
): readonly Points[] => {
  const sums = beats.map(() => [...noPoints])
  const inBeat = placeInBeats(beats, places)
  for (let i = 0; i < inBeat.length; i++) {
    const b = inBeat[i] ?? 0
    const sum = sums[b]
    const seconds = beats[b]?.seconds ?? 1
    const points = pointsAt(i)
    if (sum)
      for (let f = 0; f < sum.length; f++) sum[f] = (sum[f] ?? 0) + (points[f] ?? 0) / seconds
  }
  return sums
}

const explain = (
  { causes, ...spot }: Spot,
  right: readonly Stroke[],
  left: readonly Stroke[],
  span: SpanMm,
): HardSpot => {
  const within = (strokes: readonly Stroke[]): readonly Stroke[] =>
    strokes.slice(firstAt(strokes, spot.from), firstAt(strokes, spot.to))
  return { ...spot, reasons: reasonsFor({ ...spot, causes }, within(right), within(left), span) }
}

/** The place of the first stroke at or after a tick, by halving. */
const firstAt = (strokes: readonly Stroke[], at: Tick): number => {
  let [low, high] = [0, strokes.length]
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    if ((strokes[middle]?.start ?? 0) < at) low = middle + 1
    else high = middle
  }
  return low
}
