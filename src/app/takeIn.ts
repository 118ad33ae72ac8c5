import type { StoreApi } from 'zustand/vanilla'
import type { ReadJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import { mergePieceLines, type PieceLine, type PieceLineName } from '@/journal/pieceLines'
import type { PieceId } from '@/music/units'
import { recordsText } from '@/text/records'
import type { ChosenFile } from './library'
import type { Ports } from './ports'
import { previewOf, readRecord } from './readRecord'
import type { ImportState, KeptInFile, LookedAt, TakeIn } from './records'

/** What was read and waits for the person's word. */
interface Looked {
  readonly events: readonly JournalEvent[]
  readonly pieces: readonly PieceLine[]
}
const nothing: Looked = { events: [], pieces: [] }

/** What is done to take files of another record in; loaded when it is wanted. */
export const createTakeIn = (
  { storage, folder }: Pick<Ports, 'storage' | 'folder'>,
  store: StoreApi<ImportState>,
  /** Called with the pieces of which something has come in. */
  cameIn: (pieces: readonly PieceId[]) => Promise<void>,
): TakeIn => {
  let looked: Looked = nothing
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
    const pieces: PieceLine[] = []
    const unread: (ReadJournal['unread'][number] & { readonly of?: string })[] = []
    for (const [i, file] of chosen.entries()) {
      const read = await readRecord(file, (done) => {
        if (isCurrent()) show({ kind: 'reading', fileName, done: (i + done) / chosen.length })
        return isCurrent()
      })
      if (!isCurrent()) return
      if (!read.ok) return fail(read.reason, file)
      for (const event of read.value.events) events.push(event)
      pieces.push(...read.value.pieces)
      const of = chosen.length > 1 ? { of: file.name } : {}
      unread.push(...read.value.unread.map((line) => ({ ...line, ...of })))
    }
    const known = await storage.known(events)
    if (!isCurrent()) return
    if (!known.ok) return fail(known.reason)
    const here = await storage.pieceLines()
    if (!isCurrent()) return
    if (!here.ok) return fail(here.reason)
    looked = { events, pieces: mergePieceLines(pieces) }
    const kept = keptIn(looked.pieces, here.value)
    const preview = previewOf({ events, unread }, known.value, storage.dayOf)
    const named = preview.unread.map((line, i) => ({ ...unread[i], ...line }))
    show({ kind: 'preview', fileName, preview: { ...preview, unread: named, kept } })
  }

  return {
    look: async (chosen) => {
      const mine = ++files
      looked = nothing
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
      const { events, pieces } = looked
      looked = nothing
      const fail = (reason: string): void => {
        const message = recordsText.incoming.problems.half(reason)
        show({ kind: 'failed', fileName, message })
      }
      // The pieces first: what is practised finds its score.
      const taken = await storage.takePieceLines(pieces)
      if (!taken.ok) return fail(taken.reason)
      const came = [...new Set(taken.value.map(({ piece }) => piece))]
      await cameIn(came)
      await folder.expect(events)
      const outcome = await storage.importAll(events, (done) =>
        show({ kind: 'importing', fileName, done, of }),
      )
      if (!outcome.ok) return fail(outcome.reason)
      show({ kind: 'done', fileName, outcome: outcome.value, pieces: came.length })
      return folder.write()
    },
    forget: () => {
      files++
      looked = nothing
      show({ kind: 'none' })
    },
  }
}

/** Compared by their times: the newer holds. */
const keptIn = (lines: readonly PieceLine[], here: readonly PieceLineName[]): LookedAt['kept'] => {
  const count = (kind: PieceLine['kind']): KeptInFile => {
    const counts = { fresh: 0, newer: 0, known: 0 }
    for (const line of lines.filter((each) => each.kind === kind)) {
      const own = here.find((name) => name.kind === kind && name.piece === line.piece)
      counts[!own ? 'fresh' : own.atEpochMs < line.atEpochMs ? 'newer' : 'known']++
    }
    return counts
  }
  return {
    pieceFile: count('pieceFile'),
    pieceHands: count('pieceHands'),
    pieceSpots: count('pieceSpots'),
  }
}
