import { describe, expect, test } from 'vitest'
import { isSmallerQuicker } from '@/coach/guard'
import { explain } from '@/coach/reasons'
import { expectedTries } from '@/exercises/expectedTries'
import { drill, inShort, sentences, settings } from './drill'

/** Three of five clean in each five, never three flawed of five, at a streak goal of ten. */
const sixOfTen = 'ccfcf ccfcf'
const long = { ...settings, streakGoal: 10 }

describe('the arithmetic of streaks', () => {
  test('is told in one sentence, with the figures', () => {
    const reason = { kind: 'longStreak', clean: 6, of: 10, streakGoal: 5 } as const
    expect(explain({ ...reason, tries: expectedTries(0.6, 5) })).toBe(
      'At six of ten clean, five in a row take about 30 tries: a smaller group will be quicker.',
    )
    expect(explain({ ...reason, streakGoal: 10, tries: expectedTries(0.6, 10) })).toBe(
      'At six of ten clean, ten in a row take about 410 tries: a smaller group will be quicker.',
    )
  })

  test('comes after ten clean and flawed repetitions at one tempo, not before', () => {
    expect(inShort(drill(sixOfTen.slice(0, -1), long).commands)).toBe('')
    expect(inShort(drill(sixOfTen, long).commands)).toBe('advice')
    expect(sentences(drill(sixOfTen).commands)).toEqual([
      'At six of ten clean, five in a row take about 30 tries: a smaller group will be quicker.',
    ])
  })

  test('comes again after ten more', () => {
    expect(inShort(drill(`${sixOfTen} ${sixOfTen.slice(0, -2)}`, long).commands)).toBe('advice')
    expect(inShort(drill(`${sixOfTen} ${sixOfTen}`, long).commands)).toBe('advice, advice')
  })

  test('begins anew at another tempo', () => {
    expect(inShort(drill('ccfc + ccfcf c', long).commands)).toBe('overruled raise, tempo 76')
  })

  test('broken off repetitions are no evidence', () => {
    expect(inShort(drill('ccfcb cbfcf', long).commands)).toBe('')
  })

  test('is not told where going on is as quick', () => {
    expect(inShort(drill('ccccf ccccf ccccf').commands)).toBe('')
  })
})

/**
 * Computed: with slips on all transitions alike, half a group is clean with the square root of the
 * share. Tries for five in a row: at 0.6 29.6, at its root 11.5; at 0.7 16.5 and 8.8; at 0.8 10.3 and 7.1.
 */
test.each([
  [0.3, 5, true],
  [0.6, 5, true],
  [0.65, 5, true],
  [0.7, 5, false],
  [0.8, 5, false],
  [0.6, 3, false],
  [0.5, 3, true],
  [0.8, 10, true],
  [0.9, 10, false],
])(
  'at clean share %f and streak goal %i a smaller group is quicker: %s',
  (share, goal, quicker) => {
    expect(isSmallerQuicker(share, goal)).toBe(quicker)
  },
)
