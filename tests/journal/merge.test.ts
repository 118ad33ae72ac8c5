import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatJournal, parseJournal } from '@/journal/lines'
import { mergeJournals } from '@/journal/merge'
import { anyEvent } from '../support/anyEvent'

const journals = fc.array(fc.array(anyEvent, { maxLength: 15 }), { maxLength: 5 })

describe('a journal as lines', () => {
  test('any journal comes back, one line an event', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 20 }), (events) => {
        const text = formatJournal(events)
        expect(text.split('\n')).toHaveLength(events.length + 1)
        expect(formatJournal(parseJournal(text).events)).toBe(text)
      }),
    )
  })

  const line = '{"v":3,"id":"e1","session":"s1","atEpochMs":1,"kind":"sessionBegun"}'

  test('a byte order mark, empty lines and the line ends of Windows are passed over', () => {
    const { events, unread } = parseJournal(`\uFEFF${line}\r\n\r\n`)
    expect([events.length, unread.length]).toEqual([1, 0])
  })

  test('a line that cannot be read is kept and named, the others are read', () => {
    const { events, unread } = parseJournal(`${line}\n{"v":1,"id"\n{"v":9}\n${line}`)
    expect(events).toHaveLength(2)
    expect(unread.map(({ line, text, reason }) => [line, text, reason.kind])).toEqual([
      [2, '{"v":1,"id"', 'notJson'],
      [3, '{"v":9}', 'newerVersion'],
    ])
  })

  test('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        expect(parseJournal(text).events).toEqual([])
      }),
    )
  })
})

describe('the union of journals', () => {
  test('is the same in any order and any number of times', () => {
    const shuffled = journals.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
    )
    fc.assert(
      fc.property(shuffled, ([all, another]) => {
        const union = mergeJournals(...all)
        expect(mergeJournals(...another)).toEqual(union)
        expect(mergeJournals(union, ...another, union)).toEqual(union)
      }),
    )
  })

  test('is the same however the journals are grouped', () => {
    fc.assert(
      fc.property(journals, (all) => {
        const oneByOne = all.reduce(
          (union, journal) => mergeJournals(journal, union),
          mergeJournals(),
        )
        expect(oneByOne).toEqual(mergeJournals(...all))
      }),
    )
  })

  test('has each id once, all ids, and goes by time', () => {
    fc.assert(
      fc.property(journals, (all) => {
        const union = mergeJournals(...all)
        const ids = all.flat().map((event) => event.id)
        expect(new Set(union.map((event) => event.id))).toEqual(new Set(ids))
        expect(union).toHaveLength(new Set(ids).size)
        for (const [i, event] of union.entries())
          expect(event.atEpochMs).toBeGreaterThanOrEqual(union[i - 1]?.atEpochMs ?? 0)
      }),
    )
  })
})
