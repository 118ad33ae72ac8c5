import { z95, type Estimate } from './proportion'

/** How often something went wrong at a stage of practice. */
export interface CurvePoint {
  /** How many repetitions in: above zero. */
  readonly trial: number
  /** Share of flawed ones: above zero. */
  readonly errors: number
}

/**
 * Errors fall with practice as a power of the number of trials, so that on log scales they lie on a
 * straight line (Drake & Palmer 2000, Cognition 74:1-32). Its slope is told with its interval, and:
 * improving, worsening: the interval leaves out zero. plateau: it lies so near to zero that twice the
 * practice would change errors by less than a tenth. unclear: the figures do not say.
 */
export interface LearningCurve {
  readonly slope: Estimate
  readonly verdict: 'improving' | 'worsening' | 'plateau' | 'unclear'
}

/** Fewer points than this leave the interval of a slope so wide that it says nothing. */
const leastPoints = 5

/** A tenth fewer errors with twice the practice: 2^slope = 0.9. */
const flatSlope = Math.log2(1 / 0.9)

/** `undefined` for fewer than five points, or points all at one trial. */
export const fitLearningCurve = (points: readonly CurvePoint[]): LearningCurve | undefined => {
  if (points.length < leastPoints) return undefined
  const line = fitLine(points.map(({ trial, errors }) => [Math.log(trial), Math.log(errors)]))
  if (!line) return undefined
  const half = studentT(points.length - 2) * line.slopeError
  const slope = { value: line.slope, low: line.slope - half, high: line.slope + half }
  return { slope, verdict: verdictOn(slope) }
}

const verdictOn = ({ low, high }: Estimate): LearningCurve['verdict'] => {
  if (low > -flatSlope && high < flatSlope) return 'plateau'
  if (high < 0) return 'improving'
  return low > 0 ? 'worsening' : 'unclear'
}

interface Line {
  readonly slope: number
  readonly intercept: number
  /** Standard error of the slope. */
  readonly slopeError: number
}

/** Least squares; `undefined` when all x are the same. */
export const fitLine = (points: readonly (readonly [x: number, y: number])[]): Line | undefined => {
  const n = points.length
  const mean = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0) / n
  const meanX = mean(points.map(([x]) => x))
  const meanY = mean(points.map(([, y]) => y))
  let xx = 0
  let xy = 0
  for (const [x, y] of points) {
    xx += (x - meanX) ** 2
    xy += (x - meanX) * (y - meanY)
  }
  if (n < 3 || xx === 0) return undefined
  const slope = xy / xx
  const intercept = meanY - slope * meanX
  const rest = points.reduce((sum, [x, y]) => sum + (y - intercept - slope * x) ** 2, 0)
  return { slope, intercept, slopeError: Math.sqrt(rest / (n - 2) / xx) }
}

/**
 * The 97.5 % point of Student's distribution, to a hundredth from three degrees of freedom on.
 * Source: Abramowitz & Stegun 1964, 26.7.5.
 */
export const studentT = (degrees: number): number => {
  const [z, n] = [z95, degrees]
  const [z3, z5, z7, z9] = [z ** 3, z ** 5, z ** 7, z ** 9]
  return (
    z +
    (z3 + z) / (4 * n) +
    (5 * z5 + 16 * z3 + 3 * z) / (96 * n ** 2) +
    (3 * z7 + 19 * z5 + 17 * z3 - 15 * z) / (384 * n ** 3) +
    (79 * z9 + 776 * z7 + 1482 * z5 - 1920 * z3 - 945 * z) / (92_160 * n ** 4)
  )
}
