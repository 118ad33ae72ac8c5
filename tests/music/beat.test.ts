import { expect, test } from 'vitest'
import { beatQuarters, formatBeats, isCompound, parseBeats } from '@/music/beat'
import { tempo } from '@/music/units'

// Beats of simple and compound time: common practice, no source.
test.each([
  [2, 2, 2, false],
  [2, 4, 1, false],
  [3, 4, 1, false],
  [4, 4, 1, false],
  [5, 8, 0.5, false],
  [3, 8, 0.5, false],
  [6, 4, 3, true],
  [6, 8, 1.5, true],
  [9, 8, 1.5, true],
  [12, 16, 0.75, true],
])('in %i/%i a beat is %d quarters', (beats, beatType, quarters, compound) => {
  expect(beatQuarters({ beats, beatType })).toBe(quarters)
  expect(isCompound({ beats, beatType })).toBe(compound)
})

test('90 quarters a minute are 60 beats in 6/8 and 45 in 2/2', () => {
  expect(formatBeats(tempo(90), { beats: 6, beatType: 8 })).toBe('60')
  expect(formatBeats(tempo(90), { beats: 2, beatType: 2 })).toBe('45')
})

test.each([
  ['60', 90],
  ['10', 15],
  ['400', 600],
  ['9', undefined],
  ['401', undefined],
  ['', undefined],
  ['fast', undefined],
])('in 6/8 the person who writes %j means %s quarters', (text, quarters) => {
  expect(parseBeats(text, { beats: 6, beatType: 8 })).toBe(quarters)
})
