import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beginCoach } from '@/coach/coach'
import { tempo } from '@/music/units'
import { drill, inShort, sentences, settings } from './drill'

describe('streak and tempo', () => {
  test.each([
    ['', 0, 72, ''],
    ['cccc', 4, 72, ''],
    ['ccccc', 0, 76, 'streakMet, tempo 76'],
    ['ccccf', 0, 72, ''],
    ['ccccb', 0, 72, ''],
    ['ccccf ccccc', 0, 76, 'streakMet, tempo 76'],
    ['ccccc ccccc', 0, 80, 'streakMet, tempo 76, streakMet, tempo 80'],
    ['ff', 0, 72, 'pause'],
    ['fbf', 0, 72, ''],
    ['fff', 0, 69, 'pause, tempo 69'],
    ['fcfcf', 0, 69, 'tempo 69'],
    ['fccfccf', 0, 72, ''],
    ['bbbbbbbb', 0, 72, ''],
    ['fbbfbbcf', 0, 69, 'tempo 69'],
    ['fff f f', 0, 69, 'pause, tempo 69, pause'],
    ['cc+', 0, 76, 'overruled raise, tempo 76'],
    ['cc-', 0, 69, 'overruled lower, tempo 69'],
  ])('%s: streak %i at %i, commands: %s', (sequence, streak, rung, commands) => {
    const { coach, commands: given } = drill(sequence)
    expect([coach.streak, coach.rung, inShort(given)]).toEqual([streak, rung, commands])
  })

  test('a streak at the goal tempo is secure, said once, and stays full', () => {
    const atGoal = { ...settings, startTempo: tempo(120) }
    expect(inShort(drill('ccccc', atGoal).commands)).toBe('streakMet, secure')
    const { coach, commands } = drill('ccccc c f ccccc', atGoal)
    expect(inShort(commands)).toBe('streakMet, secure, streakMet')
    expect([coach.secure, coach.streak, coach.rung]).toEqual([true, 5, 120])
  })

  test('at the lowest rung a smaller group is proposed and the tempo stays', () => {
    const slow = { ...settings, startTempo: tempo(60) }
    const { coach, commands } = drill('fff', slow)
    expect(inShort(commands)).toBe('pause, smallerGroup')
    expect([coach.rung, coach.paused?.reason.kind]).toEqual([60, 'tooBig'])
  })

  test('at the ends of the ladder raise and lower do nothing', () => {
    expect(drill('+', { ...settings, startTempo: tempo(120) }).commands).toEqual([])
    expect(drill('-', { ...settings, startTempo: tempo(60) }).commands).toEqual([])
  })

  test.each([
    [1, 3],
    [5, 5],
    [40, 10],
  ])('a streak goal of %i is kept within bounds: %i', (streakGoal, bounded) => {
    expect(beginCoach({ ...settings, streakGoal }).streakGoal).toBe(bounded)
  })

  test('the last forty verdicts are kept for the strokes', () => {
    expect(drill('cf'.repeat(30)).coach.recent).toHaveLength(40)
  })
})

describe('the reason in one sentence, with the figures', () => {
  test.each([
    ['ccccc', 'Five clean in a row: up from 72 to 76.'],
    ['ff', 'Two flawed in a row: hands off, look at the place, then go on.'],
    ['fcfcf', 'Three of the last five were flawed: down from 72 to 69.'],
    ['fcff', 'Three of the last four were flawed: down from 72 to 69.'],
    ['fbbfbbcf', 'One clean of the last four, under one half: down from 72 to 69.'],
    ['+', 'Your choice: up from 72 to 76.'],
    ['-', 'Your choice: down from 72 to 69.'],
  ])('%s: %s', (sequence, sentence) => {
    expect(sentences(drill(sequence).commands).at(-1)).toBe(sentence)
  })

  test('at the lowest rung it names the tempo', () => {
    expect(sentences(drill('fff', { ...settings, startTempo: tempo(60) }).commands).at(-1)).toBe(
      'Three flawed in a row at 60, the slowest tempo here: a smaller group will go better.',
    )
  })
})

describe('for every sequence', () => {
  const letters = fc.string({
    unit: fc.constantFrom('c', 'c', 'c', 'f', 'b', 'g', '-', 'u'),
    maxLength: 150,
  })
  const goals = fc.integer({ min: 3, max: 10 })

  test('the tempo rises only after as many clean in a row at that rung as the streak goal', () => {
    fc.assert(
      fc.property(letters, goals, (sequence, streakGoal) => {
        let before = drill('', { ...settings, streakGoal }).coach.rung
        let cleanHere = 0
        for (const [i, letter] of [...sequence].entries()) {
          const { rung } = drill(sequence.slice(0, i + 1), { ...settings, streakGoal }).coach
          if (letter === 'c') cleanHere++
          if (letter === 'f' || letter === 'b') cleanHere = 0
          // What the coach lowered the person may take back.
          if (rung > before && letter !== 'u') expect(cleanHere).toBe(streakGoal)
          if (rung !== before) cleanHere = 0
          before = rung
        }
      }),
      { numRuns: 60 },
    )
  })

  test('the streak never passes its goal and the rung is always on the ladder', () => {
    fc.assert(
      fc.property(letters, goals, (sequence, streakGoal) => {
        const { coach } = drill(sequence, { ...settings, streakGoal })
        expect(coach.streak).toBeLessThanOrEqual(streakGoal)
        expect(coach.rungs).toContain(coach.rung)
      }),
    )
  })

  test('a clean repetition never lowers the tempo or asks for a pause', () => {
    fc.assert(
      fc.property(letters, (sequence) => {
        const before = drill(sequence)
        const after = drill(`${sequence}c`)
        expect(after.coach.rung).toBeGreaterThanOrEqual(before.coach.rung)
        expect(after.coach.paused).toBeUndefined()
      }),
    )
  })
})
