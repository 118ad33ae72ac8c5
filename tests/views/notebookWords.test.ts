import { afterEach, expect, test } from 'vitest'
import { german } from '@/german/german'
import { notebookText } from '@/text/notebook'
import { speak } from '@/text/text'
import { whereWords } from '@/views/notebookWords'

afterEach(() => speak('en'))

const place = { from: '0', to: '8', hand: 'left', fromBar: 3, toBar: 4 } as const

test('where an entry belongs, and how many there are', () => {
  expect([whereWords(place), whereWords(undefined)]).toEqual([
    'bars 3–4, left hand',
    'the whole piece',
  ])
  expect([notebookText.entries(1), notebookText.someEntries(0, 1)]).toEqual([
    '1 entry',
    '0 of 1 entry',
  ])
  expect(notebookText.problems(1, 0)).toBe('1 problem in drills: 1 solved')
  speak('de', german)
  expect([whereWords(place), whereWords(undefined)]).toEqual([
    'Takte 3–4, linke Hand',
    'das ganze Stück',
  ])
  expect([notebookText.entries(2), notebookText.someEntries(2, 5)]).toEqual([
    '2 Einträge',
    '2 von 5 Einträgen',
  ])
  expect(notebookText.problems(2, 1)).toBe('3 Probleme beim Üben: 2 gelöst, 1 noch offen')
})

test('what stayed with an older edition agrees in number', () => {
  const told = (n: number): string => notebookText.strip.stayed(n, 'X').join('')
  expect(told(1)).toMatch(/^One entry stayed/)
  speak('de', german)
  expect([told(1), told(3)].map((words) => words.slice(0, 16))).toEqual([
    'Ein Eintrag blie',
    '3 Einträge blieb',
  ])
})
