import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fingeringsOf, type PieceFingerings } from '@/journal/fingerings'
import { eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { formatFingers } from '@/music/fingers'
import { pieceId } from '@/music/units'
import { anyEvent } from '../support/anyEvent'

const piece = pieceId('p1')

/**
 * 'a' begins version a; 'a=c1,d32' writes 1 on note c and 3, then 2, on d; 'c' with no digit takes it
 * away; 'a!' chooses it, '!' the file's; '-a' erases it. Each comes a second after the one before.
 */
const journal = (words: string): readonly JournalEvent[] =>
  words.split(' ').map((word, i): JournalEvent => {
    const stamp = { v: journalVersion, session: sessionId('s1'), atEpochMs: i * 1000, piece }
    const id = eventId(`e${i}`)
    if (word === '!') return { ...stamp, v: journalVersion, id, kind: 'fingeringChosen' }
    const version = eventId(word.replace(/[!-]/g, '').split('=')[0] ?? '')
    if (word.startsWith('-'))
      return { ...stamp, v: journalVersion, id, kind: 'fingeringErased', fingering: version }
    if (word.endsWith('!'))
      return { ...stamp, v: journalVersion, id, kind: 'fingeringChosen', fingering: version }
    const digits = word.split('=')[1]
    if (digits === undefined)
      return { ...stamp, v: journalVersion, id: version, kind: 'fingeringWritten', name: version }
    return {
      ...stamp,
      v: journalVersion,
      id,
      kind: 'fingeringWritten',
      fingering: version,
      fingers: Object.fromEntries(digits.split(',').map((each) => [each[0] ?? '', each.slice(1)])),
    }
  })

/** 'a!: c1 d32; b:' */
const describe = ({ versions, chosen }: PieceFingerings = { versions: [] }): string =>
  versions
    .map(({ id, fingers }) => {
      const digits = [...fingers].map(([note, own]) => ` ${note}${formatFingers(own)}`).join('')
      return `${id}${id === chosen ? '!' : ''}:${digits}`
    })
    .join('; ')
const standing = (events: readonly JournalEvent[]): string =>
  describe(fingeringsOf(events).get(piece))

test.each([
  ['a', 'a:', 'a version that is begun has no digits'],
  ['a a=c1,d32', 'a: c1 d32', 'digits stand note by note'],
  ['a a=c1 a=c2', 'a: c2', 'the newest digit of a note holds'],
  ['a a=c1,d2 a=c', 'a: d2', 'a digit is taken away'],
  ['a b a! b!', 'a:; b!:', 'the version chosen last is shown'],
  ['a a! !', 'a:', 'the digits of the file are chosen'],
  ['a b a! -a', 'b:', 'an erased version is gone, and nothing is chosen'],
  ['a -a a=c1', '', 'what was erased stays so, whatever was written elsewhere'],
])('of %s: %s; %s', (words, expected) => {
  expect(standing(journal(words))).toBe(expected)
})

test('two machines that change different notes of one version agree', () => {
  const shared = journal('a a=c1')
  const here = journal('a a=c1 a=d2')
  const there = journal('a a=c1 a=e3').map((event, i) =>
    i === 2 ? { ...event, id: eventId('there'), atEpochMs: 2500 } : event,
  )
  expect(standing(mergeJournals(shared, there, here))).toBe('a: c1 d2 e3')
})

test('fingerings are the same from parts merged in any order, any number of times', () => {
  const parts = fc.array(fc.array(anyEvent, { maxLength: 20 }), { minLength: 2, maxLength: 4 })
  fc.assert(
    fc.property(parts, ([first = [], ...others]) => {
      const whole = mergeJournals(first, ...others)
      expect(fingeringsOf(mergeJournals(...others.toReversed(), first, ...others))).toEqual(
        fingeringsOf(whole),
      )
    }),
  )
})
