/**
 * The append-only record of everything practised.
 *
 * event: one thing that happened, with its own id, the session, and the time of the wall clock. A
 * stored event never changes its meaning: a new shape has a new version and an upcaster (upcast.ts).
 * decodeEvent reads what comes from outside; formatJournal writes one event a line (lines.ts);
 * mergeJournals is a union by id (merge.ts); replay.ts gives a drill's events back to the coach. What the
 * person wrote, unlike what was played, is changed by events that replace others by id (written.ts).
 *
 * Example: sessionBegun, pieceAdded, drillBegun, repetition x 5, rungChanged 72 -> 76, repetition ...
 */
import type { TimeSignature } from '@/music/music'
import type { Place } from '@/music/place'
import type { ChunkId, Key, NoteId, PieceId, Tempo } from '@/music/units'
import type { DrillId, EventId, SessionId } from './ids'
import type {
  RecordedCause,
  RecordedFlawKind,
  RecordedForm,
  RecordedOverrule,
  RecordedRemedy,
  RecordedStandard,
  RecordedTempoReason,
  RecordedVerdict,
  FingeringOrigin,
  NotebookSubject,
  PieceDecision,
  RemedyOutcome,
} from './words'

/** The version of the shapes below. */
export const journalVersion = 3 as const

interface Entry {
  readonly v: typeof journalVersion
  readonly id: EventId
  readonly session: SessionId
  /** The wall clock, milliseconds since 1970 UTC. */
  readonly atEpochMs: number
}

export interface SessionBegun extends Entry {
  readonly kind: 'sessionBegun'
}

export interface PieceAdded extends Entry {
  readonly kind: 'pieceAdded'
  readonly piece: PieceId
  readonly title: string
  readonly fileName: string
}

/** Where a chunk stands in its piece. */
export interface RecordedPlace extends Place {
  /** Bar numbers as printed; a pickup is bar 0. */
  readonly fromBar: number
  readonly toBar: number
}

/** 'classic' metronome marks, or rungs so many per cent apart. */
export type RecordedLadder = 'classic' | number

/** In which drill, at which chunk. */
interface DrillEntry extends Entry {
  readonly drill: DrillId
  readonly piece: PieceId
  readonly chunk: ChunkId
}

export interface DrillBegun extends DrillEntry {
  readonly kind: 'drillBegun'
  readonly place: RecordedPlace
  readonly form: RecordedForm
  /** The passage to whose build-up the exercise belongs. */
  readonly passage?: RecordedPlace
  /** The tempo at which the exercise is done, where that is not the goal tempo. */
  readonly reach?: Tempo
  /** Where the chunk begins, so that tempi can be shown in its beat. */
  readonly time: TimeSignature
  readonly streakGoal: number
  readonly goalTempo: Tempo
  /** The rung at which the drill starts. */
  readonly startTempo: Tempo
  /** It began with a trial for the start tempo. */
  readonly trial?: true
  readonly ladder: RecordedLadder
  readonly standard: RecordedStandard
}

/** One thing that was not as written. */
export interface RecordedFlaw {
  readonly kind: RecordedFlawKind
  /** Index of the onset in the chunk. */
  readonly onset: number
  /** The written note: more than one id where both hands meet on one key. */
  readonly notes?: readonly NoteId[]
  readonly written?: Key
  readonly played?: Key
  /** When and how it was played; from the first key of the repetition. */
  readonly playedMs?: number
  readonly velocity?: number
  /** How much, where the kind has a size; early is negative. */
  readonly ms?: number
  readonly forgiven?: true
}

/** What was measured besides the verdict; times in milliseconds. */
export interface RecordedFigures {
  readonly tempo?: number
  readonly gapSd?: number
  readonly gapCv?: number
  readonly chordSpread?: number
  readonly velocityMean?: number
  readonly velocitySd?: number
  readonly overlap?: number
  readonly handLag?: number
}

/** One try at a chunk. `atEpochMs` is when its verdict came. */
export interface RepetitionRecorded extends DrillEntry {
  readonly kind: 'repetition'
  readonly rung: Tempo
  readonly standard: RecordedStandard
  readonly forgiveBrushed: boolean
  /** The time of one click of the metronome, from the first key; absent where none sounded. */
  readonly clickMs?: number
  readonly verdict: RecordedVerdict
  /** From the first key to the verdict. */
  readonly tookMs: number
  readonly flaws: readonly RecordedFlaw[]
  readonly figures: RecordedFigures
  /** The key events themselves (take.ts), so that a better judge can judge them again. */
  readonly take: string
}

