import type { StoreApi } from 'zustand/vanilla'
import type { ReadJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import { recordsText } from '@/text/records'
import type { ChosenFile } from './library'
import type { Ports } from './ports'
import { previewOf, readRecord } from './readRecord'
import type { ImportState, TakeIn } from './records'

/** What is done to take files of another record in; loaded when it is wanted. */
export const createTakeIn = (
  { storage, folder }: Pick<Ports, 'storage' | 'folder'>,
  store: StoreApi<ImportState>,
): TakeIn => {
  let looked: readonly JournalEvent[] = []
  /** Counts the files, so that a slow one does not overtake the next. */
  let files = 0

  const show = (state: ImportState): void => store.setState(() => state, true)
  const readFiles = async (
    chosen: readonly ChosenFile[],
    fileName: string,
    isCurrent: () => boolean,
  ): Promise<void> => {
    const fail = (reason: string, { name } = { name: fileName }): void => {
      const message = recordsText.incoming.problems.nothingChanged(reason)
      show({ kind: 'failed', fileName: name, message })
    }
    const events: JournalEvent[] = []
    const unread: (ReadJournal['unread'][number] & { readonly of?: string })[] = []
    for (const [i, file] of chosen.entries()) {
      const read = await readRecord(file, (done) => {
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
    look: async (chosen) => {
      const mine = ++files
      looked = []
      const [first] = chosen
      if (!first) return
      const fileName =
        chosen.length === 1 ? first.name : recordsText.incoming.several(chosen.length)
      show({ kind: 'reading', fileName, done: 0 })
      await readFiles(chosen, fileName, () => mine === files)
    },
    take: async () => {
      const now = store.getState()
      if (now.kind !== 'preview') return
      const { fileName } = now
      const of = now.preview.events
      show({ kind: 'importing', fileName, done: 0, of })
      await folder.expect(looked)
      const outcome = await storage.importAll(looked, (done) =>
        show({ kind: 'importing', fileName, done, of }),
      )
      looked = []
      if (outcome.ok) {
        show({ kind: 'done', fileName, outcome: outcome.value })
        return folder.write()
      }
      const message = recordsText.incoming.problems.half(outcome.reason)
      show({ kind: 'failed', fileName, message })
    },
    forget: () => {
      files++
      looked = []
      show({ kind: 'none' })
    },
  }
}
