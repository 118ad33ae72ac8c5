import { canChooseFolder, chooseFolder, folderOf, type Folder } from './folder'
import {
  monthAt,
  monthsBetween,
  spanOfMonth,
  writeMonth,
  writePieces,
  type Month,
  type WrittenFile,
} from './folderCopy'
import { explainFolderProblem } from './folderProblem'
import type { JournalEvent } from '@/journal/journal'
import type { PieceLine } from '@/journal/pieceLines'
import type { Result } from '@/music/result'
import { explainStorageProblem, type StorageProblem } from './problem'
import type { Storage } from './storage'

export interface KeptFolder {
  readonly name: string
  readonly writtenAtEpochMs?: number | undefined
  /** Events in its files that are not in the record here. */
  readonly elsewhere?: number | undefined
}

export type FolderState =
  | { readonly kind: 'unsupported' | 'none' }
  | ({ readonly kind: 'asks' | 'ready' } & KeptFolder)
  | ({ readonly kind: 'writing'; readonly done: number; readonly of: number } & KeptFolder)
  | ({ readonly kind: 'failed'; readonly message: string } & KeptFolder)

/**
 * Keeps a second copy of the record in a folder of the person's own, a file for each month. After the
 * first time only months are written in which something happened since, or to which an import added.
 */
export interface FolderKeeper {
  readonly watch: (see: (state: FolderState) => void) => () => void
  readonly choose: () => Promise<void>
  readonly allow: () => Promise<void>
  readonly write: () => Promise<void>
  /** These events are about to come in: the files of their months are to be written, whatever happens. */
  readonly expect: (events: readonly JournalEvent[]) => Promise<void>
  readonly stop: () => Promise<void>
}

/** What stands in the database of it. */
interface Kept {
  readonly handle: unknown
  /** When the last writing began that came to its end. */
  readonly writtenAtEpochMs?: number
  /** How each month's file was left; one that is not here is to be written. */
  readonly files: Readonly<Partial<Record<Month, WrittenFile>>>
  /** Months that are to be written whatever the clock says. */
  readonly expected: readonly Month[]
  /** Which pieces stand there, and since when they stand so. */
  readonly pieces?: string
}

export interface FolderWorld {
  readonly now: () => number
  /** One at a time, whatever the number of tabs. */
  readonly alone: (run: () => Promise<void>) => Promise<void>
  readonly supported?: boolean
  readonly choose?: () => Promise<Folder | undefined>
  readonly open?: (handle: unknown) => Folder | undefined
}

/** What was stored while the last writing began may bear a time a little before it. */
const justBeforeMs = 60_000
/** The clock may have been set a little: so far back the months are written once more. */
const marginMs = 2 * 86_400_000

