import fc from 'fast-check'
import { expect, test } from 'vitest'
import { proposeChunks } from '@/exercises/propose'
import type { HandChoice, Score } from '@/music/music'
import { tick } from '@/music/units'
import { writeScore } from '../music/writeScore'

const repeat = (word: string, times: number): string => Array(times).fill(word).join(' ')

/** '0-4' is a chunk from the start to its last onset at the fifth quarter. */
const cuts = (score: Score, hand: HandChoice = 'both', from = 0, to: number = score.end): string =>
  proposeChunks(score, tick(from), tick(to), hand)
    .map((c) => `${c.start / 480}-${(c.start + (c.onsets.at(-1)?.start ?? 0)) / 480}`)
    .join(' ')

test.each([
  [
    'eighths in 4/4 are cut at each half bar',
    { right: repeat('C5:1/2', 16) + ' C5' },
    '0-2 2-4 4-6 6-8',
  ],
  [
    'eighths in 3/4 are cut at each bar line',
    { right: repeat('C5:1/2', 18) + ' C5', time: [3, 4] },
    '0-3 3-6 6-9',
  ],
  ['quarters in 4/4 are cut at each bar line', { right: repeat('C5', 13) }, '0-4 4-8 8-12'],
  ['sixteenths are cut at each beat', { right: repeat('C5:1/4', 16) + ' C5' }, '0-1 1-2 2-3 3-4'],
  [
    'after a pickup the borders are those of the bars',
    { right: repeat('C5:1/2', 2) + ' ' + repeat('C5:1/2', 16) + ' C5', pickup: 1 },
    '0-3 3-5 5-7 7-9',
  ],
  ['two onsets are one small chunk', { right: 'C5 D5' }, '0-1'],
  ['a single onset is one small chunk', { right: 'C5+E5+G5' }, '0-0'],
  ['four onsets are one chunk', { right: 'C5 D5 E5 F5' }, '0-3'],
  ['empty bars between two notes are no hindrance', { right: 'C5 r:3 r:4 r:4 D5 E5 F5' }, '0-14'],
] as const)('%s', (_, sheet, expected) => {
  expect(cuts(writeScore(sheet))).toBe(expected)
})

test('without a note of the chosen hand there is nothing to propose', () => {
  expect(cuts(writeScore({ right: 'C5 D5 E5' }), 'left')).toBe('')
})

test('only notes that start inside the selection are taken', () => {
  const score = writeScore({ right: repeat('C5', 12) })
  expect(cuts(score, 'right', 4 * 480, 8 * 480)).toBe('4-7')
})

test('a chunk of one hand leaves out the other hand', () => {
  const score = writeScore({ right: repeat('C5:1/2', 6), left: 'C3 D3 E3' })
  const [chunk, ...rest] = proposeChunks(score, tick(0), score.end, 'left')
  expect(rest).toEqual([])
  expect(chunk?.onsets.map((o) => o.notes.map((n) => n.key))).toEqual([[48], [50], [52]])
})

const word = fc
  .tuple(
    fc.constantFrom('C5', 'D5', 'E5+G5', 'r', '(A5)'),
    fc.constantFrom('1/4', '1/3', '1/2', '1', '4', '9'),
  )
  .map(([name, length]) => `${name}:${length}`)
const line = fc.array(word, { maxLength: 60 }).map((words) => words.join(' '))
const selection = fc
  .record({
    right: line.map((l) => `C5 ${l}`),
    left: line.map((l) => l.replaceAll('5', '3')),
    time: fc.constantFrom([4, 4], [3, 4], [6, 8], [5, 8]) as fc.Arbitrary<[number, number]>,
    pickup: fc.constantFrom(0, 1),
    hand: fc.constantFrom('left', 'right', 'both') as fc.Arbitrary<HandChoice>,
    from: fc.nat(30),
    length: fc.nat(60),
  })
  .map(({ hand, from, length, ...sheet }) => {
    const score = writeScore(sheet)
    const range = { from: tick(480 * from), to: tick(480 * (from + length)) }
    const starts = score.notes
      .filter((n) => !n.grace && n.start >= range.from && n.start < range.to)
      .filter((n) => hand === 'both' || n.hand === hand)
      .map((n) => n.start)
    return {
      written: [...new Set(starts)],
      chunks: proposeChunks(score, range.from, range.to, hand).map((c) =>
        c.onsets.map((o) => c.start + o.start),
      ),
    }
  })

test('the chunks cover every onset of the selection and nothing else, in order', () => {
  fc.assert(
    fc.property(selection, ({ written, chunks }) => {
      expect(chunks.flatMap((c, i) => (i === 0 ? c : c.slice(1)))).toEqual(written)
    }),
  )
})

test('each chunk begins with the last onset of the one before', () => {
  fc.assert(
    fc.property(selection, ({ chunks }) => {
      expect(chunks.slice(1).map((c) => c[0])).toEqual(chunks.slice(0, -1).map((c) => c.at(-1)))
    }),
  )
})

test('chunks have 3 to 10 onsets, fewer only where the selection has fewer', () => {
  fc.assert(
    fc.property(selection, ({ written, chunks }) => {
      const least = Math.min(3, written.length)
      expect(chunks.length > 0).toBe(written.length > 0)
      for (const c of chunks) {
        expect(c.length).toBeGreaterThanOrEqual(least)
        expect(c.length).toBeLessThanOrEqual(10)
      }
    }),
  )
})
