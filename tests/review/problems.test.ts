import { expect, test } from 'vitest'
import { eventId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import { isSolved, triedProblems } from '@/review/problems'
import { drillBegun } from './session'

const {
  place: _place,
  form: _form,
  ...rest
} = drillBegun(2) as Extract<JournalEvent, { kind: 'drillBegun' }>
const { drill, piece, chunk, v, session } = rest
const entry = (n: number) => ({
  v,
  session,
  drill,
  piece,
  chunk,
  id: eventId(`e${n}`),
  atEpochMs: rest.atEpochMs + n,
})
const problem = (n: number): JournalEvent => ({
  ...entry(n),
  kind: 'problemNamed',
  flaw: 'wrong',
  onset: 1,
  times: 2,
  likely: 'unknown',
})
const begun = (n: number, of: number): JournalEvent => ({
  ...entry(n),
  kind: 'remedyBegun',
  problem: eventId(`e${of}`),
  remedy: n % 2 === 0 ? 'loop' : 'oneHand',
})
const ended = (n: number, of: number, outcome: 'solved' | 'leftOff'): JournalEvent => ({
  ...entry(n),
  kind: 'remedyEnded',
  problem: eventId(`e${of}`),
  outcome,
})
const came = (n: number, of: number, helped: boolean): JournalEvent => ({
  ...entry(n),
  kind: 'problemOutcome',
  problem: eventId(`e${of}`),
  helped,
})

test('each remedy has its own outcome; a problem without one is left out', () => {
  const events = [
    drillBegun(2),
    problem(1),
    begun(2, 1),
    ended(3, 1, 'leftOff'),
    begun(5, 1),
    ended(6, 1, 'solved'),
    problem(7),
    came(8, 1, true),
  ]
  expect(triedProblems(events)).toMatchObject([
    {
      problem: { id: 'e1' },
      place: { fromBar: 1 },
      tried: [
        { remedy: 'loop', outcome: 'leftOff' },
        { remedy: 'oneHand', outcome: 'solved', helped: true },
      ],
    },
  ])
})

test('an outcome whose beginning is not here is passed over', () => {
  expect(triedProblems([problem(1), ended(3, 1, 'solved'), came(4, 1, true)])).toEqual([])
})

test.each([
  ['solved, as far as anybody knows', [begun(2, 1), ended(3, 1, 'solved')], true],
  ['solved, and it stayed away', [begun(2, 1), ended(3, 1, 'solved'), came(4, 1, true)], true],
  ['solved, but it came again', [begun(2, 1), ended(3, 1, 'solved'), came(4, 1, false)], false],
  ['left off', [begun(2, 1), ended(3, 1, 'leftOff')], false],
  ['begun', [begun(2, 1)], false],
] as const)('a problem that was %s', (_, events, expected) => {
  expect(triedProblems([drillBegun(1), problem(1), ...events]).map(isSolved)).toEqual([expected])
})
