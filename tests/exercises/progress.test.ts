import { describe, expect, test } from 'vitest'
import { buildUp } from '@/exercises/buildUp'
import { progressOf } from '@/exercises/progress'
import { chunkId, tick, type ChunkId } from '@/music/units'
import { writeScore } from '../music/writeScore'

const score = writeScore({
  right: 'C5:1/4 D5:1/4 E5:1/4 F5:1/4 G5:1/4 A5:1/4 B5:1/4 C6:1/4 D6',
  left: 'C3 G3 C3',
})
const all = buildUp(
  score,
  { from: tick(0), to: score.end },
  { hand: 'both', thoroughness: 'thorough', direction: 'forward' },
)
const idOf = (index: number): ChunkId => {
  const exercise = all.at(index)
  if (!exercise) throw new Error('no such exercise')
  return exercise.chunk.id
}

/** How many are settled, the number of the next, and how many are left. */
const after = (...done: readonly ChunkId[]): string => {
  const { settled, next, left } = progressOf(all, new Set(done))
  return `${settled.length} / ${next ? all.indexOf(next) : '-'} / ${left.length}`
}

describe('progress', () => {
  test('begins with the first', () => {
    expect(after()).toBe(`0 / 0 / ${all.length}`)
  })

  test('what is done is passed over, in any order', () => {
    expect(after(idOf(0))).toBe(`1 / 1 / ${all.length - 1}`)
    expect(after(idOf(1), idOf(0))).toBe(`2 / 2 / ${all.length - 2}`)
    expect(after(idOf(1))).toBe(`1 / 0 / ${all.length - 1}`)
  })

  test('a group of four settles the groups of three within it, of the same hand', () => {
    const four = all.find(({ hand, size }) => hand === 'right' && size === 4)
    const { settled } = progressOf(all, new Set(four ? [four.chunk.id] : []))
    expect(settled.map(({ hand, size }) => `${hand} ${size}`)).toEqual(['right 3', 'right 4'])
  })

  test('a variant settles itself only, and a group settles no variant', () => {
    const variant = all.find(({ form }) => form === 'longShort')
    expect(variant && after(variant.chunk.id)).toBe(`1 / 0 / ${all.length - 1}`)
  })

  test('with the whole passage at its tempo nothing is left', () => {
    expect(after(idOf(-1))).toBe(`${all.length} / - / 0`)
  })

  test('one hand alone at the end does not settle both', () => {
    const right = all.findLast(({ hand }) => hand === 'right')
    const { next, settled } = progressOf(all, new Set(right ? [right.chunk.id] : []))
    expect(settled.every(({ hand }) => hand === 'right')).toBe(true)
    expect(next?.hand).toBe('left')
  })

  test('both hands at a slow tempo do not settle one hand that was to be faster', () => {
    const line = (octave: number, times: number): string =>
      Array(times).fill(`C${octave}:1/2 E${octave}:1/2`).join(' ')
    const early = writeScore({ right: line(5, 8), left: line(3, 3) })
    const exercises = buildUp(
      early,
      { from: tick(0), to: early.end },
      { hand: 'both', thoroughness: 'thorough', direction: 'forward' },
    )
    const pair = exercises.find(({ hand, what }) => hand === 'both' && what === 'pair')
    const { left } = progressOf(exercises, new Set(pair ? [pair.chunk.id] : []))
    expect(pair).toMatchObject({ from: 0, reach: 0.6 })
    const faster = left.filter(({ hand, to }) => hand === 'left' && to <= (pair?.to ?? 0))
    expect(faster.map(({ what, form, reach }) => `${what} ${form} ${reach}`)).toEqual([
      'whole asWritten 0.8',
    ])
  })

  test('names from elsewhere change nothing', () => {
    expect(after(chunkId('p1:0-1:right'))).toBe(after())
  })
})
