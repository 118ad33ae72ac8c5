import { expect, test } from 'vitest'
import { createHardSpots } from '@/app/hardSpots'
import { listSpots } from '@/app/spotList'
import { moveSpot, saySpot, type SpotPlace, type SpotWords } from '@/app/spotWords'
import { assessDifficulty, type Difficulty, type HardSpot } from '@/difficulty/difficulty'
import type { HandChoice } from '@/music/music'
import { pieceId, tempo, tick } from '@/music/units'
import { createMemoryStorage } from '@/storage/memory'
import { storagePort } from '../../src/storagePort'
import { writeScore } from '../music/writeScore'

const score = writeScore({ right: Array.from({ length: 32 }, () => 'C5').join(' ') })
const nothing: SpotWords = { said: [], order: [] }

/** 'right 4-8 20' -> from the fourth quarter to the eighth, 20 points a second. */
const found = (...lines: readonly string[]): readonly HardSpot[] =>
  lines.map((line) => {
    const [hand, span = '', points] = line.split(' ')
    const [from = 0, to = 0] = span.split('-').map((n) => tick(Number(n) * 480))
    return {
      from: tick(from),
      to: tick(to),
      difficulty: Number(points),
      reasons: [{ kind: 'leap', widest: 'tenth' }],
      strains: false,
      hand: handOf(hand),
    }
  })

const handOf = (word: string | undefined): HandChoice =>
  word === 'left' || word === 'both' ? word : 'right'

const place = (line: string): SpotPlace => {
  const [hand, span = ''] = line.split(' ')
  const [from = '', to = ''] = span.split('-')
  return { from, to, hand: handOf(hand) }
}

/** 'right 4-8 accepted 3, …': place, word and depth in the order of the list. */
const listed = (
  spots: readonly HardSpot[],
  words: SpotWords = nothing,
  hand: HandChoice = 'both',
): string =>
  listSpots(score, spots, words, hand)
    .map((spot) => {
      const { hand: of, from, to } = spot.place
      return `${of} ${from}-${to} ${spot.word} ${spot.depth}`
    })
    .join(', ')

const three = found('right 4-8 20', 'left 10-12 15', 'both 16-20 10')

test('spots stand by their difficulty, the depth against the hardest', () => {
  expect(listed(three)).toBe('right 4-8 found 3, left 10-12 found 2, both 16-20 found 1')
})

test('with one hand stand its own spots and those of both', () => {
  expect(listed(three, nothing, 'left')).toBe('left 10-12 found 2, both 16-20 found 1')
})

test('a word holds for a spot that another tempo makes a beat longer, not for another place or hand', () => {
  const words = saySpot(nothing, [place('right 4-8')], 'rejected')
  expect(listed(found('right 4-9 20'), words)).toBe('right 4-9 rejected 3')
  // Rejected places that no longer stand out can come back, so they stay in the list.
  expect(listed(found('left 4-8 20', 'right 8-12 20'), words)).toBe(
    'left 4-8 found 3, right 8-12 found 3, right 4-8 rejected 1',
  )
})

test('a rejected spot can come back, and the latest word is the only one', () => {
  const rejected = saySpot(nothing, [place('left 10-12')], 'rejected')
  const back = saySpot(rejected, [place('left 10-12')], 'accepted')
  expect(listed(three, back)).toContain('left 10-12 accepted 2')
  expect(back.said).toHaveLength(1)
})

test('added bars stand as a passage; where most of them were found already they are that spot', () => {
  const own = saySpot(nothing, [place('right 24-28')], 'accepted')
  expect(listed(three, own)).toContain('right 24-28 accepted 1')
  const same = saySpot(nothing, [place('right 4-9')], 'accepted')
  expect(listed(three, same)).toBe('right 4-8 accepted 3, left 10-12 found 2, both 16-20 found 1')
})

test('the person’s rank stands, and a new spot comes after the last that is harder', () => {
  const places = listSpots(score, three, nothing, 'both').map((spot) => spot.place)
  const [, , third = place('both 16-20')] = places
  const moved = moveSpot(nothing, places, third, -1)
  expect(listed(three, moved)).toBe('right 4-8 found 3, both 16-20 found 1, left 10-12 found 2')
  expect(listed([...three, ...found('right 28-30 18')], moved)).toBe(
    'right 4-8 found 3, right 28-30 found 3, both 16-20 found 1, left 10-12 found 2',
  )
})

test('added bars alone in a piece without hard spots are of the least depth', () => {
  expect(listed([], saySpot(nothing, [place('both 0-4')], 'accepted'))).toBe('both 0-4 accepted 1')
})

test('beyond the ends of the list nothing moves', () => {
  const places = listSpots(score, three, nothing, 'both').map((spot) => spot.place)
  const [first = place('right 4-8')] = places
  expect(moveSpot(nothing, places, first, -1)).toEqual(nothing)
})

test.each([
  ['octaves', 'C4+C5:1/4 D4+D5:1/4 E4+E5:1/4 F4+F5:1/4', true],
  ['one key again and again', 'C5:1/4 C5:1/4 C5:1/4 C5:1/4', true],
  ['a scale', 'C5:1/4 D5:1/4 E5:1/4 F5:1/4', false],
])('of what tires the hand there is a caution: %s', (_, beat, expected) => {
  const slow = Array.from({ length: 16 }, () => 'C5').join(' ')
  const piece = writeScore({ right: `${slow} ${`${beat} `.repeat(4)}${slow}` })
  const { spots } = assessDifficulty(piece, { tempo: tempo(120) })
  expect(spots).not.toHaveLength(0)
  const listed = listSpots(piece, spots, nothing, 'both')
  expect(listed.some(({ strains }) => strains)).toBe(expected)
})

const id = pieceId('p1')
const assess = (): Promise<Difficulty> =>
  Promise.resolve({ ...assessDifficulty(score), spots: three })

test('what the person said is kept for the next visit', async () => {
  const storage = storagePort(createMemoryStorage())
  const words = saySpot(nothing, [place('left 10-12')], 'rejected')
  await createHardSpots({ storage, assess }).save(id, words)
  expect(await createHardSpots({ storage, assess }).words(id)).toEqual({ ok: true, value: words })
})

test.each([
  ['nothing', undefined],
  ['a word', 'left'],
  ['lists of noise', { said: [7, { from: 'x' }], order: [null, { from: '0', to: '1' }] }],
  ['an unknown word', { said: [{ from: '0', to: '4', hand: 'left', word: 'maybe' }] }],
])('what was stored in a shape that is none is left out: %s', async (_, stored) => {
  const storage = { ...storagePort(createMemoryStorage()) }
  await storage.saveSpots(id, stored)
  expect(await createHardSpots({ storage, assess }).words(id)).toEqual({ ok: true, value: nothing })
})

test('the analysis runs anew only for another score or tempo', async () => {
  let runs = 0
  const counted = (): Promise<Difficulty> => {
    runs += 1
    return assess()
  }
  const spots = createHardSpots({ storage: storagePort(createMemoryStorage()), assess: counted })
  await spots.find(score, tempo(100))
  await spots.find(score, tempo(100))
  expect(runs).toBe(1)
  expect((await spots.find(score, tempo(120))).spots).toBe(three)
  expect(runs).toBe(2)
})
