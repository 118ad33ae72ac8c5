import { expect, test } from 'vitest'
import { replayTake } from '@/judge/replay'
import { cutChunk } from '@/music/chunk'
import { ms, tick } from '@/music/units'
import { writeScore } from '../music/writeScore'
import { takeOf } from './player'

const eighth = 200
const run = Array<string>(24).fill('C5:1/2 D5:1/2').join(' ')

/**
 * Four eighths of a score that is all eighths, from the n-th on, played evenly. Told is how many eighths
 * after a bar line's click the first was struck; the rest follows from the metre.
 */
const playAgainst = (
  [beats, beatType]: readonly [number, number],
  from: number,
  struck: number,
  { pickup = 0, off = 0 }: { readonly pickup?: number; readonly off?: number } = {},
): string => {
  const score = writeScore({ right: run, time: [beats, beatType], pickup })
  const chunk = cutChunk(score, tick(from * 240), tick((from + 4) * 240), 'right')
  if (!chunk) throw new Error('no chunk')
  const take = takeOf(
    chunk.onsets.map(({ notes: [note] }, onset) => ({
      key: note.key,
      at: 10_000 + (struck + onset) * eighth + off,
      length: 150,
      velocity: 64,
      onset,
      note: 0,
    })),
  )
  const settings = {
    standard: 'time',
    forgiveBrushed: false,
    quarter: ms(2 * eighth),
    // A click of a bar line long before.
    click: ms(10_000 - 12 * beats * (8 / beatType) * eighth),
  } as const
  return replayTake(chunk, settings, take)
    .repetitions.map(({ verdict, flaws }) => [verdict, ...new Set(flaws.map((f) => f.kind))])
    .join(' | ')
}

test.each<[string, readonly [number, number], number, number, { readonly pickup?: number }?]>([
  ['in 4/4 with the bar', [4, 4], 8, 0],
  ['in 4/4 with the second beat of another bar', [4, 4], 2, 10],
  ['in 4/4 between two clicks', [4, 4], 3, 3],
  ['in 3/4 a beat of the player’s own choice', [3, 4], 0, 4],
  ['in 6/8 with the bar', [6, 8], 0, 6],
  ['in 6/8 with the second click', [6, 8], 3, 3],
  ['in 6/8 an eighth before the second click', [6, 8], 2, 2],
  ['in 6/8 the fifth eighth', [6, 8], 4, 4],
  ['in 6/8 the bar, but begun with the second click', [6, 8], 0, 3],
  ['in 3/8 the next bar', [3, 8], 0, 3],
  ['in 9/8 the next bar', [9, 8], 0, 9],
  ['in 7/8 the next bar', [7, 8], 0, 7],
  ['in 2/2 the second half', [2, 2], 4, 4],
  ['a pickup of an eighth', [4, 4], 0, 7, { pickup: 0.5 }],
  ['a pickup of an eighth in 6/8', [6, 8], 0, 5, { pickup: 0.5 }],
])('who plays in time is clean: %s', (_, time, from, struck, more) => {
  expect(playAgainst(time, from, struck, more)).toBe('clean')
})

test.each<[string, readonly [number, number], number, number, number, string]>([
  ['half a beat late in 4/4', [4, 4], 0, 0, 150, 'flawed,late'],
  ['an eighth late in 6/8', [6, 8], 0, 1, 0, 'flawed,late'],
  ['an eighth early in 6/8', [6, 8], 3, 2, 0, 'flawed,early'],
  ['a good part of an eighth early in 3/8', [3, 8], 0, 3, -90, 'flawed,early'],
])('who does not is told: %s', (_, time, from, struck, off, told) => {
  expect(playAgainst(time, from, struck, { off })).toBe(told)
})
