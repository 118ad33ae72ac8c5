import { createStore, type StoreApi } from 'zustand/vanilla'
import type { ImportPreview } from '@/journal/previewImport'
import type { ReadJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
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
  | { readonly kind: 'done'; readonly fileName: string; readonly outcome: Imported }
  /** `message` says what, why and what to do. */
  | { readonly kind: 'failed'; readonly fileName: string; readonly message: string }

/** What files would bring; of several, a line that cannot be read says in which it stands. */
export interface LookedAt extends ImportPreview {
  readonly unread: readonly (ImportPreview['unread'][number] & { readonly of?: string })[]
}

/** The record as a whole: what it says, and how it leaves and comes back as files. */
export interface Records extends Reviews, Copies {
  readonly import: StoreApi<ImportState>
  /** A take of the record, heard again. */
  readonly hearing: Hearing
  /** All repetitions as a table for a spreadsheet. */
  readonly saveTable: () => Promise<Result<void, string>>
  /** Reads one file or several and tells what they would bring; nothing is changed. */
  readonly look: (chosen: readonly ChosenFile[]) => Promise<void>
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
  const copies = createCopies(ports)
  let looked: readonly JournalEvent[] = []
  /** Counts the files, so that a slow one does not overtake the next. */
  let files = 0

  const show = (state: ImportState): void => store.setState(() => state, true)
  const readFiles = async (
    chosen: readonly ChosenFile[],
    fileName: string,
    isCurrent: () => boolean,
  ): Promise<void> => {
    const fail = (message: string, { name } = { name: fileName }): void =>
      show({ kind: 'failed', fileName: name, message: `${message} Nothing was changed.` })
    const { readRecord, previewOf } = await import('./readRecord')
    const events: JournalEvent[] = []
    const unread: (ReadJournal['unread'][number] & { readonly of?: string })[] = []
    for (const [i, file] of chosen.entries()) {
      if (file.size > largestRecord)
        return fail('This file is larger than 400 MB and cannot be read here in one piece.', file)
      const read = await readRecord(await file.read(), (done) => {
        if (isCurrent()) show({ kind: 'reading', fileName, done: (i + done) / chosen.length })
        return isCurrent()
      })
      if (!isCurrent()) return
      if (!read.ok) return fail(read.reason, file)
      for (const event of read.value.events) events.push(event)
      const of = chosen.length > 1 ? { of: file.name } : {}
      unread.push(...read.value.unread.map((line) => ({ ...line, ...of })))
    }
    const known = await storage.known(events)
    if (!isCurrent()) return
    if (!known.ok) return fail(known.reason)
    looked = events
    const preview = previewOf({ events, unread }, known.value, storage.dayOf)
    const named = preview.unread.map((line, i) => ({ ...unread[i], ...line }))
    show({ kind: 'preview', fileName, preview: { ...preview, unread: named } })
  }

  return {
    import: store,
    ...copies,
    hearing: createHearing(ports),
    ...createReviews(storage, library, ports.wallClock, () => session.store.getState().events),
    saveTable: async () => {
      const text = await storage.tableText()
      if (!text.ok) return text
      const day = storage.dayOf(ports.wallClock())
      ports.saveFile(`passagework-repetitions-${day}.csv`, [text.value])
      return { ok: true, value: undefined }
    },
    look: async (chosen) => {
      const mine = ++files
      looked = []
      const [first] = chosen
      if (!first) return
      const fileName = chosen.length === 1 ? first.name : `${chosen.length} files`
      show({ kind: 'reading', fileName, done: 0 })
      await readFiles(chosen, fileName, () => mine === files)
    },
    take: async () => {
      const now = store.getState()
      if (now.kind !== 'preview') return
      const { fileName } = now
      const of = now.preview.events
      show({ kind: 'importing', fileName, done: 0, of })
      await ports.folder.expect(looked)
      const outcome = await storage.importAll(looked, (done) =>
        show({ kind: 'importing', fileName, done, of }),
      )
      looked = []
      if (outcome.ok) {
        show({ kind: 'done', fileName, outcome: outcome.value })
        return copies.folder.write()
      }
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
