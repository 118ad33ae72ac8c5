/**
 * What the app needs from the edges. main.tsx makes the edges and hands them in; a test hands in fakes.
 */
import type { Difficulty } from '@/difficulty/difficulty'
import type { Compared, WrittenDigits } from '@/fingering/compare'
import type { FingeringSettings, HandFingering } from '@/fingering/fingering'
import type { HandReach } from '@/fingering/spans'
import type { HandChoice, Note, Score } from '@/music/music'
import type { Chunk } from '@/music/chunk'
import type { KeyEvent } from '@/music/keyEvent'
import type { Result } from '@/music/result'
import type { ChunkId, Key, Ms, PieceId, Tempo } from '@/music/units'
import type { DayOf } from '@/journal/day'
import type { DaySpan } from '@/journal/daySpan'
import type { EventId, SessionId, StudentId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import type { PieceLine, PieceLineName } from '@/journal/pieceLines'
import type { ChunkDay, DayTotal, PieceDay } from '@/journal/sums'
import type { FolderPort, Keeping } from './copyPorts'
import type { Carried } from '@/review/carryOver'
import type { PieceLayout } from '@/plan/layOut'
import type { ReadProblem } from '@/score/readProblem'
import type { PieceRead } from '@/score/score'
import type { SpotWords } from './spotWords'
import type { SoundPort } from './soundPorts'

export type Stop = () => void

export interface ListenPort {
  readonly listen: (hear: (event: KeyEvent) => void) => Stop
}

export interface MidiInput {
  readonly id: string
  readonly name: string
  /** It is there, pulled out, or another program has it. */
  readonly standing: 'there' | 'unplugged' | 'taken'
}

export type MidiState =
  | { readonly kind: 'asking' }
  | { readonly kind: 'unsupported' }
  | { readonly kind: 'denied' }
  | { readonly kind: 'failed'; readonly detail: string }
  | { readonly kind: 'ready'; readonly inputs: readonly MidiInput[]; readonly chosen?: string }

export interface MidiPort {
  readonly connect: () => Promise<void>
  readonly watch: (see: (state: MidiState) => void) => Stop
  /** By its id, or by its name where the browser gives it another id than last time. */
  readonly choose: (inputId: string, name: string) => void
  readonly transpose: (semitones: number) => void
}

/** Instruments that "hear it" can be sent to. */
export interface MidiOutPort {
  readonly watch: (see: (outputs: readonly MidiInput[]) => void) => Stop
  /** By its id, or by its name where the browser gives it another id; an empty id is none. */
  readonly choose: (id: string, name: string) => void
}

export interface ScreenKeysPort {
  readonly press: (key: Key, at: Ms, pointer: number) => void
  readonly release: (at: Ms, pointer: number) => void
}

export interface ComputerKeysPort {
  /** Puts the computer's keys where these piano keys are in reach. */
  readonly reach: (keys: readonly Key[]) => void
  /** What is printed on the computer's key that plays a piano key. */
  readonly letters: () => ReadonlyMap<Key, string>
}

export interface PlayerPort extends ListenPort {
  /** Plays a few repetitions of the chunk with human noise and a slip or two, from `at` on; resolves at the end or when stopped. */
  readonly play: (chunk: Chunk, tempo: Tempo, at: Ms) => Promise<void>
  readonly stop: Stop
}

/** A piece as stored: the file itself, so that a better reader can read it again. */
export interface StoredPiece {
  readonly id: PieceId
  readonly title: string
  readonly composer?: string
  readonly fileName: string
  readonly bytes: Uint8Array
  /** Which of the file's parts were chosen; absent where the reader chose. */
  readonly parts?: readonly number[]
  /** Chunks of older editions whose record counts for chunks of this one. */
  readonly carried?: readonly Carried[]
  readonly addedAtEpochMs: number
}

/** What became of events that were brought from elsewhere. */
export interface Imported {
  readonly added: number
  /** Were here already. */
  readonly known: number
  /** Ids under which another event stands here; that one was kept. */
  readonly taken: readonly string[]
}

export interface StoragePort {
  /** Resolves only when the event is durably stored. */
  readonly append: (event: JournalEvent) => Promise<Result<void, string>>
  /** All events of the session that was practised last; `unread` says what of the record cannot be read. */
  readonly latestSession: () => Promise<
    Result<{ readonly events: readonly JournalEvent[]; readonly unread?: string }, string>
  >
  /** The whole record as parts of one text, JSON Lines, pieces and all; what cannot be read is in it as it stands. */
  readonly exportText: () => Promise<Result<readonly string[], string>>
  /** All repetitions as comma-separated values. */
  readonly tableText: () => Promise<Result<string, string>>
  /** Which of these events are here already. */
  readonly known: (events: readonly JournalEvent[]) => Promise<Result<ReadonlySet<EventId>, string>>
  /** Adds events of another record; any number of times with the same result. */
  readonly importAll: (
    events: readonly JournalEvent[],
    progress: (done: number) => void,
  ) => Promise<Result<Imported, string>>
  /** The kept sums of each day, and of each piece on each day. */
  readonly sums: () => Promise<
    Result<{ readonly totals: readonly DayTotal[]; readonly pieces: readonly PieceDay[] }, string>
  >
  /** The day of practice of a moment, on this machine. */
  readonly dayOf: DayOf
  readonly ofChunk: (chunk: ChunkId) => Promise<Result<readonly JournalEvent[], string>>
  /** What each day of each chunk of the piece came to. */
  readonly chunkDays: (piece: PieceId) => Promise<Result<readonly ChunkDay[], string>>
  readonly ofPiece: (piece: PieceId) => Promise<Result<readonly JournalEvent[], string>>
  /** From one moment to before another; of a record of years, nothing else is read. */
  readonly ofTime: (span: DaySpan) => Promise<Result<readonly JournalEvent[], string>>
  /** What the person wrote and decided, of all pieces. */
  readonly written: () => Promise<Result<readonly JournalEvent[], string>>
  /** What of pieces goes along with a saved record, by name alone. */
  readonly pieceLines: () => Promise<Result<readonly PieceLineName[], string>>
  /** Takes in what is newer than that of here; any number of times with the same result. Gives what came in. */
  readonly takePieceLines: (
    lines: readonly PieceLine[],
  ) => Promise<Result<readonly PieceLine[], string>>
  readonly putPiece: (piece: StoredPiece) => Promise<Result<void, string>>
  /** The journal stays as it is. */
  readonly removePiece: (id: PieceId) => Promise<Result<void, string>>
  readonly pieces: () => Promise<Result<readonly Omit<StoredPiece, 'bytes'>[], string>>
  readonly piece: (id: PieceId) => Promise<Result<StoredPiece | undefined, string>>
  /** Called at once and at each change: what keeps new events from being durable, or `undefined`. */
  readonly watchProblem: (see: (problem: string | undefined) => void) => Stop
  /** Tells each event that another tab has stored. */
  readonly watchOthers: (see: (event: JournalEvent) => void) => Stop
  /** What is in memory alone, as JSON Lines; empty where all is stored. */
  readonly unsavedText: () => string
  /** Whether the browser keeps the record for good, as far as it says. */
  readonly keeping: () => Promise<Keeping>
  /** Asks the browser to keep it for good; some browsers ask the person. */
  readonly askToPersist: () => Promise<Keeping>
  /** When the record was last saved, as it was kept. */
  readonly copies: () => Promise<unknown>
  readonly saveCopies: (copies: unknown) => Promise<Result<void, string>>
  /** What the person said of the hands of a piece, as it was saved. */
  readonly hands: (id: PieceId) => Promise<unknown>
  readonly saveHands: (id: PieceId, corrections: unknown) => Promise<Result<void, string>>
  /** What the person said of the hard spots of a piece, as it was saved. */
  readonly spots: (id: PieceId) => Promise<Result<unknown, string>>
  readonly saveSpots: (id: PieceId, words: unknown) => Promise<Result<void, string>>
  /** Today's plan under way, as it was saved. */
  readonly day: () => Promise<Result<unknown, string>>
  readonly saveDay: (run: unknown) => Promise<Result<void, string>>
  readonly loadSettings: () => Promise<unknown>
  readonly saveSettings: (settings: unknown) => Promise<Result<void, string>>
}

/** A student whose record stands beside one's own. */
export interface StudentListing {
  readonly id: StudentId
  readonly name: string
  /** The file that was taken in last, and when. */
  readonly fileName: string
  readonly takenAtEpochMs: number
  readonly sessions: readonly SessionId[]
  /** What the record comes to, as it was saved; `undefined` before it was counted. */
  readonly kept: unknown
}

export interface StudentsPort {
  /** By what rule moments are assigned to days. */
  readonly dayRule: string
  readonly list: () => Promise<Result<readonly StudentListing[], string>>
  readonly put: (student: StudentListing) => Promise<Result<void, string>>
  /** With the whole record. */
  readonly remove: (id: StudentId) => Promise<Result<void, string>>
  /** The student's record, apart from one's own; empty at first. */
  readonly journal: (id: StudentId) => Promise<Result<StoragePort, string>>
}

/** A piece that comes with the program. */
export interface Sample {
  readonly title: string
  readonly fileName: string
  readonly bytes: Uint8Array
  readonly suggestion: Suggestion
}

/** A first passage to try. */
export interface Suggestion {
  readonly fromBar: number
  readonly toBar: number
  readonly hand: HandChoice
  readonly goalTempo: Tempo
}

export type ReadPiece = Pick<PieceRead, 'score' | 'warnings' | 'composer' | 'parts'>

/** Whether the program itself is kept on this machine, for use without a network. */
export type KeptState =
  | { readonly kind: 'notKept' | 'keeping' | 'kept' }
  /** A newer version is here, and waits. */
  | { readonly kind: 'newer' }
  /** The detail is the browser's own; none where some files did not come. */
  | { readonly kind: 'failed'; readonly detail?: string }

export interface KeptPort {
  /** Calls at once and at each change. */
  readonly watch: (see: (state: KeptState) => void) => void
  /** Loads the page anew with the newer version. */
  readonly takeNewer: () => void
}

/** What a part of the program that others made is given under. */
export interface Licence {
  readonly name: string
  readonly version: string
  /** By its SPDX identifier. */
  readonly licence: string
  readonly text: string
}

export interface Ports {
  /** Of all that is shipped; or why they cannot be read. */
  readonly licences: () => Promise<Result<readonly Licence[], string>>
  /** Whatever the person plays on, as one stream. */
  readonly person: ListenPort
  readonly midi: MidiPort
  readonly midiOut: MidiOutPort
  readonly computerKeys: ComputerKeysPort
  readonly screenKeys: ScreenKeysPort
  readonly player: PlayerPort
  readonly sound: SoundPort
  readonly storage: StoragePort
  readonly folder: FolderPort
  /** Comes when it is wanted. */
  readonly students: () => Promise<StudentsPort>
  readonly readPiece: (
    bytes: Uint8Array,
    fileName: string,
    /** Indices of the parts to take, where the file has several and the reader should not choose. */
    parts?: readonly number[],
  ) => Promise<Result<ReadPiece, ReadProblem>>
  /** How difficult a piece is at a goal tempo, and where. */
  readonly assess: (score: Score, goal: Tempo, span: HandReach) => Promise<Difficulty>
  /** The places of a piece at a goal tempo for a hand, with the person's word on its hard spots. */
  readonly layOut: (
    score: Score,
    goal: Tempo,
    words: SpotWords,
    span: HandReach,
  ) => Promise<PieceLayout>
  /** Fingerings for the notes of one hand: the best, and a few others. */
  readonly proposeFingering: (
    notes: readonly Note[],
    settings: FingeringSettings,
  ) => Promise<HandFingering>
  /** Versions of a fingering beside the first of them. */
  readonly compareFingerings: (
    notes: readonly Note[],
    settings: FingeringSettings,
    versions: readonly WrittenDigits[],
  ) => Promise<readonly Compared[]>
  readonly samples: () => Promise<readonly Sample[]>
  readonly kept: KeptPort
  /** Gives a text to the person as a file. */
  readonly saveFile: (name: string, parts: readonly string[]) => void
  /** The clock of the key events. */
  readonly now: () => Ms
  readonly wallClock: () => number
  readonly newId: () => string
  /** Calls again and again, about thirty times a second. */
  readonly everyMoment: (run: () => void) => Stop
  readonly address: {
    readonly read: () => string
    readonly write: (hash: string) => void
    readonly watch: (see: (hash: string) => void) => Stop
  }
}
