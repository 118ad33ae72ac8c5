/**
 * FSRS-6, the scheduler of the open library ts-fsrs, written down for the comparison alone: its default
 * weights and the formulas of forgetting and stability; the step of the difficulty and the grades of a
 * check (clean: good, flawed: again) from memory. The weights were fitted to flash cards.
 */
const w = [
  0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835,
  0.0614, 0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542,
] as const

export interface Memory {
  /** Days after which nine in ten are recalled. */
  readonly stability: number
  /** 1 to 10. */
  readonly difficulty: number
}

const decay = w[20]
const factor = 0.9 ** (-1 / decay) - 1

/** R(t, S). */
export const retrievability = (days: number, stability: number): number =>
  (1 + (factor * days) / stability) ** -decay

/** Days until the retention wanted. */
export const fsrsInterval = (stability: number, retention: number): number =>
  (stability / factor) * (retention ** (-1 / decay) - 1)

const within = (value: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, value))

type Grade = 1 | 3 | 4

const difficultyAt = (grade: Grade): number =>
  within(w[4] - Math.exp(w[5] * (grade - 1)) + 1, 1, 10)

/** After a first grade of good. */
export const firstMemory: Memory = { stability: w[2], difficulty: difficultyAt(3) }

/** A check after so many days. */
export const fsrsStep = (
  { stability, difficulty }: Memory,
  days: number,
  clean: boolean,
): Memory => {
  const r = retrievability(days, stability)
  const grown =
    stability *
    (1 + Math.exp(w[8]) * (11 - difficulty) * stability ** -w[9] * (Math.exp(w[10] * (1 - r)) - 1))
  const lapsed =
    w[11] * difficulty ** -w[12] * ((stability + 1) ** w[13] - 1) * Math.exp(w[14] * (1 - r))
  const grade = clean ? 3 : 1
  const moved = difficulty - (w[6] * (grade - 3) * (10 - difficulty)) / 9
  return {
    stability: within(clean ? grown : Math.min(lapsed, stability), 0.001, 36_500),
    difficulty: within(w[7] * difficultyAt(4) + (1 - w[7]) * moved, 1, 10),
  }
}
