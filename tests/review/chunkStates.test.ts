import { expect, test } from 'vitest'
import type { JournalEvent } from '@/journal/journal'
import { eventId } from '@/journal/ids'
import { chunkStates } from '@/review/chunkStates'
import { chunkId } from '@/music/units'
import { repetition } from './session'

/** 'a1 b2': repetitions of chunks; 'a!' : the streak goal met at the goal tempo. */
const events = (text: string): JournalEvent[] =>
  text.split(' ').map((word, i): JournalEvent => {
    const played = repetition('f', i, { chunk: word.charAt(0) })
    if (!word.endsWith('!')) return played
    const { v, session, atEpochMs, drill, piece, chunk, rung } = played
    return {
      v,
      kind: 'secure',
      id: eventId(`s${i}`),
      session,
      atEpochMs,
      drill,
      piece,
      chunk,
      rung,
    }
  })

test.each([
  ['a', 'practised', undefined],
  ['a b', 'practised', 'practised'],
  ['a a! b', 'secure', 'practised'],
  // More playing does not make it less secure.
  ['a a! a', 'secure', undefined],
] as const)('%s: chunk a is %s, chunk b %s', (text, a, b) => {
  const states = chunkStates(events(text))
  expect(states.get(chunkId('a'))).toBe(a)
  expect(states.get(chunkId('b'))).toBe(b)
})
