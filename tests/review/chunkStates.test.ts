import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayAt } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { chunkStates, coldChecks } from '@/review/chunkStates'
import { chunkId } from '@/music/units'
import { drillBegun, midnight, repetition, secure } from './session'

const dayOf = (epochMs: number) => dayAt(epochMs, 0)
const secondsADay = 86_400

/**
 * Days between bars, each from noon on. c clean, f flawed, b broken off, at rung 120; sc, sf the same at
 * a slower rung. ! the streak goal met at the goal tempo.
 */
const practise = (text: string, chunk = 'a', goal = 120): JournalEvent[] =>
  text.split('|').flatMap((words, day) =>
    words
      .trim()
      .split(' ')
      .filter((word) => word !== '')
      .flatMap((word, i): JournalEvent[] => {
        const seconds = day * secondsADay + 12 * 3600 + i * 10
        if (word === '!') return [secure(seconds, chunk)]
        const rung = word.startsWith('s') ? 72 : 120
        const verdict = word.slice(-1) as 'c' | 'f' | 'b'
        const begun = i === 0 ? [drillBegun(seconds - 1, chunk, goal)] : []
        return [...begun, repetition(verdict, seconds, { chunk, rung })]
      }),
  )

const stateAfter = (text: string, goal = 120): string =>
  chunkStates(practise(text, 'a', goal), dayOf).get(chunkId('a')) ?? 'untouched'

const checksIn = (text: string): string =>
  coldChecks(practise(text), dayOf)
    .map(({ day, daysSince, verdict, before, after }) =>
      [day.slice(-2), `+${daysSince}`, verdict, before, after].join(' '),
    )
    .join(', ')

describe('the state of a chunk', () => {
  test.each([
    ['never played', '', 'untouched'],
    ['played', 'c', 'practised'],
    ['broken off is played too', 'b', 'practised'],
    ['the streak goal met at the goal tempo', 'c c !', 'secure'],
    ['more playing that day does not make it less', 'c c ! f f', 'secure'],
    ['nothing on the days after', 'c ! | |', 'secure'],
    ['clean cold on a later day', 'c ! | c', 'kept'],
    ['clean cold, then flawed on the same day', 'c ! | c f f', 'kept'],
    ['a warm clean one confirms nothing', 'c ! | sc c', 'secure'],
    ['flawed cold before it was ever kept', 'c ! | f', 'practised'],
    ['and made secure again the same day', 'c ! | f c c !', 'secure'],
    ['kept, then flawed cold', 'c ! | c | f', 'slipped'],
    ['slipped, flawed again', 'c ! | c | f | f', 'slipped'],
    ['slipped, and clean cold on a later day', 'c ! | c | f | c', 'kept'],
    ['slipped, and made secure the same day', 'c ! | c | f c !', 'secure'],
    ['kept stays kept when it is made secure again', 'c ! | c c !', 'kept'],
    ['broken off says neither', 'c ! | b', 'secure'],
    ['broken off, then clean: no longer cold', 'c ! | b c', 'secure'],
    ['kept, and broken off', 'c ! | c | b', 'kept'],
    ['a slow one asks for nothing, even flawed', 'c ! | c | sf', 'kept'],
    ['clean on many days without the streak', 'c | c | c', 'practised'],
  ])('%s: %s', (_, text, state) => {
    expect(stateAfter(text)).toBe(state)
  })

  test('a lower goal tempo is tempo enough', () => {
    expect(stateAfter('c ! | sc', 120)).toBe('secure')
    expect(stateAfter('c ! | sc', 72)).toBe('kept')
  })

  test('half past midnight belongs to the evening: no later day yet', () => {
    const late = 23 * 3600
    const evening = [repetition('c', late), secure(late + 1)]
    const after = repetition('c', 24 * 3600 + 1800, { rung: 120 })
    const next = repetition('c', 24 * 3600 + 5 * 3600, { rung: 120 })
    const state = (...more: JournalEvent[]) =>
      chunkStates([...evening, ...more], dayOf).get(chunkId('a'))
    expect(state(after)).toBe('secure')
    expect(state(next)).toBe('kept')
    expect(state(after, next)).toBe('kept')
  })

  test('each chunk has its own', () => {
    const states = chunkStates([...practise('c ! | c', 'a'), ...practise('f | c', 'b')], dayOf)
    expect([states.get(chunkId('a')), states.get(chunkId('b'))]).toEqual(['kept', 'practised'])
  })
})

describe('cold checks', () => {
  test.each([
    ['none before it is secure', 'c | c | f', ''],
    ['none on the same day', 'c ! f', ''],
    [
      'the first of each later day at tempo',
      'c ! | c f | | c | sc | f | f | c',
      '02 +1 clean secure kept, 04 +2 clean kept kept, 06 +2 flawed kept slipped, 07 +1 flawed slipped slipped, 08 +1 clean slipped kept',
    ],
    ['one that failed before it was kept', 'c ! | | f', '03 +2 flawed secure practised'],
    [
      'a broken-off one is told and decides nothing',
      'c ! | b | c',
      '02 +1 brokenOff secure secure, 03 +2 clean secure kept',
    ],
  ])('%s', (_, text, checks) => {
    expect(checksIn(text)).toBe(checks)
  })
})

/** Some days, each a few repetitions and perhaps a streak. */
const anyDays = fc
  .array(fc.array(fc.constantFrom('c', 'c', 'f', 'b', 'sc', 'sf', '!'), { maxLength: 6 }), {
    maxLength: 8,
  })
  .map((days) => days.map((words) => words.join(' ')).join(' | '))

test('kept only after secure on an earlier day; slipped only after kept; a check only at tempo', () => {
  fc.assert(
    fc.property(anyDays, (text) => {
      const days = text.split('|').map((day) => day.trim())
      const secureBefore = (day: number) => days.slice(0, day).some((words) => words.includes('!'))
      const checks = coldChecks(practise(text), dayOf)
      for (const { day, before, after, rung } of checks) {
        expect(secureBefore(Number(day.slice(-2)) - 1)).toBe(true)
        expect(rung).toBe(120)
        if (after === 'slipped') expect(['kept', 'slipped']).toContain(before)
      }
      if (stateAfter(text) === 'kept') expect(checks.at(-1)?.after).toBe('kept')
    }),
  )
})

test('the order in which events are read does not matter', () => {
  const events = practise('c c ! | c | f f | c ! | c')
  fc.assert(
    fc.property(fc.shuffledSubarray(events, { minLength: events.length }), (shuffled) => {
      expect(chunkStates(shuffled, dayOf)).toEqual(chunkStates(events, dayOf))
      expect(coldChecks(shuffled, dayOf)).toEqual(coldChecks(events, dayOf))
    }),
  )
})

test('the days begin where they should in these tests', () => {
  expect(dayOf(midnight + 12 * 3_600_000)).toBe('2026-01-01')
})
