import { expect, test } from 'vitest'
import { strainsOf } from '@/difficulty/strain'
import type { HandReach } from '@/fingering/spans'
import { cutChunk } from '@/music/chunk'
import { tempo, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'

const strains = (line: string, goal: number, reach: HandReach = 'large'): string => {
  const score = writeScore({ right: line })
  const chunk = cutChunk(score, tick(0), score.end, 'right')
  return chunk ? strainsOf(chunk, tempo(goal), reach).join(' ') : 'no chunk'
}

// What the advice to musicians names; the limits of speed are common practice, no source.
test.each<[string, number, HandReach, string, string]>([
  ['C4 D4 E4 F4', 120, 'medium', '', 'a line'],
  ['C4+C5 D4+D5', 60, 'large', 'octaves', 'octaves'],
  ['C4+C5', 60, 12, 'octaves stretches', 'an octave is the whole of a small hand'],
  ['C4+E5', 60, 'large', 'stretches', 'a tenth'],
  ['C5:1/4 C5:1/4 C5:1/4', 80, 'medium', 'fastRepetitions', 'a key again after 0.19 s'],
  ['C5:1/4 C5:1/4 C5:1/4', 60, 'medium', '', 'a key again after 0.25 s'],
  ['C5:1/4 D5:1/4 C5:1/4 D5:1/4', 100, 'medium', 'trills', 'to and fro after 0.15 s'],
  ['C5:1/4 D5:1/4 C5:1/4 D5:1/4', 60, 'medium', '', 'to and fro after 0.25 s'],
  ['C5:1/4 D5:1/4 E5:1/4 D5:1/4', 100, 'medium', '', 'a turn'],
])('%s at %i, hand %s: %s (%s)', (line, goal, reach, expected) => {
  expect(strains(line, goal, reach)).toBe(expected)
})
