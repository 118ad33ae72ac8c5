import fc from 'fast-check'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parseJournal } from '@/journal/lines'
import { formatKey } from '@/music/pitch'
import { reviewEvents } from '@/review/review'
import { drillBegun, pieceAdded, repetition, repetitions, rungChanged, secure } from './session'

describe('the tally', () => {
  test.each([
    ['', 0, 0, 0, undefined, 0],
    ['c', 1, 0, 0, 1, 1],
    ['f', 0, 1, 0, 0, 0],
    ['b', 0, 0, 1, undefined, 0],
    ['ccccff', 4, 2, 0, 4 / 6, 4],
    ['ccfcccbcc', 7, 1, 1, 7 / 8, 3],
    ['bbbbc', 1, 0, 4, 1, 1],
  ])(
    '%s: %i clean, %i flawed, %i broken off, clean share %s, longest streak %i',
    (letters, clean, flawed, brokenOff, share, streak) => {
      const review = reviewEvents(repetitions(letters))
      expect(review.tally).toEqual({ clean, flawed, brokenOff })
      expect(review.cleanShare).toBe(share)
      expect(review.longestStreak).toBe(streak)
      expect(review.repetitions).toBe(letters.length)
    },
  )

  test('a streak does not reach from one chunk into another', () => {
    const events = [repetition('c', 10), repetition('c', 20, { chunk: 'b' }), repetition('c', 30)]
    expect(reviewEvents(events).longestStreak).toBe(2)
  })

  test('a streak goes on through another chunk between', () => {
    expect(
      reviewEvents([...repetitions('cc'), repetition('f', 15, { chunk: 'b' })]).longestStreak,
    ).toBe(2)
  })
})

describe('the minutes', () => {
  test.each<[string, readonly number[], number]>([
    ['one repetition of two seconds', [100], 2 / 60],
    ['from the first key to the last verdict', [100, 110, 158], 1],
    ['pauses to look count', [100, 398], 5],
    ['five minutes away do not', [100, 158, 458, 516], 2],
  ])('%s', (_, seconds, minutes) => {
    expect(reviewEvents(seconds.map((at) => repetition('c', at))).minutes).toBeCloseTo(minutes, 10)
  })
})

describe('each chunk', () => {
  const session = [
    pieceAdded('Morning Steps'),
    drillBegun(5),
    ...repetitions('cccccfc'),
    rungChanged(50.5, 72, 76),
    repetition('c', 90, { chunk: 'b', rung: 60 }),
    secure(70.5),
  ]

  test('has its place, title, rungs from and to, and whether it is secure', () => {
    const [a, b] = reviewEvents(session).chunks
    expect(a).toMatchObject({
      chunk: 'a',
      title: 'Morning Steps',
      place: { fromBar: 1 },
      goalTempo: 120,
      tally: { clean: 6, flawed: 1, brokenOff: 0 },
      longestStreak: 5,
      fromRung: 72,
      secure: true,
    })
    expect(b).toMatchObject({ chunk: 'b', fromRung: 60, toRung: 60, secure: false })
  })

  test.each([
    ['no change', [repetition('c', 10)], 72],
    ['up after the last repetition', [repetition('c', 10), rungChanged(11, 72, 76)], 76],
    [
      'up and down again',
      [repetition('c', 10), rungChanged(11, 72, 76), rungChanged(30, 76, 72)],
      72,
    ],
    ['another chunk went up', [repetition('c', 10), rungChanged(11, 60, 63, 'b')], 72],
  ])('the rung reached: %s', (_, events, rung) => {
    expect(reviewEvents(events).chunks[0]?.toRung).toBe(rung)
  })
})

describe('the flaws', () => {
  const session = [
    repetition('f', 10, { flaws: ['wrong 2 D4 D#4', 'hesitation 3 E4'] }),
    repetition('f', 20, { flaws: ['wrong 2 D4 D#4', 'extra 0 - C5 forgiven'] }),
    repetition('f', 30, { flaws: ['wrong 2 D4 C4', 'missing 2 F4'] }),
    repetition('b', 40, { flaws: ['wrong 1 C4 B3'] }),
    repetition('f', 50, { chunk: 'b', flaws: ['wrong 2 D4 D#4'] }),
  ]

  test('are counted by chunk, place, kind and written note, the most frequent first', () => {
    const counts = reviewEvents(session).flaws.map(
      ({ chunk, kind, onset, written, times }) =>
        `${chunk} ${kind} ${onset} ${written === undefined ? '-' : formatKey(written)} x${times}`,
    )
    expect(counts).toEqual([
      'a wrong 2 D4 x3',
      'a wrong 1 C4 x1',
      'a missing 2 F4 x1',
      'b wrong 2 D4 x1',
      'a hesitation 3 E4 x1',
    ])
  })

  test('name the notes of the score', () => {
    expect(reviewEvents(session).flaws[0]?.notes).toEqual(['n2D4'])
  })

  test('give which key was played for which, over all chunks', () => {
    const pairs = reviewEvents(session).substitutions.map(
      ({ written, played, times }) => `${formatKey(played)} for ${formatKey(written)} x${times}`,
    )
    expect(pairs).toEqual(['D#4 for D4 x3', 'B3 for C4 x1', 'C4 for D4 x1'])
  })
})

test('the figures do not depend on the order of the events', () => {
  const session = [
    drillBegun(5),
    ...repetitions('ccfcbcccc'),
    rungChanged(60, 72, 69),
    repetition('f', 61, { flaws: ['wrong 2 D4 D#4'] }),
  ]
  fc.assert(
    fc.property(fc.shuffledSubarray(session, { minLength: session.length }), (shuffled) => {
      expect(reviewEvents(shuffled)).toEqual(reviewEvents(session))
    }),
  )
})

test('the frozen journal of version 1 gives one clean, one flawed, from 72 to 76, secure', () => {
  const text = readFileSync(new URL('../journals/v1.jsonl', import.meta.url), 'utf8')
  const review = reviewEvents(parseJournal(text).events)
  expect(review.tally).toEqual({ clean: 1, flawed: 1, brokenOff: 0 })
  expect(review.chunks[0]).toMatchObject({ fromRung: 72, toRung: 76, secure: true })
})
