import * as v from 'valibot'
import { hands } from '@/music/music'
import { chunkId, key, noteId, pieceId, tempo } from '@/music/units'
import { storageText } from '@/text/storage'
import { drillId, eventId, sessionId } from './ids'
import { journalVersion, type JournalEvent } from './journal'
import { longestRemark, longestText } from './written'
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
} from './words'

const name = v.pipe(
  v.string(),
  v.nonEmpty(() => storageText.shapes.empty),
)
const number = v.pipe(v.number(), v.finite())
const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const positive = v.pipe(count, v.minValue(1))
const duration = v.pipe(number, v.minValue(0))
const tempoValue = v.pipe(number, v.gtValue(0), v.transform(tempo))
const keyNumber = v.pipe(count, v.maxValue(127), v.transform(key))
const piece = v.pipe(name, v.transform(pieceId))
const chunk = v.pipe(name, v.transform(chunkId))
const drill = v.pipe(name, v.transform(drillId))
const problem = v.pipe(name, v.transform(eventId))
const replaces = v.pipe(name, v.transform(eventId))
const fingering = v.pipe(name, v.transform(eventId))
const digits = v.pipe(
  v.string(),
  v.regex(/^[1-5]{0,5}$/, () => storageText.shapes.digits),
)
const shortText = v.pipe(v.string(), v.maxLength(longestRemark))
const standard = v.picklist(recordedStandards)
const optional = v.exactOptional

const entry = {
  v: v.literal(journalVersion),
  id: v.pipe(name, v.transform(eventId)),
  session: v.pipe(name, v.transform(sessionId)),
  atEpochMs: duration,
}

/** Strict, since an unknown field is a shape that this version does not know: to be kept, not cut off. */
const event = <K extends string, E extends v.ObjectEntries>(kind: K, entries: E) =>
  v.strictObject({ ...entry, kind: v.literal(kind), ...entries })

const fraction = v.pipe(
  v.string(),
  v.regex(/^\d+(_[1-9]\d*)?$/, () => storageText.shapes.fraction),
)

const place = v.strictObject({
  from: fraction,
  to: fraction,
  fromBar: v.pipe(v.number(), v.integer()),
  toBar: v.pipe(v.number(), v.integer()),
  hand: v.picklist([...hands, 'both']),
})

const flaw = v.strictObject({
  kind: v.picklist(recordedFlawKinds),
  onset: count,
  notes: optional(v.array(v.pipe(name, v.transform(noteId)))),
  written: optional(keyNumber),
  played: optional(keyNumber),
  playedMs: optional(number),
  velocity: optional(v.pipe(count, v.maxValue(127))),
  ms: optional(number),
  forgiven: optional(v.literal(true)),
})

const figures = v.strictObject({
  tempo: optional(number),
  gapSd: optional(number),
  gapCv: optional(number),
  chordSpread: optional(number),
  velocityMean: optional(number),
  velocitySd: optional(number),
  overlap: optional(number),
  handLag: optional(number),
})

/** A journal event of the present version. */
export const eventSchema: v.GenericSchema<unknown, JournalEvent> = v.variant('kind', [
  event('sessionBegun', {}),
  event('pieceAdded', { piece, title: v.string(), fileName: v.string() }),
  event('drillBegun', {
    drill,
    piece,
    chunk,
    place,
    form: v.picklist(recordedForms),
    passage: optional(place),
    reach: optional(tempoValue),
    time: v.strictObject({ beats: positive, beatType: positive }),
    streakGoal: positive,
    goalTempo: tempoValue,
    startTempo: tempoValue,
    trial: optional(v.literal(true)),
    ladder: v.union([v.literal('classic'), v.pipe(number, v.gtValue(0))]),
    standard,
  }),
  event('repetition', {
    drill,
    piece,
    chunk,
    rung: tempoValue,
    standard,
    forgiveBrushed: v.boolean(),
    clickMs: optional(number),
    verdict: v.picklist(recordedVerdicts),
    tookMs: duration,
    flaws: v.array(flaw),
    figures,
    take: v.pipe(
      v.string(),
      v.regex(/^[A-Za-z0-9+/]*$/, () => storageText.shapes.base64),
    ),
  }),
  event('rungChanged', {
    drill,
    piece,
    chunk,
    from: tempoValue,
    to: tempoValue,
    reason: v.picklist(recordedTempoReasons),
  }),
  event('overruled', { drill, piece, chunk, what: v.picklist(recordedOverrules) }),
  event('secure', { drill, piece, chunk, rung: tempoValue }),
  event('exerciseDone', { drill, piece, chunk, rung: tempoValue, streak: count }),
  event('trialEnded', { drill, piece, chunk, rung: optional(tempoValue), repetitions: count }),
  event('problemNamed', {
    drill,
    piece,
    chunk,
    flaw: v.picklist(recordedFlawKinds),
    onset: count,
    written: optional(keyNumber),
    played: optional(keyNumber),
    times: positive,
    likely: v.picklist(recordedCauses),
  }),
  event('remedyBegun', {
    drill,
    piece,
    chunk,
    problem,
    remedy: v.picklist(recordedRemedies),
    remedyDrill: optional(drill),
  }),
  event('remedyEnded', { drill, piece, chunk, problem, outcome: v.picklist(remedyOutcomes) }),
  event('problemOutcome', { drill, piece, chunk, problem, helped: v.boolean() }),
  event('notebookWritten', {
    piece,
    place: optional(place),
    subject: v.picklist(notebookSubjects),
    helped: optional(v.boolean()),
    text: v.pipe(name, v.maxLength(longestText)),
    replaces: optional(replaces),
  }),
  event('notebookErased', { piece, replaces }),
  event('pieceDecided', { piece, decision: v.picklist(pieceDecisions) }),
  event('fingeringWritten', {
    piece,
    fingering: optional(fingering),
    name: optional(shortText),
    origin: optional(v.picklist(fingeringOrigins)),
    remark: optional(shortText),
    fingers: optional(v.record(name, digits)),
  }),
  event('fingeringErased', { piece, fingering }),
  event('fingeringChosen', { piece, fingering: optional(fingering) }),
])
