import { afterEach, beforeEach, expect, test } from 'vitest'
import { german } from '@/german/german'
import { flawsText } from '@/text/flaws'
import { sessionText } from '@/text/session'
import { speak } from '@/text/text'
import { tapTestText } from '@/text/tapTest'

beforeEach(() => speak('de', german))
afterEach(() => speak('en'))

test('what a session comes to, one and several', () => {
  expect([
    sessionText.amount(1, 0.4),
    sessionText.amount(2, 1),
    sessionText.amount(30, 12),
  ]).toEqual([
    '1 Durchgang in weniger als einer Minute.',
    '2 Durchgänge in 1 Minute.',
    '30 Durchgänge in 12 Minuten.',
  ])
})

test('the tempi of a chunk, and one of its flaws', () => {
  expect(sessionText.goal('96', true)).toBe(' von 96, sicher')
  expect(sessionText.goal(undefined, false)).toBe('')
  expect(sessionText.flaw(flawsText.names.wrong, 'Es5', 2)).toBe(
    'Andere Taste bei Es5, Anschlag 2:',
  )
  expect([1, 2, 12, 13].map((n) => flawsText.times(n))).toEqual([
    'einmal',
    'zweimal',
    'zwölfmal',
    '13-mal',
  ])
})

test('how often a mark stands for', () => {
  const { upTo, between, atLeast } = flawsText.legend
  expect([upTo(1), upTo(3), between(2, 2), between(2, 5), atLeast(6)]).toEqual([
    'einmal',
    'bis zu 3-mal',
    '2-mal',
    '2- bis 5-mal',
    '6-mal und öfter',
  ])
})

test('what the tap test counts', () => {
  expect(tapTestText.strikes(8, 16, 5, 3)).toBe('8 von 16 Anschlägen: 5 zu früh, 3 zu spät')
  expect([tapTestText.few(1), tapTestText.few(4)].map((text) => text.split(':')[0])).toEqual([
    'Nur 1 Anschlag zählt',
    'Nur 4 Anschläge zählen',
  ])
})
