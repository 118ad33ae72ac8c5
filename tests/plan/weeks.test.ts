import { describe, expect, test } from 'vitest'
import { createRandom } from '@/devices/random'
import { factorAt, fitFactor, usualDifficulty, usualFactor } from '@/plan/factor'
import { honestWord, sayHonestly } from '@/plan/honest'
import { estimateWork, paceFrom, planDefaults } from '@/plan/pace'
import { planPiece, type PiecePlan } from '@/plan/plan'
import { isBelowFloor, type PracticeRecord } from '@/plan/record'
import { spanOf } from '@/plan/span'
import { createPianist, natureOf } from './pianist'
import { layoutOf, pieceOf } from './pieces'
import { dayNumber, emptyRecord, practiseDay } from './practise'

const score = pieceOf(3)
const layout = layoutOf(score)
const noPace = paceFrom(emptyRecord, [layout])
const planned = (record: PracticeRecord) => planPiece(layout, record, paceFrom(record, [layout]))

/** The record after some days of a pianist. */
const recordAfter = (days: number, growth = 1): PracticeRecord => {
  const nature = natureOf(3)
  const pianist = createPianist(3, score, { ...nature, growth: growth * nature.growth })
  let record = emptyRecord
  for (let i = 0; i < days; i++)
    record = practiseDay([{ layout, pianist }], record, i, { minutes: 30, seed: 3 }).record
  return record
}

describe('how many times the usual repetitions something takes', () => {
  test('without a record it is what is assumed, more for what is harder', () => {
    expect(factorAt(fitFactor([]), usualDifficulty)).toBeCloseTo(usualFactor, 10)
    expect(factorAt(fitFactor([]), 2 * usualDifficulty) / usualFactor).toBeCloseTo(2 ** 0.4, 10)
  })

  test('with a long record it is what the record says', () => {
    const random = createRandom(1)
    const observations = Array.from({ length: 2000 }, (_, i) => {
      const difficulty = 5 + (i % 20)
      const ratio = 3 * (difficulty / usualDifficulty) ** 0.8 * Math.exp(0.5 * random.normal())
      return { difficulty, ratio }
    })
    const factor = fitFactor(observations)
    expect(factorAt(factor, 10)).toBeCloseTo(3, 0)
    expect(factor.slope).toBeGreaterThan(0.7)
    expect(factor.slope).toBeLessThan(0.9)
  })

  test('the usual repetitions at a rung are those of a streak by chance, times what is assumed', () => {
    const [exercise] = layout.places[0]?.exercises ?? []
    const { repetitions } = estimateWork(
      exercise ? [exercise] : [],
      usualDifficulty,
      layout.goalTempo,
      noPace,
    )
    // Three in a row at eight of ten clean take 4.77 tries (Feller, success runs); a group has one rung.
    expect(repetitions).toBeCloseTo(usualFactor * 4.765625, 6)
    expect(planDefaults.repetitions.value).toBeCloseTo(repetitions, 6)
  })
})

describe('the weeks of a piece', () => {
  const span = (record: PracticeRecord, minutesPerDay = 30, daysPerWeek?: number) =>
    spanOf(planned(record), record, paceFrom(record, [layout]), dayNumber(20), {
      minutesPerDay,
      ...(daysPerWeek === undefined ? {} : { daysPerWeek }),
    })

  test('lie inside their bounds, and are fewer with more minutes or more days', () => {
    const { weeks } = span(emptyRecord)
    expect(weeks.low).toBeLessThan(weeks.value)
    expect(weeks.value).toBeLessThan(weeks.high)
    expect(span(emptyRecord, 60).weeks.value).toBeLessThan(weeks.value)
    expect(span(emptyRecord, 30, 7).weeks.value).toBeLessThan(weeks.value)
  })

  test('are surer with a record, and days a week are those of the record', () => {
    const after = span(recordAfter(10))
    expect(after.weeks.high / after.weeks.low).toBeLessThan(
      span(emptyRecord).weeks.high / span(emptyRecord).weeks.low,
    )
    expect(after.daysPerWeek).toBeCloseTo(3.5, 5)
  })

  test('are more for who learns slowly', () => {
    expect(span(recordAfter(8, 0.4)).minutes.value).toBeGreaterThan(
      span(recordAfter(8, 2)).minutes.value,
    )
  })

  test('end at nothing when all is kept', () => {
    let [record, i] = [emptyRecord, 0]
    const pianist = createPianist(3, score, { ...natureOf(3), growth: 0.3, loss: 0 })
    for (; i < 200 && !planned(record).finished; i++)
      record = practiseDay([{ layout, pianist }], record, i, { minutes: 40, seed: 1 }).record
    expect(i).toBeLessThan(200)
    expect(span(record).weeks).toEqual({ value: 0, low: 0, high: 0 })
  })
})

describe('the honest word', () => {
  const withKept = (difficulty: number): PiecePlan => {
    const plan = planned(emptyRecord)
    return {
      ...plan,
      piece: 'other' as never,
      finished: true,
      places: plan.places.map((place) => ({ ...place, state: 'kept', difficulty })),
    }
  }
  const between: PiecePlan = {
    ...withKept(7.9),
    title: 'Between',
    piece: 'between' as never,
    finished: false,
    places: withKept(7.9).places.map((place) => ({ ...place, state: 'untouched' })),
  }
  const plan = planned(emptyRecord)
  const hardest = Math.max(...plan.places.map(({ difficulty }) => difficulty))

  test.each([
    ['noRecord', [plan]],
    ['within', [plan, withKept(hardest)]],
    ['within', [plan, withKept(hardest / 1.15)]],
    ['above', [plan, withKept(hardest / 1.4)]],
    ['farAbove', [plan, withKept(hardest / 2)]],
  ] as const)('%s', (kind, all) => {
    expect(honestWord(plan, all).kind).toBe(kind)
  })

  test('speaks of months and of ways there, in one or two sentences, and forbids nothing', () => {
    const word = honestWord(plan, [plan, withKept(hardest / 2), between])
    // Twice as difficult, growing by half in a year: 12 ln 2 / ln 1.5 = 20.5 months, 10 to 41.
    expect(sayHonestly(word)).toMatch(
      /^This piece stands far above what you keep now \(2\.0 times as difficult at its hardest\)\. What you keep grows to that in some 10 to 41 months, as a rough guess, so the weeks may turn into more; begin when you like\. On the way there: Between; /,
    )
    expect(sayHonestly(word)).not.toMatch(/not|never|too/)
  })
})

test('aims are lowered when more was flawed than clean on the last days, not for a few repetitions', () => {
  const [row] = recordAfter(1).chunkDays
  const of = (clean: number, flawed: number): PracticeRecord => ({
    chunkDays: row ? [{ ...row, tally: { clean, flawed, brokenOff: 0 } }] : [],
    reached: new Map(),
  })
  expect(isBelowFloor(of(11, 12))).toBe(true)
  expect(isBelowFloor(of(12, 11))).toBe(false)
  expect(isBelowFloor(of(4, 5))).toBe(false)
})
