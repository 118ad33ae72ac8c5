/** What the app needs from the edges to keep copies of the record (ports.ts has the rest). */
import type { JournalEvent } from '@/journal/journal'

/** How the browser keeps the record. */
export interface Keeping {
  /** It promises not to clear the record when the disk gets full. */
  readonly promised: boolean
  /** The same as a sentence. */
  readonly words: string
  /** What all of this site takes on the disk, and what it may still take; absent where the browser does not say. */
  readonly room?: { readonly usedBytes: number; readonly freeBytes: number }
}

/** The folder of the person's own in which a second copy of the record is kept. */
export type FolderState =
  /** This browser lets no page write into a folder. */
  | { readonly kind: 'unsupported' }
  | { readonly kind: 'none' }
  /** The browser wants to be asked again, in a press of the person. */
  | ({ readonly kind: 'asks' } & KeptFolder)
  | ({ readonly kind: 'ready' } & KeptFolder)
  | ({ readonly kind: 'writing'; readonly done: number; readonly of: number } & KeptFolder)
  /** `message` says what, why and what to do. */
  | ({ readonly kind: 'failed'; readonly message: string } & KeptFolder)

export interface KeptFolder {
  readonly name: string
  readonly writtenAtEpochMs?: number | undefined
  /** Events in its files that are not in the record here. */
  readonly elsewhere?: number | undefined
}

export interface FolderPort {
  /** Calls at once and at each change. */
  readonly watch: (see: (state: FolderState) => void) => () => void
  /** Shows the browser's choice of a folder; in a press of the person. */
  readonly choose: () => Promise<void>
  /** Lets the browser ask whether the page may write; in a press of the person. */
  readonly allow: () => Promise<void>
  /** Writes what is new, where there is a folder and the browser allows it. */
  readonly write: () => Promise<void>
  /** These events are about to come in: the files of their months are to be written next. */
  readonly expect: (events: readonly JournalEvent[]) => Promise<void>
  /** Forgets the folder; its files stay. */
  readonly stop: () => Promise<void>
}
