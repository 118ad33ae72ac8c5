import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  beginCoach,
  coachRepetition,
  stepCoach,
  type Coach,
  type CoachEvent,
  type CoachSettings,
} from '@/coach/coach'
import { eventId, drillId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { recordPlace, recordRepetition } from '@/journal/record'
import { coachEventsOf, latestDrill } from '@/journal/replay'
import type { Repetition, Verdict } from '@/judge/repetition'
import type { Chunk } from '@/music/chunk'
import { chunkId, key, ms, noteId, pieceId, tempo, tick, type Ms } from '@/music/units'

const drill = drillId('d1')
const settings = {
  goalTempo: tempo(120),
  startTempo: tempo(72),
  ladder: { kind: 'classic' },
} as const
/** The wall clock when the clock of the key events stood at zero. */
const clockStart = 1_700_000_000_000

const chunk: Chunk = {
  id: chunkId('p1:3_2-5_2:right'),
  piece: pieceId('p1'),
  hand: 'right',
  ticksPerQuarter: 480,
  start: tick(720),
  end: tick(1440),
  barOffset: tick(720),
  barLength: tick(1440),
  onsets: [0, 240, 480].map((start, i) => ({
    start: tick(start),
    notes: [
      {
        ids: [noteId(`n${i}`)],
        key: key(60 + i),
        start: tick(start),
        length: tick(240),
        hand: 'right',
      },
    ],
    auxiliaries: [],
    rolled: false,
  })),
}

const played = (number: number, verdict: Verdict, onset: number, start: Ms): Repetition => {
  const expected = chunk.onsets[onset]?.notes[0]
  return {
    number,
    start,
    lastOnset: ms(start + 800),
    verdict,
    flaws:
      verdict === 'flawed' && expected
        ? [
            {
              kind: 'wrong',
              onset,
              expected,
              played: { index: onset, key: key(70), at: ms(start + 250.06), velocity: 60 },
            },
          ]
        : [],
    marks: [],
    figures: { tempo: tempo(71.23456), gapCv: Number.NaN },
  }
}

test('a repetition is recorded compactly: flaws, figures, take', () => {
  const stamp = { id: eventId('e1'), session: sessionId('s1'), atEpochMs: clockStart }
  const context = {
    drill,
    chunk,
    rung: tempo(72),
    standard: 'flow',
    forgiveBrushed: false,
    verdictAt: ms(2_000),
  } as const
  const event = recordRepetition(stamp, context, played(0, 'flawed', 1, ms(1_000)), { events: [] })
  expect([event.kind, event.piece, event.chunk, event.tookMs]).toEqual([
    'repetition',
    'p1',
    chunk.id,
    1_000,
  ])
  expect(event.flaws).toEqual([
    {
      kind: 'wrong',
      onset: 1,
      notes: ['n1'],
      written: 61,
      played: 70,
      playedMs: 250.1,
      velocity: 60,
    },
  ])
  expect(event.figures).toEqual({ tempo: 71.23 })
})

test('a place is the first and the last onset in quarters', () => {
  expect(recordPlace(chunk, 1, 2)).toEqual({
    from: '3_2',
    to: '5_2',
    fromBar: 1,
    toBar: 2,
    hand: 'right',
  })
})

const persons: Readonly<Record<string, 'raise' | 'lower' | 'undo'>> = {
  '+': 'raise',
  '-': 'lower',
  u: 'undo',
}

/** Drills live and records as it goes. c clean, f flawed at onset 0 to 2, b broken off, + - u g. */
const practise = (letters: readonly string[], pace: number, from: CoachSettings = settings) => {
  let coach = beginCoach(from)
  const journal: JournalEvent[] = []
  const stamp = (at: number) => ({
    v: journalVersion,
    id: eventId(`e${(journal.length * 7919) % 1000}`),
    session: sessionId('s1'),
    atEpochMs: clockStart + at,
  })
  const where = { drill, piece: chunk.piece, chunk: chunk.id }
  const hear = (event: CoachEvent): void => {
    const [next, commands] = stepCoach(coach, event)
    coach = next
    for (const command of commands) {
      if (command.kind === 'overruled')
        journal.push({ ...stamp(command.at), kind: 'overruled', ...where, what: command.what })
      if (command.kind === 'secure')
        journal.push({ ...stamp(event.at), kind: 'secure', ...where, rung: command.rung })
    }
  }
  for (const [i, letter] of letters.entries()) {
    const at = ms((i + 1) * pace)
    const verdict = ({ c: 'clean', f: 'flawed', b: 'brokenOff' } as const)[letter]
    if (verdict === undefined) {
      hear({ kind: persons[letter] ?? 'goOn', at })
      continue
    }
    const repetition = played(i, verdict, i % 3, ms(at - 900))
    const context = {
      drill,
      chunk,
      rung: coach.rung,
      standard: 'flow',
      forgiveBrushed: false,
      verdictAt: at,
    } as const
    hear(coachRepetition(repetition, at))
    journal.push(recordRepetition(stamp(at), context, repetition, { events: [] }))
  }
  return { coach, journal }
}

const rebuild = (journal: readonly JournalEvent[], from: CoachSettings = settings): Coach =>
  coachEventsOf(journal, drill, clockStart).reduce(
    (coach, event) => stepCoach(coach, event)[0],
    beginCoach(from),
  )

test('the coach rebuilt from the journal, in whatever order it is read, stands where the live one stood', () => {
  const letters = fc.array(fc.constantFrom('c', 'c', 'c', 'f', 'f', 'b', '+', '-'), {
    maxLength: 60,
  })
  fc.assert(
    fc.property(letters, fc.constantFrom(2_000, 10_000), (sequence, pace) => {
      const { coach, journal } = practise(sequence, pace)
      const again = rebuild(journal.toReversed())
      expect([again.rung, again.streak, again.secure, again.recent, again.sightings]).toEqual([
        coach.rung,
        coach.streak,
        coach.secure,
        coach.recent,
        coach.sightings,
      ])
      expect(again.paused?.reason).toEqual(coach.paused?.reason)
    }),
  )
})

test('a trial, and what was taken back, are rebuilt too', () => {
  const letters = fc.array(fc.constantFrom('c', 'c', 'c', 'f', 'b', '+', '-', 'u'), {
    maxLength: 60,
  })
  fc.assert(
    fc.property(letters, fc.boolean(), (sequence, trial) => {
      const from = { ...settings, trial }
      const { coach, journal } = practise(sequence, 10_000, from)
      const again = rebuild(journal.toReversed(), from)
      expect([again.rung, again.streak, again.secure, again.trial, again.recent]).toEqual([
        coach.rung,
        coach.streak,
        coach.secure,
        coach.trial,
        coach.recent,
      ])
    }),
  )
})

test('a solved remedy is rebuilt with the rung that it led back to, and is still watched', () => {
  const { coach, journal } = practise(['f', 'b', 'b', 'f'], 10_000)
  expect(coach.paused?.reason.kind).toBe('sameFlaw')
  const entry = (id: string, at: number) => ({
    v: journalVersion,
    id: eventId(id),
    session: sessionId('s1'),
    atEpochMs: clockStart + at,
    drill,
    piece: chunk.piece,
    chunk: chunk.id,
  })
  const flaw = { flaw: 'wrong', onset: 0, written: key(60), played: key(70), times: 2 } as const
  const problem = eventId('p')
  const after: readonly JournalEvent[] = [
    { ...entry('p', 40_000), kind: 'problemNamed', ...flaw, likely: 'unknown' },
    { ...entry('b', 41_000), kind: 'remedyBegun', problem, remedy: 'loop' },
    { ...entry('z', 60_000), kind: 'remedyEnded', problem, outcome: 'solved' },
  ]
  const again = rebuild([...journal, ...after])
  expect([again.rung, again.paused]).toEqual([69, undefined])
  expect(again.watches).toEqual([
    {
      remedy: 'loop',
      problem: { flaw: 'wrong', place: 0, written: 60, played: 70, times: 2 },
      without: 0,
    },
  ])
})

test('the drill to take up again is the one begun last, of this chunk', () => {
  const begun = (id: string, name: string, atEpochMs: number): JournalEvent => ({
    v: journalVersion,
    id: eventId(id),
    session: sessionId('s1'),
    atEpochMs,
    kind: 'drillBegun',
    drill: drillId(id),
    piece: pieceId('p1'),
    chunk: chunkId(name),
    place: { from: '0', to: '1', fromBar: 1, toBar: 1, hand: 'right' },
    form: 'asWritten',
    time: { beats: 4, beatType: 4 },
    streakGoal: 5,
    goalTempo: tempo(120),
    startTempo: tempo(72),
    ladder: 'classic',
    standard: 'flow',
  })
  const journal = [begun('d3', 'b', 3), begun('d1', 'a', 1), begun('d2', 'a', 2)]
  expect(latestDrill(journal)?.drill).toBe('d3')
  expect(latestDrill(journal, chunkId('a'))?.drill).toBe('d2')
  expect(latestDrill(journal, chunkId('c'))).toBeUndefined()
})
