import { afterEach, expect, test } from 'vitest'
import { catalogue, speak, spokenLanguage } from '@/text/text'

afterEach(() => speak('en'))

const words = catalogue('trying', {
  key: 'a key',
  keys: (n: number) => `${n} keys`,
  hands: { left: 'left', right: 'right' },
  days: ['Sunday', 'Monday'],
})
const { hands } = words
const trying = {
  key: 'eine Taste',
  keys: (n: number) => `${n} Tasten`,
  hands: { left: 'links', right: 'rechts' },
  days: ['Sonntag', 'Montag'],
}

test('a word is of the language that is spoken when it is read', () => {
  expect([words.key, words.keys(3), words.days[1]]).toEqual(['a key', '3 keys', 'Monday'])
  speak('de', { trying })
  expect(spokenLanguage()).toBe('de')
  expect([words.key, words.keys(3), words.days[1]]).toEqual(['eine Taste', '3 Tasten', 'Montag'])
  speak('en')
  expect(words.key).toBe('a key')
})

test('words by kind change too, even where they were taken out before', () => {
  expect(Object.values(hands)).toEqual(['left', 'right'])
  speak('de', { trying })
  expect(Object.values(hands)).toEqual(['links', 'rechts'])
  expect(words.hands.left).toBe('links')
})

test('an area that a language lacks stays English', () => {
  speak('de', {})
  expect([words.key, hands.right]).toEqual(['a key', 'right'])
})
