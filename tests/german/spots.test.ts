import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Reason } from '@/difficulty/reasons'
import { german } from '@/german/german'
import { spotsText, tellReason } from '@/text/spots'
import { speak } from '@/text/text'
import { describeCarriedSpots, describeWhole } from '@/views/hardSpotsWords'

beforeEach(() => speak('de', german))
afterEach(() => speak('en'))

test.each<readonly [Reason, string]>([
  [{ kind: 'speed', onsetsASecond: 6.42 }, 'schnell: 6,4 Anschläge in der Sekunde'],
  [{ kind: 'leap', widest: 'tenth' }, 'Sprünge: bis zu einer Dezime'],
  [{ kind: 'stretch', widest: 'beyond' }, 'weite Griffe: über mehr als zwei Oktaven'],
  [{ kind: 'chords', struck: 4 }, 'Akkorde mit bis zu 4 Tönen in einer Hand'],
  [{ kind: 'chords', struck: 'sixths' }, 'Sexten'],
  [{ kind: 'rhythm', against: [3, 2] }, '3 gegen 2'],
  [{ kind: 'rhythm' }, 'Rhythmen, die nicht ineinander aufgehen'],
])('%j is told as a pianist says it', (reason, words) => {
  expect(tellReason(reason)).toBe(words)
})

test.each([
  [1, 0, 'Von Ihren Angaben über 1 schwere Stelle gilt hier 1.'],
  [
    3,
    1,
    'Von Ihren Angaben über 4 schwere Stellen gelten hier 3; 1 entfällt, weil die meisten Töne in dieser Ausgabe nicht stehen.',
  ],
  [
    0,
    2,
    'Von Ihren Angaben über 2 schwere Stellen gelten hier 0; 2 entfallen, weil die meisten Töne in dieser Ausgabe nicht stehen.',
  ],
])('of a better edition: %i hold, %i are dropped', (carried, dropped, words) => {
  expect(describeCarriedSpots({ carried, dropped })).toBe(words)
})

test('figures have a decimal comma, one and many are told apart', () => {
  expect(describeWhole({ difficulty: 3.08, uncertainty: 1.23 })).toMatch(
    /^Im Ganzen etwa 3,1, irgendwo zwischen 1,9 und 4,3 \(/,
  )
  expect([1, 2].map((n) => spotsText.rejected(n))).toEqual([
    '1 abgelehnte Stelle',
    '2 abgelehnte Stellen',
  ])
  expect([1, 3].map((n) => spotsText.done.passagesMade(n))).toEqual([
    '1 Passage gemacht',
    '3 Passagen gemacht',
  ])
})
