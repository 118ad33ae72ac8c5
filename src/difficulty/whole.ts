import { features, type Points } from './load'

/** How difficult a piece is as a whole: rough, for comparing pieces and not for grading them. */
export interface WholeDifficulty {
  /** Points a second where it counts, times `length`. */
  readonly difficulty: number
  /** How far it may be off, in the same points. */
  readonly uncertainty: number
  /** What the length alone makes of it: 1 for a piece of a hundred beats, 1.26 for a thousand. */
  readonly length: number
}

/** The points a second of a beat of both hands, and how long it lasts. */
export interface WeighedBeat {
  readonly seconds: number
  readonly points: Points
}

/**
 * A piece is about as difficult as its hard places: the mean of all beats with the third power, so that
 * a tenth of the piece at twice the difficulty counts about as much as all the rest.
 */
const power = 3
/** Ten times the length is a quarter more: it has to be learnt and kept up. In beats, so that no tempo shortens it. */
const lengthPower = 0.1
const usualBeats = 100
/** The best published models are off by one of nine levels (Ramoneda et al. 2024), and so will this be. */
const leastUncertainty = 0.15

/** From the first beat with notes to the last; rests count, so that a note more is never less. */
export const rateWhole = (beats: readonly WeighedBeat[]): WholeDifficulty => {
  const seconds = beats.reduce((sum, beat) => sum + beat.seconds, 0)
  if (seconds === 0) return { difficulty: 0, uncertainty: 0, length: 1 }
  const length = (beats.length / usualBeats) ** lengthPower
  const loads = beats.map(({ points }) => features.map((feature) => points[feature] ?? 0))
  const wholes = loads.map((each) => each.reduce((sum, load) => sum + load, 0))
  const without = features.map(
    (_, f) =>
      length *
      powerMean(
        wholes.map((whole, i) => whole - (loads[i]?.[f] ?? 0)),
        beats,
      ),
  )
  const difficulty = length * powerMean(wholes, beats)
  return {
    difficulty,
    uncertainty: Math.max(jackknife(without), leastUncertainty * difficulty),
    length,
  }
}

const powerMean = (values: readonly number[], beats: readonly WeighedBeat[]): number => {
  let sum = 0
  let seconds = 0
  for (const [i, beat] of beats.entries()) {
    sum += beat.seconds * Math.max(0, values[i] ?? 0) ** power
    seconds += beat.seconds
  }
  return (sum / seconds) ** (1 / power)
}

/** The standard error by leaving out one at a time (Efron & Stein 1981): how much hangs on single features. */
const jackknife = (without: readonly number[]): number => {
  const count = without.length
  const mean = without.reduce((sum, value) => sum + value, 0) / count
  const squares = without.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return Math.sqrt((squares * (count - 1)) / count)
}
