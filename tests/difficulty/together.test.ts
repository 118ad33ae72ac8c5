import { describe, expect, test } from 'vitest'
import { clockOf, strokesOf } from '@/difficulty/strokes'
import { crossedStrokes, crossRhythms } from '@/difficulty/together'
import { writeScore } from '../music/writeScore'

const hands = (right: string, left: string) => {
  const score = writeScore({ right, left })
  const clock = clockOf(score, undefined)
  return [strokesOf(score.notes, 'right', clock), strokesOf(score.notes, 'left', clock)] as const
}

describe('rhythms that do not divide', () => {
  // 3 against 2 and 4 against 3: common practice, no source.
  test.each([
    ['C5:1/3 D5:1/3 E5:1/3 C5', 'C3:1/2 D3:1/2 C3', [['3 against 2', 3]]],
    ['C5:1/4 D5:1/4 E5:1/4 F5:1/4 C5', 'C3:1/3 D3:1/3 E3:1/3 C3', [['4 against 3', 5]]],
    ['C5:1/2 D5:1/2 C5', 'C3:1/3 D3:1/3 E3:1/3 C3', [['2 against 3', 3]]],
    ['C5:1/4 D5:1/4 E5:1/4 F5:1/4 C5', 'C3:1/2 D3:1/2 C3', []],
    ['C5:1/3 D5:1/3 E5:1/3 C5', 'C3 C3', []],
    ['C5 D5 E5', '', []],
  ])('%s over %s', (right, left, expected) => {
    const found = crossRhythms(...hands(right, left))
    expect(found.map((r) => [`${r.right} against ${r.left}`, r.count])).toEqual(expected)
  })
})

describe('crossing hands', () => {
  test.each([
    ['C5 D5', 'C3 D3', 0],
    ['C5 D5', 'E5 F5', 2],
    ['C5 D5', 'C3 F5', 1],
    ['C5:2', 'C3 D5', 1],
    ['C5', 'C5', 0],
    ['C5 r', 'r E5', 0],
  ])('%s over %s: %d strokes', (right, left, count) => {
    expect(crossedStrokes(...hands(right, left))).toHaveLength(count)
  })
})
