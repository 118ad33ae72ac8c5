import fc from 'fast-check'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { drillId, eventId, sessionId } from '@/journal/ids'
import { encodeTake } from '@/journal/take'
import {
  fingeringOrigins,
  notebookSubjects,
  pieceDecisions,
  recordedCauses,
  recordedFlawKinds,
  recordedForms,
  recordedOverrules,
  recordedRemedies,
  recordedStandards,
  recordedTempoReasons,
  recordedVerdicts,
  remedyOutcomes,
} from '@/journal/words'
import { pedals, type KeyEvent } from '@/music/keyEvent'
import { chunkId, key, ms, noteId, pieceId, tempo } from '@/music/units'

/** Times in tenths of a millisecond, which a take keeps exactly. */
const moment = fc.integer({ min: 0, max: 36_000_000 }).map((tenths) => ms(tenths / 10))
const anyKey = fc.integer({ min: 0, max: 127 }).map(key)
const anyTempo = fc.double({ min: 1, max: 400, noNaN: true }).map(tempo)
const number = fc.double({ min: -1e6, max: 1e6, noNaN: true })
const text = fc.string({ unit: 'grapheme', maxLength: 12 })

const anyKeyEvent: fc.Arbitrary<KeyEvent> = fc.oneof(
  fc.record({
    kind: fc.constant('down' as const),
    key: anyKey,
    velocity: fc.integer({ min: 1, max: 127 }),
    at: moment,
  }),
  fc.record({ kind: fc.constant('up' as const), key: anyKey, at: moment }),
  fc.record({
    kind: fc.constant('pedal' as const),
    pedal: fc.constantFrom(...pedals),
    value: fc.integer({ min: 0, max: 127 }),
    at: moment,
  }),
)

export const anyTake = fc
  .array(anyKeyEvent, { maxLength: 60 })
  .map((events) => ({ events: events.toSorted((a, b) => a.at - b.at) }))

/** Ids from a small stock, so that merging meets them again. */
const stamp = {
  v: fc.constant(journalVersion),
  id: fc.integer({ min: 0, max: 30 }).map((n) => eventId(`e${n}`)),
  session: fc.constantFrom(sessionId('s1'), sessionId('s2')),
  atEpochMs: fc.integer({ min: 1_700_000_000_000, max: 1_700_000_000_009 }),
}
const where = {
  drill: fc.constantFrom(drillId('d1'), drillId('d2')),
  piece: fc.constantFrom(pieceId('p1'), pieceId('p2')),
  chunk: fc.constantFrom(chunkId('p1:0-2:right'), chunkId('p2:3_2-4:both')),
}

const entryKeys = ['v', 'id', 'session', 'atEpochMs', 'kind', 'drill', 'piece', 'chunk'] as const
const drillKeys = [
  ...entryKeys,
  'place',
  'form',
  'time',
  'streakGoal',
  'goalTempo',
  'startTempo',
  'ladder',
  'standard',
] as const
const anyPlace = fc.constantFrom(
  { from: '0', to: '3_2', fromBar: 0, toBar: 1, hand: 'both' } as const,
  { from: '3_2', to: '7', fromBar: 1, toBar: 2, hand: 'right' } as const,
)

const anyFlaw = fc.record(
  {
    kind: fc.constantFrom(...recordedFlawKinds),
    onset: fc.nat(500),
    notes: fc.array(fc.constant(noteId('n3_2k60')), { maxLength: 2 }),
    written: anyKey,
    played: anyKey,
    playedMs: number,
    velocity: fc.integer({ min: 1, max: 127 }),
    ms: number,
    forgiven: fc.constant(true as const),
  },
  { requiredKeys: ['kind', 'onset'] },
)
const anyFigures = fc.record(
  { tempo: number, gapSd: number, handLag: number },
  { requiredKeys: [] },
)
const kind = <K extends string>(name: K) => ({ kind: fc.constant(name) })

