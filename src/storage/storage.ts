/**
 * Where journal, pieces and settings are kept, on this machine and nowhere else.
 *
 * An event is appended durably: `append` resolves only when the disk has it. What could not be stored
 * stays in memory (`unsaved`), is read like the rest, and is tried again with the next event and every
 * few seconds, so that a full disk loses nothing while the page is open. Every trouble is a
 * `StorageProblem` as data.
 *
 * Example: `const storage = await openOrRemember()`: the database, or, where there is none, a memory
 * that keeps the same contract until the page is closed (memory.ts).
 */
import type { EventId, SessionId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import type { JournalProblem } from '@/journal/decode'
import type { PieceLine, PieceLineName } from '@/journal/pieceLines'
import type { ChunkDay, DayTotal, PieceDay } from '@/journal/sums'
import type { Result } from '@/music/result'
import type { ChunkId, PieceId } from '@/music/units'
import type { StorageProblem } from './problem'

/** A piece with the file itself, so that a better reader can read it again. */
export interface StoredPiece extends PieceListing {
  readonly bytes: Uint8Array
}

/** A piece without its file. */
export interface PieceListing {
  readonly id: PieceId
  readonly title: string
  /** Absent when the file does not say. */
  readonly composer?: string
  readonly fileName: string
  /** Which of the file's parts were chosen; absent where the reader chose. */
  readonly parts?: readonly number[]
  /** Chunks of older editions whose record counts for chunks of this one. */
  readonly carried?: readonly { readonly from: ChunkId; readonly to: ChunkId }[]
  readonly addedAtEpochMs: number
}

/** Which events of the journal; given in the order of their times. */
export type EventQuery =
  | { readonly kind: 'all' }
  | { readonly kind: 'session'; readonly session: SessionId }
  | { readonly kind: 'piece'; readonly piece: PieceId }
  | { readonly kind: 'chunk'; readonly chunk: ChunkId }
  /** From one moment to before another, milliseconds since 1970 UTC. */
  | { readonly kind: 'time'; readonly from: number; readonly to: number }
  /** What the person wrote and decided, of all pieces; read without the rest. */
  | { readonly kind: 'written' }
  /** The newest so many. */
  | { readonly kind: 'latest'; readonly count: number }

/** A record that this version cannot read, as it stands. */
export interface UnreadRecord {
  readonly id: string
  readonly reason: JournalProblem
  readonly record: unknown
}

export interface StoredEvents {
  readonly events: readonly JournalEvent[]
  /** Records that this version cannot read; they stay where they are. */
  readonly unread: readonly UnreadRecord[]
}

/** What the journal comes to, day by day; each day in order. */
export interface KeptSums {
  readonly totals: readonly DayTotal[]
  readonly pieces: readonly PieceDay[]
}

/** What became of events that were brought from elsewhere. */
export interface Imported {
  readonly added: number
  /** Were here already. */
  readonly known: number
  /** Ids under which another event stands here; that one was kept. */
  readonly taken: readonly string[]
}

/** What is kept beside journal, pieces and settings: the folder of the second copy, when the record was last saved, today's plan under way. */
export type Aside = 'folder' | 'copies' | 'day'

export type Stored<T> = Promise<Result<T, StorageProblem>>

export interface Storage {
  /** Resolves when the event is on the disk. The same event once more changes nothing. */
  readonly append: (event: JournalEvent) => Stored<void>
  readonly events: (query: EventQuery) => Stored<StoredEvents>
  /** All events, some at a time, so that a journal of years need not stand in memory at once. */
  readonly eventsInParts: (see: (part: StoredEvents) => void) => Stored<void>
  /** Which of these events are here already, by id; for a preview of an import. */
  readonly known: (events: readonly JournalEvent[]) => Stored<ReadonlySet<EventId>>
  /** Adds events of another journal, in batches; any number of times with the same result. */
  readonly importAll: (
    events: readonly JournalEvent[],
    progress?: (done: number) => void,
  ) => Stored<Imported>
  /** Packs what is older than the newest day, when it is enough; gives how many events. Best while nobody plays. */
  readonly pack: () => Stored<number>
  /** The sums of all days, of each piece too; no repetition is read for them but the latest. */
  readonly sums: () => Stored<KeptSums>
  /** When the earliest event happened; `undefined` where there is none. */
  readonly firstAt: () => Stored<number | undefined>
  /** The days of each chunk of a piece. */
  readonly chunkSums: (piece: PieceId) => Stored<readonly ChunkDay[]>
  /** Events that are only in memory so far. */
  readonly unsaved: () => readonly JournalEvent[]
  readonly putPiece: (piece: StoredPiece) => Stored<void>
  /** With its file; the journal stays as it is. Nothing happens when there is none by that name. */
  readonly removePiece: (id: PieceId) => Stored<void>
  /** `undefined` when there is none by that name. */
  readonly piece: (id: PieceId) => Stored<StoredPiece | undefined>
  /** In the order in which they were added. */
  readonly pieces: () => Stored<readonly PieceListing[]>
  /** What the person said of the hands of a piece, also of one that is not stored; it stays when the piece is removed. */
  readonly saveHands: (id: PieceId, corrections: unknown) => Stored<void>
  /** As saved; `undefined` before the first time. */
  readonly hands: (id: PieceId) => Stored<unknown>
  /** The same for what the person said of its hard spots. */
  readonly saveSpots: (id: PieceId, words: unknown) => Stored<void>
  readonly spots: (id: PieceId) => Stored<unknown>
  /** What of pieces goes along with a saved record, by name alone: the lines are read one by one. */
  readonly pieceLines: () => Stored<readonly PieceLineName[]>
  /** `undefined` where there is none by that name. */
  readonly pieceLine: (name: Pick<PieceLineName, 'kind' | 'piece'>) => Stored<PieceLine | undefined>
  /** Takes in what is newer than that of here, any number of times with the same result; gives what came in. */
  readonly takePieceLines: (lines: readonly PieceLine[]) => Stored<readonly PieceLine[]>
  readonly saveSettings: (settings: unknown) => Stored<void>
  /** As saved; `undefined` before the first time. */
  readonly settings: () => Stored<unknown>
  readonly saveAside: (name: Aside, value: unknown) => Stored<void>
  /** As saved; `undefined` before the first time. */
  readonly aside: (name: Aside) => Stored<unknown>
  /** Tells each event that another tab has stored. */
  readonly watchOthers: (see: (event: JournalEvent) => void) => () => void
  /** Called at once and at each change: what keeps new events from being durable, or `undefined`. */
  readonly watch: (see: (problem: StorageProblem | undefined) => void) => () => void
  readonly close: () => void
}
