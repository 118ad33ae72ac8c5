import { afterEach, beforeEach, expect, test } from 'vitest'
import { buildUp } from '@/exercises/buildUp'
import { german } from '@/german/german'
import { tick } from '@/music/units'
import { buildUpText, nameExercise } from '@/text/buildUp'
import { speak } from '@/text/text'
import { writeScore } from '../music/writeScore'

beforeEach(() => speak('de', german))
afterEach(() => speak('en'))

test('an exercise that was cut before is told in the language that is spoken now', () => {
  speak('en')
  const score = writeScore({ right: 'C5 D5 E5 F5 G5', left: 'C3 D3 E3 F3 G3' })
  const all = buildUp(
    score,
    { from: tick(0), to: score.end },
    { hand: 'both', thoroughness: 'brisk', direction: 'forward' },
  )
  const told = () => all.map((each) => `${nameExercise(each)}: ${buildUpText.purposes[each.why]}`)
  expect(told()[0]).toBe('group of 3: So few notes can be right at once.')
  speak('de', german)
  expect([told()[0], told().at(-1)]).toEqual([
    'Dreiergruppe: So wenige Töne gelingen auf Anhieb.',
    'das Ganze: Die ganze Passage, bis zum Zieltempo.',
  ])
})

test.each([
  [0, 1, 1, '1 Übung, etwa eine Minute in Ihrem Arbeitstempo.'],
  [3, 5, 2, '3 von 8 fertig, noch 5 Übungen, etwa 2 Minuten in Ihrem Arbeitstempo.'],
])('%i done, %i left, %i minutes', (done, left, minutes, words) => {
  expect(buildUpText.left({ done, of: done + left, left, minutes, isOwnPace: true })).toBe(words)
})
