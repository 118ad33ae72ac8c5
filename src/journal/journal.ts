/**
 * The append-only record of everything practised.
 *
 * event: one thing that happened, with its own id, the session, and the time of the wall clock. A
 * stored event never changes its meaning: a new shape has a new version and an upcaster (upcast.ts).
 * decodeEvent reads what comes from outside; formatJournal writes one event a line (lines.ts);
 * mergeJournals is a union by id (merge.ts); replay.ts gives a drill's events back to the coach.
 *
 * Example: sessionBegun, pieceAdded, drillBegun, repetition x 5, rungChanged 72 -> 76, repetition ...
 */
import type { TimeSignature } from '@/music/music'
import type { Place } from '@/music/place'
import type { ChunkId, Key, NoteId, PieceId, Tempo } from '@/music/units'
import type { DrillId, EventId, SessionId } from './ids'
import type {
  RecordedFlawKind,
  RecordedOverrule,
  RecordedStandard,
  RecordedTempoReason,
  RecordedVerdict,
} from './words'

/** The version of the shapes below. */
export const journalVersion = 1

interface Entry {
  readonly v: 1
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

export interface DrillBegun extends Entry {
  readonly kind: 'drillBegun'
  readonly drill: DrillId
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly place: RecordedPlace
  /** Where the chunk begins, so that tempi can be shown in its beat. */
  readonly time: TimeSignature
  readonly streakGoal: number
  readonly goalTempo: Tempo
  /** The rung at which the drill starts. */
  readonly startTempo: Tempo
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
export interface RepetitionRecorded extends Entry {
  readonly kind: 'repetition'
  readonly drill: DrillId
  readonly piece: PieceId
  readonly chunk: ChunkId
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

export interface RungChanged extends Entry {
  readonly kind: 'rungChanged'
  readonly drill: DrillId
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly from: Tempo
  readonly to: Tempo
  readonly reason: RecordedTempoReason
}

/** The person decided otherwise than the coach. */
export interface OverruledRecorded extends Entry {
  readonly kind: 'overruled'
  readonly drill: DrillId
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly what: RecordedOverrule
}

/** The streak goal was met at the goal tempo. */
export interface SecureRecorded extends Entry {
  readonly kind: 'secure'
  readonly drill: DrillId
  readonly piece: PieceId
  readonly chunk: ChunkId
  readonly rung: Tempo
}

export type JournalEvent =
  | SessionBegun
  | PieceAdded
  | DrillBegun
  | RepetitionRecorded
  | RungChanged
  | OverruledRecorded
  | SecureRecorded
