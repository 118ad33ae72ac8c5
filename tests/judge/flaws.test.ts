import { describe, expect, test } from 'vitest'
import { replayTake } from '@/judge/replay'
import { cutChunk } from '@/music/chunk'
import { tick } from '@/music/units'
import { writeScore } from '../music/writeScore'
import { flaws, judge, writeTake } from './notation'

/** Chunk, played, marks in the order of time. Common practice, no source: what a teacher would say. */
const table: readonly (readonly [title: string, chunk: string, played: string, marks: string])[] = [
  ['all as written', 'C4 D4 E4', 'C4 D4 E4', 'right right right'],
  ['a wrong key, then the right one', 'C4 D4 E4', 'C4 D#4 D4 E4', 'right extra right right'],
  ['a wrong key in place of the right one', 'C4 D4 E4', 'C4 D#4 E4', 'right wrong right'],
  ['a wrong key that is the next right one', 'C4 D4 E4', 'C4 E4 E4', 'right wrong right'],
  ['the right key an octave off', 'C4 D4 E4', 'C4 D5 E4', 'right wrong right'],
  ['a wrong first key', 'C4 D4 E4', 'B3 D4 E4', 'wrong right right'],
  ['a wrong last key', 'C4 D4 E4', 'C4 D4 F4', 'right right wrong'],
  ['a key left out', 'C4 D4 E4', 'C4 . E4', 'right missing right'],
  ['a key left out without waiting', 'C4 D4 E4 F4', 'C4 E4 F4', 'right missing right right'],
  ['the first key left out', 'C4 D4 E4', 'D4 E4', 'missing right right'],
  ['the last key left out', 'C4 D4 E4', 'C4 D4', 'right right missing'],
  ['one key too many', 'C4 D4 E4', 'C4 G4 D4 E4', 'right extra right right'],
  ['one key too many at the end', 'C4 D4 E4', 'C4 D4 E4 -250 G4', 'right right right extra'],
  ['a key brushed with the first', 'C4 D4 E4', 'C4 -370 B3! -30 D4 E4', 'right extra right right'],
  ['a key struck again', 'C4 D4 E4', 'C4 D4 -200 D4 E4', 'right right repeated right'],
  ['the first key struck again', 'C4 D4 E4', 'C4 -100 C4 D4 E4', 'right repeated right right'],
  ['the last key struck again', 'C4 D4 E4', 'C4 D4 E4 -50 E4', 'right right right repeated'],
  ['two keys exchanged', 'C4 D4 E4 F4', 'C4 E4 D4 F4', 'right right order right'],
  ['the first two exchanged', 'C4 D4 E4', 'D4 C4 E4', 'right order right'],
  ['the last two exchanged', 'C4 D4 E4', 'C4 E4 D4', 'right right order'],
  [
    'back inside the chunk',
    'C4 D4 E4 F4 G4',
    'C4 D4 E4 D4 E4 F4 G4',
    'right restart right right right right',
  ],
  [
    'two slips are two flaws',
    'C4 D4 E4 F4 G4',
    'C4 D#4 E4 G#4 G4',
    'right wrong right wrong right',
  ],
  [
    'two wrong neighbours at once',
    '[C4 E4] [D4 F4]',
    '[C4 E4] [D#4 F#4]',
    'right right wrong wrong',
  ],
  ['a wrong key in a chord', '[C4 E4 G4] F4', '[C4 F4 G4] F4', 'right wrong right right'],
  ['an inner key lacking', '[C4 E4 G4] F4', '[C4 G4] F4', 'right right missing right'],
  ['a key too many in a chord', '[C4 G4] F4', '[C4 E4 G4] F4', 'right extra right right'],
  [
    'a chord struck twice',
    '[C4 E4] [D4 F4]',
    '[C4 E4] -150 [C4 E4] [D4 F4]',
    'right right repeated repeated right right',
  ],
  [
    'one of three repeated notes left out',
    'C4 D4 D4 D4 E4',
    'C4 D4 D4 . E4',
    'right right right missing right',
  ],
  ['a whole chord left out', 'C4 [D4 F4] E4', 'C4 . E4', 'right missing missing right'],
]

