/**
 * How many times the usual number of repetitions something takes, by its difficulty: a straight line on
 * log scales, ln factor = level + slope ln(difficulty / usual difficulty), and how sure that is.
 */
export interface Factor {
  readonly level: number
  readonly slope: number
  /** Variances and covariance of level and slope. */
  readonly variance: Covariance
}
type Covariance = readonly [level: number, both: number, slope: number]

/** Twice as difficult takes a third more repetitions: an assumption, until the record says better. */
export const usualSlope = 0.4
/** Points a second at which the level holds: quarters and eighths on neighbouring keys. */
export const usualDifficulty = 10

/**
 * So many times the repetitions that chance alone would ask for at eight of ten clean: at each new rung
 * it is fewer at first. An assumption, from simulated pianists.
 */
export const usualFactor = 1.9

/** Before anything is known: two people in three lie within a factor of 1.3 of the usual (an assumption). */
const prior: Factor = { level: Math.log(usualFactor), slope: usualSlope, variance: [0.06, 0, 0.04] }
/** How far single exercises lie from their line; more than chance alone, since those of one place go together. */
const noiseVariance = 1.5

/** What was done: its difficulty and how many times the usual number of repetitions it took. */
export interface Observation {
  readonly difficulty: number
  readonly ratio: number
}

/**
 * The line after some observations: Bayesian linear regression with known noise, one observation after
 * the other (Bishop, Pattern Recognition and Machine Learning, 2006, section 3.3; from memory).
 */
export const fitFactor = (observations: readonly Observation[]): Factor =>
  observations.reduce((line, { difficulty, ratio }) => {
    const x = logDifficulty(difficulty)
    const [ll, ls, ss] = line.variance
    const [gainLevel, gainSlope] = [ll + ls * x, ls + ss * x]
    const expected = gainLevel + gainSlope * x + noiseVariance
    const error = Math.log(Math.max(ratio, 1e-3)) - line.level - line.slope * x
    return {
      level: line.level + (gainLevel / expected) * error,
      slope: line.slope + (gainSlope / expected) * error,
      variance: [
        ll - (gainLevel * gainLevel) / expected,
        ls - (gainLevel * gainSlope) / expected,
        ss - (gainSlope * gainSlope) / expected,
      ],
    }
  }, prior)

/** The factor at a difficulty: as many people need more as need less. */
export const factorAt = (factor: Factor, difficulty: number): number =>
  Math.exp(factor.level + factor.slope * logDifficulty(difficulty))

/** How unsure the logarithm of the factor is. */
export const factorVariance = ({ variance: [ll, ls, ss] }: Factor, difficulty: number): number => {
  const x = logDifficulty(difficulty)
  return ll + 2 * ls * x + ss * x * x
}

const logDifficulty = (difficulty: number): number =>
  Math.log(Math.max(difficulty, 0.1) / usualDifficulty)
