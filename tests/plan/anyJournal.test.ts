import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import { mergeJournals } from '@/journal/merge'
import { planDay } from '@/plan/day'
import { honestWord, sayHonestly } from '@/plan/honest'
import { layOutRecord } from '@/plan/fromRecord'
import { paceFrom } from '@/plan/pace'
import { planPiece } from '@/plan/plan'
import { isBelowFloor, recordOf } from '@/plan/record'
import { spanOf } from '@/plan/span'
import { anyEvent } from '../support/anyEvent'
import { layoutOf, pieceOf } from './pieces'
import { dayNumber } from './practise'

const notes = layoutOf(pieceOf(2))
const dayOf = (epochMs: number) => dayAt(epochMs, 0)

test('whatever stands in a journal, there is a plan, the same whatever the order of the events', () => {
  fc.assert(
    fc.property(
      fc.array(anyEvent, { maxLength: 40 }),
      fc.integer({ min: 5, max: 240 }),
      fc.integer({ min: 0, max: 40_000 }),
      (events, minutes, days) => {
        const plan = (all: typeof events) => {
          const record = recordOf(mergeJournals(all), dayOf)
          const layouts = [notes, ...layOutRecord(record)]
          const pace = paceFrom(record, layouts)
          const pieces = layouts.map((layout) => planPiece(layout, record, pace))
          const day = dayNumber(days - 20_000)
          const { weeks } = spanOf(planPiece(notes, record, pace), record, pace, day, {
            minutesPerDay: minutes,
          })
          return {
            today: planDay({ day, minutes, seed: 1, pieces, lowered: isBelowFloor(record) }),
            weeks,
            words: pieces.map((piece) => sayHonestly(honestWord(piece, pieces))),
          }
        }
        const { today, weeks, words } = plan(events)
        expect(today.minutes).toBeGreaterThan(0.9 * minutes)
        expect(today.minutes).toBeLessThan(1.1 * minutes)
        for (const item of today.items) expect(item.minutes).toBeGreaterThan(0)
        expect(weeks.low).toBeGreaterThanOrEqual(0)
        expect(weeks.low).toBeLessThanOrEqual(weeks.value)
        expect(weeks.high).toBeLessThan(Infinity)
        for (const word of words) expect(word).not.toMatch(/NaN|Infinity|undefined/)
        expect(plan(events.toReversed())).toEqual({ today, weeks, words })
      },
    ),
    { numRuns: 100 },
  )
})
