import { expect, test } from 'vitest'
import { paceOf } from '@/app/pieceRecord'
import { usualPace } from '@/exercises/estimate'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { journalVersion, type RepetitionRecorded } from '@/journal/journal'
import { chunkId, pieceId, tempo } from '@/music/units'

/** Repetitions of two seconds, one after another, with so many seconds between. */
const played = (verdicts: string, pause: number, drill = 'd1'): readonly RepetitionRecorded[] =>
  [...verdicts].map((letter, i) => ({
    v: journalVersion,
    kind: 'repetition',
    id: eventId(`${drill}-${i}`),
    session: sessionId('s1'),
    atEpochMs: 2_000 + i * (2_000 + pause * 1000),
    drill: drillId(drill),
    piece: pieceId('p1'),
    chunk: chunkId('c1'),
    rung: tempo(60),
    standard: 'flow',
    forgiveBrushed: false,
    verdict: letter === 'c' ? 'clean' : letter === 'f' ? 'flawed' : 'brokenOff',
    tookMs: 2_000,
    flaws: [],
    figures: {},
    take: '',
  }))

test('a few repetitions say little: the usual pace counts', () => {
  expect(paceOf(played('ccf', 5))).toEqual(usualPace)
})

test('the pace is the person’s own clean share and the usual pause between repetitions', () => {
  const pace = paceOf(played('cccfcccfcccfcccfcccfcccf', 4))
  expect(pace.cleanShare).toBeCloseTo(0.75, 9)
  expect(pace.pauseSeconds).toBeCloseTo(4, 9)
})

test('broken off repetitions are no part of the share, and rests are no pauses', () => {
  const pace = paceOf([...played('c'.repeat(30) + 'b'.repeat(10), 600)])
  expect(pace.cleanShare).toBe(1)
  expect(pace.pauseSeconds).toBe(usualPace.pauseSeconds)
})

test('who hardly plays anything clean gets an estimate all the same', () => {
  expect(paceOf(played('f'.repeat(40), 2)).cleanShare).toBe(0.4)
})