/** What the person writes and decides; most of it replaces what may or may not be there. */
const anyWritten: readonly fc.Arbitrary<JournalEvent>[] = [
  fc.record(
    {
      ...stamp,
      ...kind('notebookWritten'),
      piece: where.piece,
      place: anyPlace,
      subject: fc.constantFrom(...notebookSubjects),
      helped: fc.boolean(),
      text: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
      replaces: stamp.id,
    },
    { requiredKeys: ['v', 'id', 'session', 'atEpochMs', 'kind', 'piece', 'subject', 'text'] },
  ),
  fc.record({ ...stamp, ...kind('notebookErased'), piece: where.piece, replaces: stamp.id }),
  fc.record({
    ...stamp,
    ...kind('pieceDecided'),
    piece: where.piece,
    decision: fc.constantFrom(...pieceDecisions),
  }),
  fc.record(
    {
      ...stamp,
      ...kind('fingeringWritten'),
      piece: where.piece,
      fingering: stamp.id,
      name: text,
      origin: fc.constantFrom(...fingeringOrigins),
      remark: text,
      fingers: fc.dictionary(
        fc.constantFrom('n0k60', 'n1k62', 'n3_2k64'),
        fc.constantFrom('1', '2', '31', ''),
      ),
    },
    { requiredKeys: ['v', 'id', 'session', 'atEpochMs', 'kind', 'piece'] },
  ),
  fc.record({ ...stamp, ...kind('fingeringErased'), piece: where.piece, fingering: stamp.id }),
  fc.record(
    { ...stamp, ...kind('fingeringChosen'), piece: where.piece, fingering: stamp.id },
    { requiredKeys: ['v', 'id', 'session', 'atEpochMs', 'kind', 'piece'] },
  ),
]

export const anyEvent: fc.Arbitrary<JournalEvent> = fc.oneof(
  fc.record({ ...stamp, ...kind('sessionBegun') }),
  fc.record({ ...stamp, ...kind('pieceAdded'), piece: where.piece, title: text, fileName: text }),
  fc.record(
    {
      ...stamp,
      ...kind('drillBegun'),
      ...where,
      place: anyPlace,
      form: fc.constantFrom(...recordedForms),
      passage: anyPlace,
      reach: anyTempo,
      time: fc.constantFrom({ beats: 4, beatType: 4 }, { beats: 6, beatType: 8 }),
      streakGoal: fc.integer({ min: 3, max: 10 }),
      goalTempo: anyTempo,
      startTempo: anyTempo,
      trial: fc.constant(true as const),
      ladder: fc.constantFrom('classic' as const, 4),
      standard: fc.constantFrom(...recordedStandards),
    },
    { requiredKeys: [...drillKeys] },
  ),
  fc.record({
    ...stamp,
    ...kind('repetition'),
    ...where,
    rung: anyTempo,
    standard: fc.constantFrom(...recordedStandards),
    forgiveBrushed: fc.boolean(),
    verdict: fc.constantFrom(...recordedVerdicts),
    tookMs: fc.nat(60_000),
    flaws: fc.array(anyFlaw, { maxLength: 4 }),
    figures: anyFigures,
    take: anyTake.map((take) => encodeTake(take, ms(0))),
  }),
  fc.record({
    ...stamp,
    ...kind('rungChanged'),
    ...where,
    from: anyTempo,
    to: anyTempo,
    reason: fc.constantFrom(...recordedTempoReasons),
  }),
  fc.record({
    ...stamp,
    ...kind('overruled'),
    ...where,
    what: fc.constantFrom(...recordedOverrules),
  }),
  fc.record({ ...stamp, ...kind('secure'), ...where, rung: anyTempo }),
  fc.record({ ...stamp, ...kind('exerciseDone'), ...where, rung: anyTempo, streak: fc.nat(10) }),
  fc.record(
    { ...stamp, ...kind('trialEnded'), ...where, rung: anyTempo, repetitions: fc.nat(20) },
    { requiredKeys: [...entryKeys, 'repetitions'] },
  ),
  fc.record(
    {
      ...stamp,
      ...kind('problemNamed'),
      ...where,
      flaw: fc.constantFrom(...recordedFlawKinds),
      onset: fc.nat(500),
      written: anyKey,
      played: anyKey,
      times: fc.integer({ min: 1, max: 9 }),
      likely: fc.constantFrom(...recordedCauses),
    },
    { requiredKeys: [...entryKeys, 'flaw', 'onset', 'times', 'likely'] },
  ),
  fc.record(
    {
      ...stamp,
      ...kind('remedyBegun'),
      ...where,
      problem: stamp.id,
      remedy: fc.constantFrom(...recordedRemedies),
      remedyDrill: where.drill,
    },
    { requiredKeys: [...entryKeys, 'problem', 'remedy'] },
  ),
  fc.record({
    ...stamp,
    ...kind('remedyEnded'),
    ...where,
    problem: stamp.id,
    outcome: fc.constantFrom(...remedyOutcomes),
  }),
  fc.record({
    ...stamp,
    ...kind('problemOutcome'),
    ...where,
    problem: stamp.id,
    helped: fc.boolean(),
  }),
  ...anyWritten,
)
