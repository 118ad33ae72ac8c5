import { expect, test } from 'vitest'
import { cutBars } from '@/music/cutBars'
import { formatKey } from '@/music/pitch'
import { writeScore } from './writeScore'

const score = writeScore({ right: 'G4 C5:4 D5:4 E5:4', left: 'r r:4 D3:4 r:4', pickup: 1 })

test.each([
  [0, 0, 'G4'],
  [1, 2, 'C5 D5'],
  [0, 99, 'G4 C5 D5 E5'],
  [-5, 0, 'G4'],
  [3, 3, 'E5'],
])('bars %i to %i of the right hand are %s', (from, to, keys) => {
  const chunk = cutBars(score, from, to, 'right')
  expect(chunk?.onsets.map((o) => formatKey(o.notes[0].key)).join(' ')).toBe(keys)
})

test('bars in which the hand rests give no chunk', () => {
  expect(cutBars(score, 3, 3, 'left')).toBe(undefined)
})

test('bars beyond the piece give no chunk', () => {
  expect(cutBars(score, 4, 9, 'right')).toBe(undefined)
})
