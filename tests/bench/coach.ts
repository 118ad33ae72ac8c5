/**
 * `node --import tsx tests/bench/coach.ts [learners]`: ways of practising one passage, compared on the
 * same simulated learners (tests/coach/learner.ts, with its assumptions): repetitions and minutes
 * until five in a row are clean at the goal tempo. What the learners do not model (fatigue, nights
 * between, boredom) no way gains or loses by.
 */
import { createDesk, keys } from '../coach/desk'
import { createLearner, usualNature, type Nature } from '../coach/learner'
import {
  coachAndBuildUp,
  coachOnly,
  countedGroups,
  fixedLadder,
  onceRight,
  plainRepetition,
  type Way,
} from '../coach/ways'

const learners = Number(process.argv[2] ?? 200)
/** Who is not there after so long is counted as not secure. */
const mostMinutes = 240

const ways: readonly (readonly [string, Way])[] = [
  ['plain repetition at the goal tempo', plainRepetition],
  ['once right, then faster', onceRight],
  ['fixed ladder, a rung each five', fixedLadder],
  ['groups eight times each, fixed ladder', countedGroups],
  ['this coach, whole passage', coachOnly],
  ['this coach and build-up', coachAndBuildUp],
]

const { growth, errorLearning } = usualNature
const natures: readonly (readonly [string, Partial<Nature>])[] = [
  ['as assumed', {}],
  ['no error is learned', { errorLearning: 0 }],
  ['errors learned half as fast', { errorLearning: errorLearning / 2 }],
  ['errors learned twice as fast', { errorLearning: 2 * errorLearning }],
  ['skill grows half as fast', { growth: growth / 2 }],
  ['skill grows twice as fast', { growth: 2 * growth }],
  ['a passage that goes at a third of the tempo at first', { firstSkill: -1.1 }],
  ['leaps as easy as steps', { leapLack: 0 }],
  ['leaps much harder than steps', { leapLack: 0.5 }],
]

interface Outcome {
  readonly secure: boolean
  readonly repetitions: number
  readonly minutes: number
  readonly cleanShare: number
}

const run = (way: Way, seed: number, nature: Nature): Outcome => {
  const desk = createDesk(createLearner(seed, keys, nature), mostMinutes)
  const secure = way(desk)
  const clean = desk.log.filter((entry) => entry.clean).length
  const repetitions = desk.log.length
  return { secure, repetitions, minutes: desk.minutes(), cleanShare: clean / repetitions }
}

/** Those who never got there stand at the end. */
const at = (outcomes: readonly Outcome[], of: 'repetitions' | 'minutes', q: number): number => {
  const sorted = outcomes
    .map((outcome) => (outcome.secure ? outcome[of] : Infinity))
    .toSorted((a, b) => a - b)
  return sorted[Math.floor(q * (sorted.length - 1))] ?? Infinity
}
const minutesAt = (outcomes: readonly Outcome[], q: number): number => at(outcomes, 'minutes', q)

const inWords = (value: number): string => (Number.isFinite(value) ? value.toFixed(0) : 'never')

const describe = ({ growth, errorLearning, firstSkill, leapLack }: Nature): string =>
  `growth ${growth}, learned error ${errorLearning}, begins at ${Math.round(100 * Math.exp(firstSkill))} % of the goal tempo, leaps ${Math.round(100 * (1 - Math.exp(-leapLack)))} % slower`

const spread = (outcomes: readonly Outcome[], of: 'repetitions' | 'minutes'): string =>
  [0.5, 0.25, 0.75, 0.9].map((q) => inWords(at(outcomes, of, q)).padStart(6)).join('')

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/** The ways that are quicker than the last at a quantile, by minutes. */
const quicker = (all: readonly (readonly [string, readonly Outcome[]])[], q: number): string => {
  const ours = all.at(-1)?.[1] ?? []
  const found = all.slice(0, -1).filter(([, each]) => minutesAt(each, q) < minutesAt(ours, q))
  return found.length === 0
    ? 'none'
    : found.map(([way, each]) => `${way} (${minutesAt(each, q).toFixed(0)} minutes)`).join('; ')
}

console.log(`${learners} learners; "never": not secure within ${mostMinutes} minutes`)
for (const [name, part] of natures) {
  const nature = { ...usualNature, ...part }
  console.log(`\n${name} (${describe(nature)})`)
  console.log(
    `${''.padEnd(38)}  secure | minutes: median, quarters, 9 in 10 | repetitions: the same | clean`,
  )
  const all = ways.map(([way, practise]) => {
    const outcomes = Array.from({ length: learners }, (_, seed) => run(practise, seed + 1, nature))
    const secure = `${Math.round(100 * mean(outcomes.map((each) => Number(each.secure))))} %`
    const clean = `${Math.round(100 * mean(outcomes.map((each) => each.cleanShare)))} %`
    console.log(
      `${way.padEnd(38)} ${secure.padStart(7)} | ${spread(outcomes, 'minutes').padEnd(35)}| ${spread(outcomes, 'repetitions')} | ${clean}`,
    )
    return [way, outcomes] as const
  })
  console.log(`Quicker than the last for the median learner: ${quicker(all, 0.5)}`)
  console.log(`Quicker for the quickest quarter: ${quicker(all, 0.25)}`)
}
