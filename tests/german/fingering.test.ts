import { afterEach, beforeEach, expect, test } from 'vitest'
import { german } from '@/german/german'
import { fingeringText, tellDifference, tellImpossible, tellUnreachable } from '@/text/fingering'
import { nameKey } from '@/music/spelling'
import { key } from '@/music/units'
import { speak } from '@/text/text'
import { describeDifferences } from '@/views/fingeringWords'

beforeEach(() => speak('de', german))
afterEach(() => speak('en'))

test('how fingerings differ', () => {
  const difference = [
    { kind: 'thumb', more: false },
    { kind: 'weak', more: false },
    { kind: 'stretch', more: true },
  ] as const
  const words = 'weniger Daumenuntersätze, die schwachen Finger seltener, mehr weite Griffe'
  expect(tellDifference(difference)).toBe(words)
  expect(fingeringText.besideFirst(describeDifferences([{ hand: 'right', difference }]))).toBe(
    `Gegenüber dem ersten: ${words}.`,
  )
  expect(
    describeDifferences([
      { hand: 'right', difference },
      { hand: 'left', difference: [] },
    ]),
  ).toBe(`rechte Hand: ${words}; linke Hand: für die Hand gleich anstrengend`)
})

test.each([
  [{ kind: 'twice', finger: 3 }, '3 auf zwei Tasten zugleich'],
  [
    { kind: 'tooWide', low: 2, high: 3, semitones: 7, most: 5 },
    '2 und 3 über 7 Halbtöne, sie spannen aber nur 5',
  ],
] as const)('what cannot be is pointed out: %j', (impossible, words) => {
  expect(tellImpossible(impossible)).toBe(words)
})

test.each([
  [
    { kind: 'wide', semitones: 16, reach: 14 },
    'der Akkord umfasst 16 Halbtöne, mehr als eine None: arpeggieren oder einen Ton der anderen Hand geben',
  ],
  [
    { kind: 'lift', from: key(70), to: key(84) },
    'von B4 nach C6 reicht die Hand nicht in einer Lage: sie abheben',
  ],
] as const)(
  'what is out of reach is told with a way out, the notes by their German names: %j',
  (why, words) => {
    expect(tellUnreachable(why, nameKey)).toBe(words)
  },
)

test.each([
  [1, 0, 'Von Ihrer einen Ziffer steht hier 1.'],
  [
    7,
    1,
    'Von Ihren 8 Ziffern stehen hier 7; 1 entfällt, weil ihr Ton in dieser Ausgabe nicht steht.',
  ],
  [
    1,
    2,
    'Von Ihren 3 Ziffern steht hier 1; 2 entfallen, weil ihre Töne in dieser Ausgabe nicht stehen.',
  ],
])('of a better edition: %i stand, %i are dropped', (carried, dropped, words) => {
  expect(fingeringText.carried(carried, dropped)).toBe(words)
})
