import { expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { pieceId } from '@/music/units'
import { countChecks, reviewChunksOfAll } from '@/review/coldFigures'
import { repetition, secure } from './session'

const noon = 43_200
const day = 86_400

/** Made secure on the first day; then the cold repetitions of the days that follow. */
const life = (letters: string, piece: string): readonly JournalEvent[] =>
  [
    repetition('c', noon, { rung: 120 }),
    secure(noon + 1),
    ...[...letters].flatMap((letter, i) =>
      letter === 'c' || letter === 'f' || letter === 'b'
        ? [repetition(letter, noon + (i + 1) * day, { rung: 120 })]
        : [],
    ),
  ].map((event) => ({ ...event, piece: pieceId(piece) }) as JournalEvent)

const review = (events: readonly JournalEvent[]) =>
  reviewChunksOfAll(sumDays(events, (ms) => dayAt(ms, 0)).flatMap(({ chunks }) => chunks))

test('what is said of all pieces is the sum of what is said of each, also of chunks of one name', () => {
  const { states, cold, pieces } = review([...life('cf', 'p1'), ...life('cbc', 'p2')])
  expect(states).toEqual({ practised: 0, secure: 0, kept: 1, slipped: 1 })
  expect(cold).toMatchObject({ checks: 5, held: 3, failed: 1, brokenOff: 1 })
  expect(pieces.map(({ cold: of }) => [of.held, of.failed, of.brokenOff])).toEqual([
    [1, 1, 0],
    [2, 0, 1],
  ])
})

test('a share of checks is claimed where one came to its end', () => {
  expect(review(life('b', 'p1')).cold.share).toBeUndefined()
  expect(review(life('cc', 'p1')).cold.share?.value).toBe(1)
  expect(countChecks([])).toEqual({ checks: 0, held: 0, failed: 0, brokenOff: 0 })
})
