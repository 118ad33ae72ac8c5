import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { idsOfBlock, packBlock, summedEvents, unpackBlock } from '@/journal/block'
import { dayAt } from '@/journal/day'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { isPlayed, sumDays } from '@/journal/sumDays'
import { anyEvent } from '../support/anyEvent'

const anyJournal = fc.array(anyEvent, { maxLength: 40 }).map((events) => mergeJournals(events))
const dayOf = (epochMs: number) => dayAt(epochMs, 0)
/** JSON has no negative zero, and the journal none either. */
const plain = (events: readonly JournalEvent[]): unknown => JSON.parse(JSON.stringify(events))

describe('a packed block', () => {
  test('gives any events back whole', () => {
    fc.assert(
      fc.property(anyJournal, (events) => {
        const unpacked = unpackBlock(structuredClone(packBlock(events.toReversed())))
        expect(unpacked).toEqual({ ok: true, value: plain(events) })
      }),
    )
  })

  test('sums up to what its events sum up to', () => {
    fc.assert(
      fc.property(anyJournal, (events) => {
        const summed = summedEvents(structuredClone(packBlock(events)))
        expect(summed.ok && sumDays(summed.value, dayOf)).toEqual(
          sumDays(plain(events) as readonly JournalEvent[], dayOf),
        )
      }),
    )
  })

  test('of version 2 sums up to the same, one of a newer version is not taken apart', () => {
    fc.assert(
      fc.property(anyJournal, (events) => {
        const practised = events.filter(isPlayed)
        const older = (text: string): string => text.replaceAll(/"v":\d+/g, '"v":2')
        const block = packBlock(practised)
        const summed = summedEvents({ ...block, v: 2, others: older(block.others) })
        expect(summed.ok && sumDays(summed.value, dayOf)).toEqual(sumDays(practised, dayOf))
        const newer = summedEvents({ ...block, v: journalVersion + 1 })
        expect(newer.ok).toBe(practised.every(({ kind }) => kind !== 'repetition'))
      }),
    )
  })

  test('names all ids, the first and the last moment, and each piece once', () => {
    fc.assert(
      fc.property(anyJournal, (events) => {
        const block = packBlock(events)
        expect(new Set(idsOfBlock(block))).toEqual(new Set(events.map(({ id }) => id)))
        expect([block.from, block.to]).toEqual([
          events[0]?.atEpochMs ?? 0,
          events.at(-1)?.atEpochMs ?? 0,
        ])
        const pieces = events.flatMap((event) => ('piece' in event ? [event.piece] : []))
        expect(block.pieces.toSorted()).toEqual([...new Set(pieces)].toSorted())
      }),
    )
  })
})

describe('a damaged block', () => {
  const block = packBlock(fc.sample(anyEvent, { numRuns: 120, seed: 3 }))
  test.each([
    ['is no object', undefined],
    ['lost a column', { ...block, rung: undefined }],
    ['lost a number', { ...block, took: block.took.slice(1) }],
    ['has its JSON cut short', { ...block, rest: block.rest.slice(0, -5) }],
    ['has ids that are none', { ...block, ids: '{}' }],
    ['lost an event', { ...block, others: '[]' }],
    ['has a tempo that is none', { ...block, rung: block.rung.map(() => Number.NaN) }],
    ['has flaws that are none', { ...block, flaws: block.flaws.replaceAll('"kind"', '"find"') }],
  ])('that %s is told, and never thrown', (_, damaged) => {
    const unpacked = unpackBlock(damaged)
    expect(unpacked.ok ? 'read' : unpacked.reason.kind).toBe('wrongShape')
  })
})