export const createFolderKeeper = (
  storage: Storage,
  {
    now,
    alone,
    supported = canChooseFolder(),
    choose = chooseFolder,
    open = folderOf,
  }: FolderWorld,
): FolderKeeper => {
  const watchers = new Set<(state: FolderState) => void>()
  let state: FolderState = { kind: supported ? 'none' : 'unsupported' }
  const show = (next: FolderState): void => {
    state = next
    for (const see of watchers) see(next)
  }

  const readKept = async (): Promise<{ kept: Kept; folder: Folder } | undefined> => {
    const stored = await storage.aside('folder')
    const kept = stored.ok ? decodeKept(stored.value) : undefined
    const folder = kept && open(kept.handle)
    return kept && folder && { kept, folder }
  }
  const wordsOf = ({ name }: Folder, { writtenAtEpochMs, files }: Kept): KeptFolder => ({
    name,
    writtenAtEpochMs,
    elsewhere: Object.values(files).reduce((sum, file) => sum + (file?.elsewhere ?? 0), 0),
  })

  /** The months that hold something that stands in no file yet. */
  const monthsToWrite = async ({
    writtenAtEpochMs,
    files,
    expected,
  }: Kept): Promise<readonly Month[]> => {
    const first = value(await storage.firstAt())
    if (first === undefined) return []
    const all = monthsBetween(first, Math.max(first, now()))
    if (writtenAtEpochMs === undefined) return all
    const [newest] = value(await storage.events({ kind: 'latest', count: 1 })).events
    const isNew = newest !== undefined && newest.atEpochMs > writtenAtEpochMs - justBeforeMs
    const since = monthAt(writtenAtEpochMs - marginMs)
    return all.filter(
      (month) =>
        files[month] === undefined || expected.includes(month) || (isNew && month >= since),
    )
  }

  /** Writes all of them where one is new or another than it was: they are few, and read one by one. */
  const writeNewPieces = async (folder: Folder, { pieces = '' }: Kept): Promise<string> => {
    const names = value(await storage.pieceLines())
    const now = names
      .map(({ kind, piece, atEpochMs }) => `${kind} ${piece} ${atEpochMs}`)
      .toSorted()
      .join()
    if (now === pieces) return pieces
    const lines: PieceLine[] = []
    for (const name of names) {
      const line = value(await storage.pieceLine(name))
      if (line) lines.push(line)
    }
    await writePieces(folder, lines)
    return now
  }

  const writeAll = async (): Promise<void> => {
    const found = await readKept()
    if (!found) return
    const { folder } = found
    let { kept } = found
    const begun = now()
    try {
      if ((await folder.permission()) !== 'granted')
        return show({ kind: 'asks', ...wordsOf(folder, kept) })
      const months = await monthsToWrite(kept)
      for (const [done, month] of months.entries()) {
        show({ kind: 'writing', done, of: months.length, ...wordsOf(folder, kept) })
        const own = value(await storage.events({ kind: 'time', ...spanOfMonth(month) }))
        const written = await writeMonth(folder, month, own, kept.files[month])
        kept = { ...kept, files: { ...kept.files, [month]: written } }
      }
      const pieces = await writeNewPieces(folder, kept)
      if (months.length > 0 || pieces !== (kept.pieces ?? '')) {
        kept = { ...kept, writtenAtEpochMs: begun, expected: [], pieces }
        value(await storage.saveAside('folder', kept))
      }
      show({ kind: 'ready', ...wordsOf(folder, kept) })
    } catch (error) {
      show({ kind: 'failed', message: explainFolderProblem(error), ...wordsOf(folder, kept) })
    }
  }
  const write = (): Promise<void> => alone(writeAll)

  return {
    watch: (see) => {
      watchers.add(see)
      see(state)
      return () => watchers.delete(see)
    },
    choose: async () => {
      try {
        const folder = await choose()
        if (!folder) return
        await alone(async () => {
          value(
            await storage.saveAside('folder', {
              handle: folder.handle,
              files: {},
              expected: [],
            } satisfies Kept),
          )
          await writeAll()
        })
      } catch (error) {
        show({ kind: 'failed', name: '', message: explainFolderProblem(error) })
      }
    },
    allow: async () => {
      const found = await readKept()
      if (!found) return
      if ((await found.folder.ask()) === 'granted') return write()
      show({ kind: 'asks', ...wordsOf(found.folder, found.kept) })
    },
    write,
    expect: (events) =>
      alone(async () => {
        const found = await readKept()
        if (!found) return
        const { kept } = found
        const months = events.map(({ atEpochMs }) => monthAt(atEpochMs))
        const expected = [...new Set([...kept.expected, ...months])]
        await storage.saveAside('folder', { ...kept, expected } satisfies Kept)
      }),
    stop: () =>
      alone(async () => {
        await storage.saveAside('folder', undefined)
        show({ kind: supported ? 'none' : 'unsupported' })
      }),
  }
}

const value = <T>(result: Result<T, StorageProblem>): T => {
  if (!result.ok) throw new Error(explainStorageProblem(result.reason))
  return result.value
}

/** Written by this file alone, perhaps by an older version of it: what is odd is written anew. */
const decodeKept = (stored: unknown): Kept | undefined => {
  if (typeof stored !== 'object' || stored === null || !('handle' in stored)) return undefined
  const { handle } = stored
  const writtenAtEpochMs = 'writtenAtEpochMs' in stored ? stored.writtenAtEpochMs : undefined
  const files = 'files' in stored && typeof stored.files === 'object' ? stored.files : undefined
  const known = Object.entries(files ?? {}).filter(([, file]) => isWrittenFile(file))
  return {
    handle,
    ...(typeof writtenAtEpochMs === 'number' ? { writtenAtEpochMs } : {}),
    files: Object.fromEntries(known),
    expected: strings('expected' in stored ? stored.expected : undefined),
    ...('pieces' in stored && typeof stored.pieces === 'string' ? { pieces: stored.pieces } : {}),
  }
}

const strings = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((each) => typeof each === 'string') : []

const isWrittenFile = (file: unknown): file is WrittenFile =>
  typeof file === 'object' &&
  file !== null &&
  'size' in file &&
  'lastModified' in file &&
  'elsewhere' in file &&
  'isOurs' in file
