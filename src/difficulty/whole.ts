import { features, sumOfPoints, type Points } from './load'

/**
 * How difficult a piece is as a whole: rough, for comparing pieces and not for grading them. A figure
 * without a unit: `local` with the power 0.6, times `length`, `compass` and `signature`.
 */
export interface WholeDifficulty {
  readonly difficulty: number
  /** How far it may be off, as much up as down. */
  readonly uncertainty: number
  /** Points a second where it counts. */
  readonly local: number
  /** What the number of notes makes of it: 1 for three hundred, at least a half and at most twice. */
  readonly length: number
  /** What the compass makes of it, from the lowest key to the highest: 1 for three octaves. */
  readonly compass: number
  /** What the key makes of it: 1 without sharps and flats. */
  readonly signature: number
}

/** The points a second of a beat of both hands, and how long it lasts. */
export interface WeighedBeat {
  readonly seconds: number
  readonly points: Points
}

/** How many notes a piece has, the semitones from the lowest to the highest, and its most sharps or flats. */
export interface Extent {
  readonly notes: number
  readonly compass: number
  readonly fifths: number
}

/**
 * A piece is about as difficult as its hard places: the mean of all beats with the third power, so that
 * a tenth of the piece at twice the difficulty counts about as much as all the rest.
 */
const power = 3
/**
 * Twice the points a second is half as difficult again. Points grow with the square of the tempo, and
 * the tempo of a file is often a guess or nobody's; and what is hard by its length and by its texture
 * comes in the same steps, grade by grade (common practice of examination boards, from memory).
 */
const localPower = 0.6
/**
 * Twice as many notes are about a fifth more: they have to be learnt and kept up (Sébastien et al. 2012
 * count the pages). Bounded, so that no length alone makes an easy piece hard. Notes and not seconds, so
 * that no tempo shortens it.
 */
const lengthPower = 0.25
const usualNotes = 300
const mostByLength = 2
/**
 * Twice the compass is about a fifth more: the range of pitch is among the features that tell graded
 * pieces apart (Chiu & Chen 2012). It knows nothing of tempo, which a file may lack or get wrong.
 */
const compassPower = 0.3
const usualCompass = 36
/** Each sharp or flat of the signature; examination boards bring them one by one (from memory). */
const perFifth = 0.04
/**
 * The best published models are off by one of nine levels (Ramoneda et al. 2024), and so will this be:
 * from one grade to the next exercises made by rule become about half as difficult again.
 */
const leastUncertainty = 0.4

/** From the first beat with notes to the last; rests count, so that a note more is never less. */
export const rateWhole = (beats: readonly WeighedBeat[], extent: Extent): WholeDifficulty => {
  const wholes = beats.map(({ points }) => sumOfPoints(points))
  const local = powerMean(wholes, beats)
  if (local === 0) return nothing
  const byNotes = (extent.notes / usualNotes) ** lengthPower
  const length = Math.min(mostByLength, Math.max(1 / mostByLength, byNotes))
  const compass = (Math.max(1, extent.compass) / usualCompass) ** compassPower
  const signature = 1 + perFifth * extent.fifths
  const factors = [length, compass, signature]
  const product = (all: readonly number[]): number => all.reduce((whole, each) => whole * each, 1)
  const difficulty = local ** localPower * product(factors)
  const withoutFeatures = features.map((_, f) => {
    const rest = wholes.map((whole, i) => whole - (beats[i]?.points[f] ?? 0))
    return powerMean(rest, beats) ** localPower * product(factors)
  })
  const withoutFactors = factors.map((each) => difficulty / each)
  const off = jackknife([...withoutFeatures, ...withoutFactors])
  return {
    difficulty,
    uncertainty: Math.max(off, leastUncertainty * difficulty),
    local,
    length,
    compass,
    signature,
  }
}

const nothing: WholeDifficulty = {
  difficulty: 0,
  uncertainty: 0,
  local: 0,
  length: 1,
  compass: 1,
  signature: 1,
}

const powerMean = (values: readonly number[], beats: readonly WeighedBeat[]): number => {
  let sum = 0
  let seconds = 0
  for (let i = 0; i < beats.length; i++) {
    const each = beats[i]?.seconds ?? 0
    sum += each * Math.max(0, values[i] ?? 0) ** power
    seconds += each
  }
  return seconds === 0 ? 0 : (sum / seconds) ** (1 / power)
}

/** The standard error by leaving out one at a time (Efron & Stein 1981): how much hangs on single parts. */
const jackknife = (without: readonly number[]): number => {
  const count = without.length
  const mean = without.reduce((sum, value) => sum + value, 0) / count
  const squares = without.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return Math.sqrt((squares * (count - 1)) / count)
}