export interface RungChanged extends DrillEntry {
  readonly kind: 'rungChanged'
  readonly from: Tempo
  readonly to: Tempo
  readonly reason: RecordedTempoReason
}

/** The person decided otherwise than the coach. */
export interface OverruledRecorded extends DrillEntry {
  readonly kind: 'overruled'
  readonly what: RecordedOverrule
}

/** The streak goal was met at the goal tempo. */
export interface SecureRecorded extends DrillEntry {
  readonly kind: 'secure'
  readonly rung: Tempo
}

/** The reach of an exercise was met; a chunk as written is secure only at the goal tempo. */
export interface ExerciseDone extends DrillEntry {
  readonly kind: 'exerciseDone'
  readonly rung: Tempo
  readonly streak: number
}

/** The start tempo was sought: the highest rung at which all was clean, or none. */
export interface TrialEnded extends DrillEntry {
  readonly kind: 'trialEnded'
  readonly rung?: Tempo
  readonly repetitions: number
}

/** The same flaw came again at its place, and the drill stopped for it. Its id names the problem. */
export interface ProblemNamed extends DrillEntry {
  readonly kind: 'problemNamed'
  readonly flaw: RecordedFlawKind
  /** Index of the onset in the chunk. */
  readonly onset: number
  readonly written?: Key
  /** What was played there last. */
  readonly played?: Key
  readonly times: number
  readonly likely: RecordedCause
}

/** Drill and chunk are those of the problem. */
interface RemedyEntry extends DrillEntry {
  readonly problem: EventId
}

export interface RemedyBegun extends RemedyEntry {
  readonly kind: 'remedyBegun'
  readonly remedy: RecordedRemedy
  /** The drill of the remedy itself, where it is played. */
  readonly remedyDrill?: DrillId
}

export interface RemedyEnded extends RemedyEntry {
  readonly kind: 'remedyEnded'
  readonly outcome: RemedyOutcome
}

/** Whether the flaw stayed away after the remedy, back in the drill. */
export interface ProblemOutcome extends RemedyEntry {
  readonly kind: 'problemOutcome'
  readonly helped: boolean
}

/**
 * Something the person wrote in the notebook, of a piece or of a place in it. To change it is to write
 * it anew: what no other event replaces stands in the notebook (notebook.ts).
 */
export interface NotebookWritten extends Entry {
  readonly kind: 'notebookWritten'
  readonly piece: PieceId
  /** Absent for the whole piece. */
  readonly place?: RecordedPlace
  readonly subject: NotebookSubject
  /** Of something tried: whether it helped, where that is known. */
  readonly helped?: boolean
  readonly text: string
  readonly replaces?: EventId
}

export interface NotebookErased extends Entry {
  readonly kind: 'notebookErased'
  readonly piece: PieceId
  readonly replaces: EventId
}

/** What the person decided of a piece; the newest decision holds (notebook.ts). */
export interface PieceDecided extends Entry {
  readonly kind: 'pieceDecided'
  readonly piece: PieceId
  readonly decision: PieceDecision
}

/**
 * A version of the fingering of a piece is begun, or changed: what is left out stays as it was. Digits
 * are written note by note, so that two machines that change different notes of one version agree.
 */
export interface FingeringWritten extends Entry {
  readonly kind: 'fingeringWritten'
  readonly piece: PieceId
  /** The event that began the version; absent in that event itself. */
  readonly fingering?: EventId
  readonly name?: string
  readonly origin?: FingeringOrigin
  /** Where it comes from, in the person's words. */
  readonly remark?: string
  /** By note: '3', or '31' for a silent change; empty where the digit is taken away. */
  readonly fingers?: Readonly<Record<string, string>>
}

export interface FingeringErased extends Entry {
  readonly kind: 'fingeringErased'
  readonly piece: PieceId
  readonly fingering: EventId
}

/** The version that is shown from now on; absent: the digits of the file. */
export interface FingeringChosen extends Entry {
  readonly kind: 'fingeringChosen'
  readonly piece: PieceId
  readonly fingering?: EventId
}

export type JournalEvent =
  | SessionBegun
  | PieceAdded
  | DrillBegun
  | RepetitionRecorded
  | RungChanged
  | OverruledRecorded
  | SecureRecorded
  | ExerciseDone
  | TrialEnded
  | ProblemNamed
  | RemedyBegun
  | RemedyEnded
  | ProblemOutcome
  | NotebookWritten
  | NotebookErased
  | PieceDecided
  | FingeringWritten
  | FingeringErased
  | FingeringChosen
