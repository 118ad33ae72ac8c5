import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import { placeOf } from '@/music/place'
import type { Key, Ms, NoteId, Tempo } from '@/music/units'
import type { DrillId, EventId, SessionId } from './ids'
import {
  journalVersion,
  type RecordedFigures,
  type RecordedFlaw,
  type RecordedPlace,
  type RepetitionRecorded,
} from './journal'
import { encodeTake } from './take'
import type { RecordedFlawKind, RecordedStandard, RecordedVerdict } from './words'

/** What every event carries. */
export interface Stamp {
  readonly id: EventId
  readonly session: SessionId
  readonly atEpochMs: number
}

/** A flaw as the judge gives it. */
interface JudgedFlaw {
  readonly kind: RecordedFlawKind
  readonly onset: number
  readonly expected?: { readonly ids: readonly NoteId[]; readonly key: Key }
  readonly played?: { readonly key: Key; readonly at: Ms; readonly velocity: number }
  readonly ms?: Ms
  readonly forgiven?: true
}

/** A repetition as the judge gives it. */
export interface JudgedRepetition {
  readonly start: Ms
  readonly verdict: RecordedVerdict
  readonly flaws: readonly JudgedFlaw[]
  readonly figures: RecordedFigures
}

export interface RepetitionContext {
  readonly drill: DrillId
  readonly chunk: Chunk
  readonly rung: Tempo
  readonly standard: RecordedStandard
  readonly forgiveBrushed: boolean
  /** The time of one click of the metronome, where it sounded. */
  readonly click?: Ms
  /** When the verdict came, on the clock of the key events. */
  readonly verdictAt: Ms
}

/** The event of one judged repetition with its take. */
export const recordRepetition = (
  stamp: Stamp,
  context: RepetitionContext,
  repetition: JudgedRepetition,
  take: Take,
): RepetitionRecorded => ({
  v: journalVersion,
  kind: 'repetition',
  ...stamp,
  drill: context.drill,
  piece: context.chunk.piece,
  chunk: context.chunk.id,
  rung: context.rung,
  standard: context.standard,
  forgiveBrushed: context.forgiveBrushed,
  ...(context.click === undefined ? {} : { clickMs: tenth(context.click - repetition.start) }),
  verdict: repetition.verdict,
  tookMs: tenth(Math.max(0, context.verdictAt - repetition.start)),
  flaws: repetition.flaws.map((flaw) => recordFlaw(flaw, repetition.start)),
  figures: recordFigures(repetition.figures),
  take: encodeTake(take, repetition.start),
})

/** Where a chunk stands, to be found again by its first and last onset. */
export const recordPlace = (chunk: Chunk, fromBar: number, toBar: number): RecordedPlace => ({
  ...placeOf(chunk),
  fromBar,
  toBar,
})

const tenth = (value: number): number => Math.round(value * 10) / 10

const recordFlaw = (flaw: JudgedFlaw, start: Ms): RecordedFlaw => ({
  kind: flaw.kind,
  onset: flaw.onset,
  ...(flaw.expected ? { notes: flaw.expected.ids, written: flaw.expected.key } : {}),
  ...(flaw.played
    ? {
        played: flaw.played.key,
        playedMs: tenth(flaw.played.at - start),
        velocity: flaw.played.velocity,
      }
    : {}),
  ...(flaw.ms === undefined ? {} : { ms: tenth(flaw.ms) }),
  ...(flaw.forgiven ? { forgiven: true } : {}),
})

/** Four significant digits are more than any of these can claim; what is not a number is left out. */
const recordFigures = (figures: RecordedFigures): RecordedFigures =>
  Object.fromEntries(
    Object.entries(figures)
      .filter(([, value]) => Number.isFinite(value))
      .map(([name, value]) => [name, Number(Number(value).toPrecision(4))]),
  )
