import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent, type NotebookWritten } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { decisionsOf, notebookOf } from '@/journal/notebook'
import { standing } from '@/journal/written'
import { pieceId } from '@/music/units'
import { anyEvent } from '../support/anyEvent'

/** 'b>a' is b, which replaces a; '-b' erases b. Each comes a second after the one before. */
const journal = (words: string): readonly JournalEvent[] =>
  words.split(' ').map((word, i) => {
    const stamp = { v: journalVersion, session: sessionId('s1'), atEpochMs: i * 1000 } as const
    const piece = pieceId('p1')
    if (word.startsWith('-')) {
      const replaces = eventId(word.slice(1))
      return { ...stamp, id: eventId(word), kind: 'notebookErased', piece, replaces }
    }
    const [id = '', replaces] = word.split('>')
    return {
      ...stamp,
      id: eventId(id),
      kind: 'notebookWritten',
      piece,
      subject: 'idea',
      text: id,
      ...(replaces === undefined ? {} : { replaces: eventId(replaces) }),
    }
  })

const texts = (entries: readonly NotebookWritten[]): string =>
  entries.map(({ text }) => text).join(' ')

describe('the notebook', () => {
  test.each([
    ['a b c', 'a b c', 'has what was written, in the order of time'],
    ['a b>a', 'b', 'has the changed entry only'],
    ['a b>a c>b', 'c', 'has the last of several changes'],
    ['a b -a', 'b', 'has not what was erased'],
    ['a b>a -a', 'b', 'keeps the change where the entry before it was erased elsewhere'],
    ['a b>a c>a', 'b c', 'keeps both where two machines changed one entry'],
    ['b>a', 'b', 'has a change whose first writing is not here'],
  ])('of %s: %s; it %s', (words, expected) => {
    expect(texts(notebookOf(journal(words)))).toBe(expected)
  })

  test('is the same from parts merged in any order, any number of times', () => {
    const parts = fc.array(fc.array(anyEvent, { maxLength: 20 }), { minLength: 2, maxLength: 4 })
    fc.assert(
      fc.property(parts, ([first = [], ...others]) => {
        const whole = mergeJournals(first, ...others)
        const other = mergeJournals(...others.toReversed(), first, ...others)
        expect(notebookOf(other)).toEqual(notebookOf(whole))
        expect(decisionsOf(other)).toEqual(decisionsOf(whole))
      }),
    )
  })

  test('whatever is written stands, unless something names it', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 30 }), (all) => {
        const events = mergeJournals(all)
        const named = new Set(events.map((e) => ('replaces' in e ? e.replaces : undefined)))
        const stand = new Set(standing(events))
        for (const event of events) expect(stand.has(event)).toBe(!named.has(event.id))
      }),
    )
  })
})

describe('a decision on a piece', () => {
  const decided = (id: string, decision: 'finished' | 'takenUp', at: number): JournalEvent => ({
    v: journalVersion,
    id: eventId(id),
    session: sessionId('s1'),
    atEpochMs: at,
    kind: 'pieceDecided',
    piece: pieceId('p1'),
    decision,
  })

  test('holds until the next', () => {
    const finished = decided('a', 'finished', 1)
    const again = decided('b', 'takenUp', 2)
    expect(decisionsOf([finished]).get(pieceId('p1'))).toBe('finished')
    expect(decisionsOf([again, finished]).get(pieceId('p1'))).toBe('takenUp')
    expect(decisionsOf([finished]).get(pieceId('p2'))).toBeUndefined()
  })
})
