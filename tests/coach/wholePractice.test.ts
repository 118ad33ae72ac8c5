import { describe, expect, test } from 'vitest'
import {
  createDesk,
  goal,
  judgesEar,
  keys,
  lastOnset,
  plainEar,
  type Ear,
  type Entry,
} from './desk'
import { createLearner, usualNature, type Nature } from './learner'
import { coachAndBuildUp } from './ways'

const practise = (
  seed: number,
  minutes: number,
  nature: Nature = usualNature,
  ear: Ear = plainEar,
) => {
  const desk = createDesk(createLearner(seed, keys, nature), minutes, ear)
  const secure = coachAndBuildUp(desk)
  return { secure, log: desk.log, minutes: desk.minutes() }
}

const natures: readonly (readonly [string, Nature])[] = [
  ['usual', usualNature],
  ['without learned errors', { ...usualNature, errorLearning: 0 }],
  ['with errors that stick', { ...usualNature, errorLearning: 0.4 }],
  ['slow to learn', { ...usualNature, growth: 0.03 }],
  ['far below the passage', { ...usualNature, firstSkill: -1.3, leapLack: 0.4 }],
]
const seeds = Array.from({ length: 25 }, (_, i) => i + 1)

/** The repetitions of each drill, in order. */
const drillsOf = (log: readonly Entry[]): readonly (readonly Entry[])[] =>
  [...new Set(log.map(({ drill }) => drill))].map((n) => log.filter(({ drill }) => drill === n))

const cleanShare = (log: readonly Entry[]): number =>
  log.filter(({ clean }) => clean).length / log.length

/** Where the tempo rose without as many clean in a row at the rung below as the streak goal. */
const unearnedRises = (log: readonly Entry[]): readonly Entry[] =>
  drillsOf(log).flatMap((drill) =>
    drill.filter((entry, i) => {
      const before = drill[i - 1]
      if (!before || before.trial || entry.rung <= before.rung) return false
      const last = drill.slice(Math.max(0, i - before.streakGoal), i)
      const earned = last.every(({ clean, rung }) => clean && rung === before.rung)
      return !earned || last.length < before.streakGoal
    }),
  )

/** The most repetitions at one rung, one after another. */
const longestStand = (log: readonly Entry[]): number =>
  Math.max(
    ...drillsOf(log).map((drill) => {
      let [here, most] = [0, 0]
      for (const [i, entry] of drill.entries()) {
        here = entry.rung === drill[i - 1]?.rung ? here + 1 : 1
        most = Math.max(most, here)
      }
      return most
    }),
  )

describe.each(natures)('45 minutes of practice by learners %s', (_, nature) => {
  const sessions = seeds.map((seed) => practise(seed, 45, nature))

  test('the tempo never rises without a streak', () => {
    expect(sessions.flatMap(({ log }) => unearnedRises(log))).toEqual([])
    const rises = sessions.flatMap(({ log }) =>
      log.filter((e, i) => e.rung > (log[i - 1]?.rung ?? e.rung)),
    )
    expect(rises.length).toBeGreaterThan(100)
  })

  test('more than half of all repetitions are clean', () => {
    expect(Math.min(...sessions.map(({ log }) => cleanShare(log)))).toBeGreaterThan(0.5)
  })

  test('it ends in reach of the goal or with a smaller group', () => {
    const stuck = sessions.flatMap(({ secure, log }) => {
      const last = log.at(-1)
      const isWhole = last?.size === lastOnset + 1
      // The ladder of the whole passage begins at half the goal: from there it is rungs, no wall.
      return !secure && isWhole && last.rung < goal / 2 ? [`${last.size} at ${last.rung}`] : []
    })
    expect(stuck).toEqual([])
  })

  test('nobody stands at one tempo for more than sixty repetitions', () => {
    expect(Math.max(...sessions.map(({ log }) => longestStand(log)))).toBeLessThanOrEqual(60)
  })
})

test('given time enough all get there', () => {
  const sessions = natures.flatMap(([, nature]) =>
    seeds.slice(0, 8).map((seed) => practise(seed, 300, nature)),
  )
  expect(sessions.filter(({ secure }) => !secure)).toHaveLength(0)
})

test('the same learner practises in the same way', () => {
  expect(practise(3, 45)).toEqual(practise(3, 45))
})

describe('45 minutes at the keys, played by the simulated player and heard by the judge', () => {
  const { log, minutes } = practise(1, 45, usualNature, judgesEar)

  test('the session is as long, and the rules hold', () => {
    expect(minutes).toBeGreaterThan(20)
    expect(log.length).toBeGreaterThan(100)
    expect(unearnedRises(log)).toEqual([])
    expect(cleanShare(log)).toBeGreaterThan(0.5)
  })

  test('the judge hears what the learner did', () => {
    const plain = practise(1, 45)
    expect(log.map(({ clean }) => clean)).toEqual(plain.log.map(({ clean }) => clean))
  })
})
