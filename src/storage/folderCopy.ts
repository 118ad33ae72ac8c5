import type { JournalEvent } from '@/journal/journal'
import { formatJournal, parseJournal } from '@/journal/lines'
import { mergeJournals } from '@/journal/merge'
import { formatPieceLine, mergePieceLines, type PieceLine } from '@/journal/pieceLines'
import { recordsText } from '@/text/records'
import type { FileState, Folder } from './folder'
import type { StoredEvents } from './storage'

/** A month of the record, by UTC, so that an event stands in the same file on every machine: '2026-11'. */
export type Month = string

export const monthAt = (epochMs: number): Month => new Date(epochMs).toISOString().slice(0, 7)

/** From its first moment to before its end. */
export const spanOfMonth = (month: Month): { readonly from: number; readonly to: number } => {
  const [year = 1970, number = 1] = month.split('-').map(Number)
  return { from: Date.UTC(year, number - 1), to: Date.UTC(year, number) }
}

/** Both ends included. */
export const monthsBetween = (from: number, to: number): readonly Month[] => {
  const months: Month[] = []
  for (let at = from; monthAt(at) <= monthAt(to); at = spanOfMonth(monthAt(at)).to)
    months.push(monthAt(at))
  return months
}

export const fileOf = (month: Month): string => `passagework-${month}.jsonl`

/** A file as it was left. */
export interface WrittenFile extends FileState {
  /** Events in it that are not in the record here. */
  readonly elsewhere: number
  /** It holds nothing but the record of here. */
  readonly isOurs: boolean
}

/** There was nothing to write. */
const noFile: WrittenFile = { size: 0, lastModified: 0, elsewhere: 0, isOurs: true }

/**
 * Brings one month's file up to date. `known` is how the file was left; as long as it is so, and holds
 * nothing but ours, it need not be read.
 */
export const writeMonth = async (
  folder: Folder,
  month: Month,
  own: StoredEvents,
  known: WrittenFile | undefined,
): Promise<WrittenFile> => {
  const lines = own.unread.map(({ record }) => JSON.stringify(record))
  const content = { events: own.events, pieces: [], lines }
  return (await writeUnion(folder, fileOf(month), content, known)) ?? noFile
}

/** Where the pieces stand, whatever the month. */
export const piecesFile = 'passagework-pieces.jsonl'

/** Adds to the file of the pieces; what stands there and was removed here stays there. */
export const writePieces = async (folder: Folder, pieces: readonly PieceLine[]): Promise<void> => {
  await writeUnion(folder, piecesFile, { events: [], pieces, lines: [] }, undefined)
}

interface Content {
  readonly events: readonly JournalEvent[]
  readonly pieces: readonly PieceLine[]
  /** Lines that cannot be read, as they stand. */
  readonly lines: readonly string[]
}

/**
 * What stands in a file that somebody else wrote is never lost: the file becomes the union of both, and
 * lines that cannot be read stay as they are. Nothing is written where there is nothing.
 */
const writeUnion = async (
  folder: Folder,
  file: string,
  own: Content,
  known: WrittenFile | undefined,
): Promise<WrittenFile | undefined> => {
  const there = await folder.state(file)
  if (own.events.length + own.pieces.length + own.lines.length === 0 && !there) return undefined
  const theirs = there && !(known?.isOurs && isSame(there, known)) ? await folder.read(file) : ''
  const { events, pieces, unread } = parseJournal(theirs)
  const ownIds = new Set<string>(own.events.map(({ id }) => id))
  const elsewhere = events.filter(({ id }) => !ownIds.has(id))
  const ownLines = new Set(own.lines)
  const lines = unread.map(({ text }) => text.trimEnd())
  const state = await writeWhole(folder, file, [
    ...partsOf(mergeJournals(own.events, elsewhere)),
    ...mergePieceLines(own.pieces, pieces).map(formatPieceLine),
    ...[...new Set([...ownLines, ...lines])].map((line) => `${line}\n`),
  ])
  const isOurs = elsewhere.length + pieces.length === 0 && lines.every((line) => ownLines.has(line))
  return { ...state, elsewhere: elsewhere.length, isOurs }
}

const writeWhole = async (
  folder: Folder,
  file: string,
  parts: readonly string[],
): Promise<FileState> => {
  const state = await folder.write(file, parts)
  const wanted = parts.reduce((sum, part) => sum + new TextEncoder().encode(part).length, 0)
  if (state.size !== wanted)
    throw new Error(recordsText.folder.problems.wrongSize(file, state.size, wanted))
  return state
}

const isSame = (a: FileState, b: FileState): boolean =>
  a.size === b.size && a.lastModified === b.lastModified

/** Events in one part of a file, some hundred thousand letters. */
const partSize = 500

const partsOf = (events: readonly JournalEvent[]): readonly string[] =>
  Array.from({ length: Math.ceil(events.length / partSize) }, (_, i) =>
    formatJournal(events.slice(i * partSize, (i + 1) * partSize)),
  )