describe('what is not as written is named at its place, and nothing else is blamed', () => {
  test.each(table)('%s', (_, chunk, played, marks) => {
    expect(judge(chunk, played)).toBe(marks)
  })
})

describe('what a good player does is never a flaw', () => {
  const clean: readonly (readonly [title: string, chunk: string, played: string])[] = [
    ['chords in any order', '[C4 E4 G4] [D4 F4]', 'G4 -390 C4 -390 E4 F4 -380 D4'],
    ['hands apart', '[,C3 E4] [,D3 F4]', 'E4 -350 C3 -50 F4 -350 D3'],
    [
      'the right hand an onset ahead by some milliseconds',
      '[,C3 E4] [,D3 F4] [,E3 G4]',
      'E4 F4 -380 C3 G4 -400 D3 E3',
    ],
    ['a slow roll that is written', '[C4 E4 G4]r A4', 'C4 -200 E4 -200 G4 A4'],
    ['a trill', 'C4 D4~ E4', 'C4 D4 -320 E4 -320 D4 -320 E4 -320 D4 E4'],
    ['a trill from above', 'C4 D4~ E4', 'C4 E4 -320 D4 -320 E4 -320 D4 E4'],
    ['a grace note before its note', 'C4 (D#4) E4 F4', 'C4 D#4 -340 E4 F4'],
    ['a grace note left out', 'C4 (D#4) E4 F4', 'C4 E4 F4'],
    ['a unison struck by one hand', 'C4 =D4 E4', 'C4 D4 E4'],
    ['a unison struck by both hands', 'C4 =D4 E4', 'C4 D4 -380 D4 E4'],
    ['a key that bounces', 'C4 D4 E4', 'C4 D4 -375 D4 E4'],
    ['any pauses and haste', 'C4 D4 E4 F4', 'C4 1500 D4 -320 E4 900 F4'],
    ['repeated notes', 'C4 C4 C4 C4', 'C4 C4 C4 C4'],
    ['keys that cross on one key', '[,C4 E4] [,E4 C4] F4', '[C4 E4] [E4 C4] F4'],
  ]
  test.each(clean)('%s', (_, chunk, played) => {
    expect(judge(chunk, played)).toMatch(/^right( right)*$/)
  })

  test('an ornament whose main note never comes lacks it', () => {
    expect(judge('C4 D4~ F4', 'C4 E4 F4')).toBe('right missing right')
  })
})

test('the time that a key too many takes is not a stop besides', () => {
  expect(flaws('C4 D4 E4 F4', 'C4 D4 A4 E4 F4', 'flow')).toBe('extra')
  expect(flaws('C4 D4 E4 F4', 'C4 D4 A4 E4 800 F4', 'flow')).toBe('extra hesitation')
})

test('a tremolo of two notes may go to and fro as often as it likes', () => {
  const score = writeScore({ right: 'C4:2 G4:2 C5:2' })
  const notes = score.notes.map((n) =>
    n.start < 4 * score.ticksPerQuarter ? { ...n, ornament: 'tremolo' as const } : n,
  )
  const chunk = cutChunk({ ...score, notes }, tick(0), score.end, 'right')
  const settings = { standard: 'notes', forgiveBrushed: false } as const
  const clean = (played: string): string | undefined =>
    chunk && replayTake(chunk, settings, writeTake(played, 100)).repetitions[0]?.verdict
  expect(clean('C4 G4 C4 G4 C4 G4 C4 G4 C5')).toBe('clean')
  expect(clean('C4 G4 C5')).toBe('clean')
  expect(clean('C4 G4 C4 G4 D5')).toBe('flawed')
})
