import { createStore, type StoreApi } from 'zustand/vanilla'
import type { ImportPreview } from '@/journal/previewImport'
import type { JournalEvent } from '@/journal/journal'
import type { Result } from '@/music/result'
import { createHearing, type Hearing } from './hearing'
import type { ChosenFile, Library } from './library'
import type { Imported, Ports } from './ports'
import { createReviews, type Reviews } from './reviews'
import type { Session } from './session'

/** A file of another record on its way into this one. */
export type ImportState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string; readonly done: number }
  | { readonly kind: 'preview'; readonly fileName: string; readonly preview: ImportPreview }
  | {
      readonly kind: 'importing'
      readonly fileName: string
      readonly done: number
      readonly of: number
    }
  | { readonly kind: 'done'; readonly fileName: string; readonly outcome: Imported }
  /** `message` says what, why and what to do. */
  | { readonly kind: 'failed'; readonly fileName: string; readonly message: string }

/** The record as a whole: what it says, and how it leaves and comes back as files. */
export interface Records extends Reviews {
  readonly import: StoreApi<ImportState>
  /** A take of the record, heard again. */
  readonly hearing: Hearing
  /** All repetitions as a table for a spreadsheet. */
  readonly saveTable: () => Promise<Result<void, string>>
  /** Reads a file and tells what it would bring; nothing is changed. */
  readonly look: (file: ChosenFile) => Promise<void>
  /** Takes in what was looked at. */
  readonly take: () => Promise<void>
  readonly forget: () => void
}

/** A text larger than this cannot be had in one piece in every browser. */
const largestRecord = 400_000_000

export const createRecords = (
  ports: Ports,
  library: Pick<Library, 'open' | 'store'>,
  session: Pick<Session, 'store'>,
): Records => {
  const { storage } = ports
  const store = createStore<ImportState>(() => ({ kind: 'none' }))
  let looked: readonly JournalEvent[] = []
  /** Counts the files, so that a slow one does not overtake the next. */
  let files = 0

  const show = (state: ImportState): void => store.setState(() => state, true)
  const readFile = async (file: ChosenFile, isCurrent: () => boolean): Promise<void> => {
    const fail = (message: string): void =>
      show({ kind: 'failed', fileName: file.name, message: `${message} Nothing was changed.` })
    if (file.size > largestRecord)
      return fail('This file is larger than 400 MB and cannot be read here in one piece.')
    const { readRecord, previewOf } = await import('./readRecord')
    const read = await readRecord(await file.read(), (done) => {
      if (isCurrent()) show({ kind: 'reading', fileName: file.name, done })
      return isCurrent()
    })
    if (!isCurrent()) return
    if (!read.ok) return fail(read.reason)
    const known = await storage.known(read.value.events)
    if (!isCurrent()) return
    if (!known.ok) return fail(known.reason)
    looked = read.value.events
    const preview = previewOf(read.value, known.value, storage.dayOf)
    show({ kind: 'preview', fileName: file.name, preview })
  }

  return {
    import: store,
    hearing: createHearing(ports),
    ...createReviews(storage, library, ports.wallClock, () => session.store.getState().events),
    saveTable: async () => {
      const text = await storage.tableText()
      if (!text.ok) return text
      const day = storage.dayOf(ports.wallClock())
      ports.saveFile(`passagework-repetitions-${day}.csv`, [text.value])
      return { ok: true, value: undefined }
    },
    look: async (file) => {
      const mine = ++files
      looked = []
      show({ kind: 'reading', fileName: file.name, done: 0 })
      await readFile(file, () => mine === files)
    },
    take: async () => {
      const now = store.getState()
      if (now.kind !== 'preview') return
      const { fileName } = now
      const of = now.preview.events
      show({ kind: 'importing', fileName, done: 0, of })
      const outcome = await storage.importAll(looked, (done) =>
        show({ kind: 'importing', fileName, done, of }),
      )
      looked = []
      if (outcome.ok) return show({ kind: 'done', fileName, outcome: outcome.value })
      show({
        kind: 'failed',
        fileName,
        message: `${outcome.reason} What had come in stays; take the same file again for the rest.`,
      })
    },
    forget: () => {
      files++
      looked = []
      show({ kind: 'none' })
    },
  }
}
