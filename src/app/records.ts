import { createStore, type StoreApi } from 'zustand/vanilla'
import type { PieceLine } from '@/journal/pieceLines'
import type { ImportPreview } from '@/journal/previewImport'
import type { PieceId } from '@/music/units'
import type { Result } from '@/music/result'
import { createHearing, type Hearing } from './hearing'
import type { ChosenFile, Library } from './library'
import { createCopies, type Copies } from './copies'
import type { Imported, Ports } from './ports'
import { createReviews, type Reviews } from './reviews'
import type { Session } from './session'

/** A file of another record on its way into this one. */
export type ImportState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string; readonly done: number }
  | { readonly kind: 'preview'; readonly fileName: string; readonly preview: LookedAt }
  | {
      readonly kind: 'importing'
      readonly fileName: string
      readonly done: number
      readonly of: number
    }
  | {
      readonly kind: 'done'
      readonly fileName: string
      readonly outcome: Imported
      /** Of how many pieces something came in besides. */
      readonly pieces: number
    }
  /** `message` says what, why and what to do. */
  | { readonly kind: 'failed'; readonly fileName: string; readonly message: string }

/** What files would bring; of several, a line that cannot be read says in which it stands. */
export interface LookedAt extends ImportPreview {
  /** What of pieces stands in them, besides the events. */
  readonly kept: Readonly<Record<PieceLine['kind'], KeptInFile>>
  readonly unread: readonly (ImportPreview['unread'][number] & { readonly of?: string })[]
}

/** Of how many pieces there is none here, an older one that it replaces, or as new a one. */
export interface KeptInFile {
  readonly fresh: number
  readonly newer: number
  readonly known: number
}

/** The record as a whole: what it says, and how it leaves and comes back as files. */
export interface Records extends Reviews, Copies, TakeIn {
  readonly import: StoreApi<ImportState>
  /** A take of the record, heard again. */
  readonly hearing: Hearing
  /** All repetitions as a table for a spreadsheet. */
  readonly saveTable: () => Promise<Result<void, string>>
}

/** Files of another record on their way in. */
export interface TakeIn {
  /** Reads one file or several and tells what they would bring; nothing is changed. */
  readonly look: (chosen: readonly ChosenFile[]) => Promise<void>
  /** Takes in what was looked at. */
  readonly take: () => Promise<void>
  readonly forget: () => void
}

export const createRecords = (
  ports: Ports,
  library: Pick<Library, 'open' | 'store'>,
  session: Pick<Session, 'store'>,
  /** Called with the pieces of which something has come in. */
  cameIn: (pieces: readonly PieceId[]) => Promise<void>,
): Records => {
  const { storage } = ports
  const store = createStore<ImportState>(() => ({ kind: 'none' }))
  let loading: Promise<TakeIn> | undefined
  const takeIn = () =>
    (loading ??= import('./takeIn').then((loaded) => loaded.createTakeIn(ports, store, cameIn)))
  return {
    import: store,
    ...createCopies(ports),
    hearing: createHearing(ports),
    ...createReviews(storage, library, ports.wallClock, () => session.store.getState().events),
    saveTable: async () => {
      const text = await storage.tableText()
      if (!text.ok) return text
      const day = storage.dayOf(ports.wallClock())
      ports.saveFile(`passagework-repetitions-${day}.csv`, [text.value])
      return { ok: true, value: undefined }
    },
    look: async (chosen) => (await takeIn()).look(chosen),
    take: async () => (await takeIn()).take(),
    forget: () => void takeIn().then(({ forget }) => forget()),
  }
}
