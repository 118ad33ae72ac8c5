import { createRandom, type Random } from '@/devices/random'
import { checkIntervals } from '@/plan/due'
import { firstMemory, fsrsInterval, fsrsStep, type Memory } from './fsrs'

/**
 * How a passage is forgotten: the probability that it is clean cold, so many days after it last was, at
 * a stability in days. None of the laws is measured on passages; they differ as much as those in print.
 */
interface Law {
  readonly name: string
  readonly clean: (days: number, stability: number) => number
  /** What a clean check makes of the stability, the more the longer it was waited for. */
  readonly grown: (days: number, stability: number) => number
  readonly lapsed: (stability: number) => number
}

const laws: readonly Law[] = [
  {
    name: 'exponential, doubles with each clean check',
    clean: (t, s) => Math.exp((-0.105 * t) / s),
    grown: (t, s) => s * (1 + Math.min(1, t / s)),
    lapsed: (s) => Math.max(1, s / 4),
  },
  {
    name: 'power of the days, long tail (the curve of FSRS-6)',
    clean: (t, s) => (1 + (0.98035 * t) / s) ** -0.1542,
    grown: (t, s) => s * (1 + 1.5 * Math.min(1, t / s)),
    lapsed: (s) => Math.max(1, s / 3),
  },
  {
    name: 'falls fast to a floor, as movements may',
    clean: (t, s) => 0.6 + 0.4 * Math.exp((-0.3 * t) / s),
    grown: (t, s) => s * (1 + 0.8 * Math.min(1, t / s)),
    lapsed: (s) => Math.max(1, s / 2),
  },
  {
    name: 'exponential, never below a day short of it',
    clean: (t, s) => Math.exp((-0.105 * Math.max(0, t - 1)) / s),
    grown: (t, s) => s * (1 + 3 * Math.min(0.5, t / s)),
    lapsed: () => 1,
  },
]

/** A way of choosing the next day, with whatever it remembers. */
interface Schedule {
  /** After a check; `undefined` at the beginning. */
  readonly next: (was: { readonly days: number; readonly clean: boolean } | undefined) => number
}

const dayRule = (): Schedule => {
  let step = 0
  return {
    next: (was) => {
      step = was === undefined || !was.clean ? 0 : Math.min(step + 1, checkIntervals.length - 1)
      return checkIntervals[step] ?? 28
    },
  }
}

const fsrs = (retention: number): Schedule => {
  let memory: Memory = firstMemory
  return {
    next: (was) => {
      if (was) memory = fsrsStep(memory, was.days, was.clean)
      return Math.max(1, Math.round(fsrsInterval(memory.stability, retention)))
    },
  }
}

interface Outcome {
  /** Of one passage in a year. */
  readonly checks: number
  readonly failed: number
  /** The probability of a clean cold repetition, on the average of all days. */
  readonly clean: number
}

const passages = 400
const year = 365

const simulate = (law: Law, begin: () => Schedule): Outcome => {
  const random = createRandom(17)
  let [checks, failed, clean] = [0, 0, 0]
  for (let i = 0; i < passages; i++) {
    const life = liveAYear(law, begin(), random)
    checks += life.checks
    failed += life.failed
    clean += life.clean
  }
  return {
    checks: checks / passages,
    failed: failed / checks,
    clean: clean / passages,
  }
}

const liveAYear = (law: Law, schedule: Schedule, random: Random): Outcome => {
  let stability = 2 * Math.exp(0.7 * random.normal())
  let [last, due] = [0, schedule.next(undefined)]
  let [checks, failed, clean] = [0, 0, 0]
  for (let day = 1; day <= year; day++) {
    const days = day - last
    const chance = law.clean(days, stability)
    clean += chance / year
    if (day < due) continue
    checks++
    const isClean = random.uniform() < chance
    if (!isClean) failed++
    stability = isClean ? law.grown(days, stability) : law.lapsed(stability)
    last = day
    due = day + schedule.next({ days, clean: isClean })
  }
  return { checks, failed, clean }
}

const retentions = [0.8, 0.85, 0.9, 0.93, 0.95, 0.96, 0.97, 0.98, 0.99]

/** What FSRS-6 comes to with as many checks as the day rule: between the two retentions around it. */
const atSameWork = (all: readonly Outcome[], checks: number): number | undefined => {
  const above = all.findIndex((each) => each.checks >= checks)
  const [one, other] = [all[above - 1], all[above]]
  if (!one || !other) return undefined
  const share = (checks - one.checks) / (other.checks - one.checks)
  return one.clean + share * (other.clean - one.clean)
}

/** The day rule and FSRS-6 on each law: checks in a year, failed ones, and how often it would be clean. */
export const compareSchedules = (): readonly string[] => [
  `${passages} passages for a year; a check that fails is learned again that day.`,
  ...laws.flatMap((law) => {
    const rule = simulate(law, dayRule)
    const others = retentions.map((r) => simulate(law, () => fsrs(r)))
    const same = atSameWork(others, rule.checks)
    return [
      law.name,
      `  ${'day rule'.padEnd(18)} ${describe(rule)}`,
      ...retentions.map((r, i) => {
        const outcome = others[i]
        return outcome ? `  ${`FSRS-6 at ${r}`.padEnd(18)} ${describe(outcome)}` : ''
      }),
      `  FSRS-6 with as many checks as the day rule: ${same === undefined ? 'never so many or so few' : `clean ${percent(same)}, ${(100 * (same - rule.clean)).toFixed(1)} points against the day rule`}`,
    ]
  }),
]

const describe = ({ checks, failed, clean }: Outcome): string =>
  `${checks.toFixed(1).padStart(5)} checks, ${percent(failed)} failed, clean on ${percent(clean)} of all days`

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`
