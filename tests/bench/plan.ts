/**
 * `node --import tsx tests/bench/plan.ts [pianists]`: the plan looked back at. Simulated pianists
 * (tests/plan/pianist.ts, with its assumptions) practise pieces after their plan until all is kept. At
 * several stages the span of weeks that was stated is compared with the weeks that it took. Then the
 * day rule of cold checks against FSRS-6, on several ways of forgetting (tests/bench/checks.ts).
 */
import { createRandom } from '@/devices/random'
import { paceFrom } from '@/plan/pace'
import { spanOf } from '@/plan/span'
import { layoutOf, pieceOf } from '../plan/pieces'
import { createPianist, natureOf } from '../plan/pianist'
import { dayNumber, emptyRecord, practiseDay } from '../plan/practise'
import { compareSchedules } from './checks'

const pianists = Number(process.argv[2] ?? 100)
/** Other pianists than those on whom the assumed overhead was found. */
const firstSeed = Number(process.argv[3] ?? 1000)
const mostDays = 600
const stages = [
  ['before the first day, days a week told', 0],
  ['at a tenth', 0.1],
  ['at a quarter', 0.25],
  ['at half', 0.5],
  ['at three quarters', 0.75],
] as const

interface Stated {
  readonly day: number
  readonly low: number
  readonly value: number
  readonly high: number
}
interface Run {
  readonly days: number | undefined
  readonly spans: readonly Stated[]
  readonly cleanShare: number
}

/** A piece of 16 to 40 bars, 15 to 40 minutes on four to seven days a week, by chance of the seed. */
const run = (seed: number, growth = 1): Run => {
  const random = createRandom(seed)
  const score = pieceOf(4 + Math.floor(7 * random.uniform()))
  const minutesPerDay = 15 + 5 * Math.floor(6 * random.uniform())
  const daysPerWeek = 4 + Math.floor(4 * random.uniform())
  const layout = layoutOf(score)
  const nature = natureOf(seed)
  const own = { ...nature, growth: growth * nature.growth }
  const desk = { layout, pianist: createPianist(seed, score, own) }
  let record = emptyRecord
  const spans: Stated[] = []
  const shares: number[] = []
  for (let day = 0; day < mostDays; day++) {
    if (random.uniform() >= daysPerWeek / 7) continue
    const practised = practiseDay([desk], record, day, { minutes: minutesPerDay, seed })
    const [plan] = practised.pieces
    if (!plan || plan.finished) return { days: day, spans, cleanShare: mean(shares) }
    const told = day < 14 ? { minutesPerDay, daysPerWeek } : { minutesPerDay }
    const { weeks } = spanOf(plan, record, paceFrom(record, [layout]), dayNumber(day), told)
    spans.push({ day, ...weeks })
    shares.push(practised.cleanShare)
    record = practised.record
  }
  return { days: undefined, spans, cleanShare: mean(shares) }
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length)

const deviation = (values: readonly number[]): number =>
  Math.sqrt(mean(values.map((each) => (each - mean(values)) ** 2)))

const quantile = (values: readonly number[], q: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(q * (values.length - 1))] ?? 0

const lookBack = (count: number, growth: number): void => {
  const runs = Array.from({ length: count }, (_, i) => run(firstSeed + i, growth))
  const there = runs.filter((each) => each.days !== undefined)
  const weeks = there.map(({ days = 0 }) => days / 7)
  console.log(
    `${count} simulated pianists, pieces of 16 to 40 bars, 15 to 40 minutes on 4 to 7 days a week by chance.`,
  )
  console.log(
    `Assumed of them: tests/plan/pianist.ts. All was kept by ${there.length} within ${Math.round(mostDays / 7)} weeks: median ${quantile(weeks, 0.5).toFixed(1)} weeks, from ${quantile(weeks, 0).toFixed(1)} to ${quantile(weeks, 1).toFixed(1)}; ${Math.round(100 * mean(runs.map(({ cleanShare }) => cleanShare)))} % of repetitions clean.`,
  )
  console.log(
    `${''.padEnd(42)} inside  below  above | true / middle (median) | scatter | high / low (median)`,
  )
  let [stated, held] = [0, 0]
  for (const [name, share] of stages) {
    const cases = there.flatMap(({ days = 0, spans }) => {
      const span = spans.find(({ day }) => day >= share * days)
      return span ? [{ ...span, left: (days - span.day) / 7 }] : []
    })
    stated += cases.length
    held += cases.filter(({ left, low, high }) => left >= low && left <= high).length
    const of = (test: (each: (typeof cases)[number]) => boolean): string =>
      `${Math.round((100 * cases.filter(test).length) / cases.length)} %`.padStart(7)
    console.log(
      `${name.padEnd(42)}${of(({ left, low, high }) => left >= low && left <= high)}${of(({ left, low }) => left < low)}${of(({ left, high }) => left > high)} | ${quantile(
        cases.map(({ left, value }) => left / value),
        0.5,
      )
        .toFixed(2)
        .padStart(22)} | ${Math.exp(
        deviation(cases.map(({ left, value }) => Math.log(left / value))),
      )
        .toFixed(2)
        .padStart(7)} | ${quantile(
        cases.map(({ high, low }) => high / low),
        0.5,
      ).toFixed(1)}`,
    )
  }
  console.log(
    `The true number of weeks lay inside the stated span in ${Math.round((100 * held) / stated)} of 100.`,
  )
}

lookBack(pianists, 1)
console.log('\nThe same, all of them learning half as fast as was assumed:')
lookBack(Math.ceil(pianists / 4), 0.5)
console.log('\nThe same, all of them learning twice as fast:')
lookBack(Math.ceil(pianists / 4), 2)
console.log('')
for (const line of compareSchedules()) console.log(line)
