import { expect, test } from 'vitest'
import { carrySpots } from '@/app/carrySpots'
import { createHardSpots } from '@/app/hardSpots'
import type { SpotPlace, SpotWords } from '@/app/spotWords'
import { assessDifficulty } from '@/difficulty/difficulty'
import type { HandChoice } from '@/music/music'
import { createMemoryStorage } from '@/storage/memory'
import { storagePort } from '../../src/storagePort'
import { writeScore } from '../music/writeScore'

const bar = 'C5 D5 E5 F5'
const score = (...bars: readonly string[]) =>
  writeScore({ right: bars.join(' '), left: bars.map(() => 'C3:4').join(' ') })
const old = score(bar, bar, bar, bar)
const place = (from: number, to: number, hand: HandChoice = 'right'): SpotPlace => ({
  from: String(from),
  to: String(to),
  hand,
})
const nothing: SpotWords = { said: [], order: [] }
const words: SpotWords = {
  said: [
    { ...place(0, 4), word: 'accepted' },
    { ...place(8, 12), word: 'rejected' },
  ],
  order: [place(8, 12), place(0, 4)],
}

test.each([
  ['the same notes', score(bar, bar, bar, bar, bar), 2, 0],
  ['one misprint corrected', score('C5 D5 Eb5 F5', bar, bar, bar), 2, 0],
  ['other notes in one of them', score('C5 D5 A5 B5', bar, bar, bar), 1, 1],
  ['a bar more at the beginning', score('G4 A4 B4 G4', 'G4 A4 B4 G4', 'G4 A4 B4 G4', bar), 0, 2],
])('words on spots go over where most notes agree: %s', (_, better, carried, dropped) => {
  const result = carrySpots(words, nothing, old, better)
  expect([result.carried, result.dropped]).toEqual([carried, dropped])
  expect(result.words.said).toHaveLength(carried)
  expect(result.words.order).toHaveLength(carried)
})

test('what was said of the better edition itself stands', () => {
  const own: SpotWords = {
    said: [{ ...place(0, 4), word: 'rejected' }],
    order: [place(12, 16)],
  }
  const result = carrySpots(words, own, old, score(bar, bar, bar, bar, bar))
  expect(result.words).toEqual({
    said: [
      { ...place(8, 12), word: 'rejected' },
      { ...place(0, 4), word: 'rejected' },
    ],
    order: [place(12, 16)],
  })
})

test('they are kept with the better edition, and it is told once', async () => {
  const storage = storagePort(createMemoryStorage())
  const assess = () => Promise.resolve(assessDifficulty(old))
  const spots = createHardSpots({ storage, assess })
  const better = score(bar, bar, bar, 'C5 D5 E5 G5')
  await spots.save(old.id, words)
  await spots.carry(old, better)
  expect(await createHardSpots({ storage, assess }).words(better.id)).toEqual({
    ok: true,
    value: words,
  })
  expect(spots.takeCarried(better.id)).toEqual({ carried: 2, dropped: 0 })
  expect(spots.takeCarried(better.id)).toBeUndefined()
  // Those of the old edition stay with it.
  expect(await spots.words(old.id)).toEqual({ ok: true, value: words })
})

test('where nothing was said nothing is told', async () => {
  const storage = storagePort(createMemoryStorage())
  const spots = createHardSpots({ storage, assess: () => Promise.resolve(assessDifficulty(old)) })
  const better = score(bar, bar)
  await spots.carry(old, better)
  expect(spots.takeCarried(better.id)).toBeUndefined()
})
