import { formatBase64, parseBase64 } from '@/journal/base64'
import {
  decodePieceLine,
  holdsBefore,
  pieceLineVersion,
  type PieceFile,
  type PieceLine,
  type PieceLineName,
} from '@/journal/pieceLines'
import { pieceId, type PieceId } from '@/music/units'
import { strict, type Database, type KeptPiece } from './connection'
import type { StoredPiece } from './storage'

/** What is kept of pieces, as lines of a saved record, and back. */

/** A word of the person, and since when it stands. */
export interface Said {
  readonly saidAtEpochMs: number
  readonly value: unknown
}

/** As it was stored; before moments were kept with it, it has stood always. */
export const asSaid = (stored: unknown): Said =>
  typeof stored === 'object' &&
  stored !== null &&
  'value' in stored &&
  'saidAtEpochMs' in stored &&
  typeof stored.saidAtEpochMs === 'number'
    ? { saidAtEpochMs: stored.saidAtEpochMs, value: stored.value }
    : { saidAtEpochMs: 0, value: stored }

export const fileLine = (
  { id, title, composer, fileName, parts, carried, addedAtEpochMs, bytes }: StoredPiece,
  atEpochMs: number,
): PieceFile => ({
  v: pieceLineVersion,
  kind: 'pieceFile',
  piece: id,
  atEpochMs,
  title,
  ...(composer === undefined ? {} : { composer }),
  fileName,
  ...(parts === undefined ? {} : { parts }),
  ...(carried === undefined ? {} : { carried }),
  addedAtEpochMs,
  bytes: formatBase64(bytes),
})

export const pieceOf = (line: PieceFile): StoredPiece => {
  const { v: _v, kind: _kind, piece: id, atEpochMs: _at, bytes, ...listing } = line
  return { ...listing, id, bytes: Uint8Array.from(parseBase64(bytes) ?? []) }
}

/** What was said, as a line; what is none is left out, as it is where it is read. */
export const saidLine = (
  kind: SaidKind,
  piece: PieceId,
  { saidAtEpochMs, value }: Said,
): PieceLine | undefined => {
  const content = kind === 'pieceHands' ? { corrections: value } : asWords(value)
  const line = decodePieceLine({
    v: pieceLineVersion,
    kind,
    piece,
    atEpochMs: saidAtEpochMs,
    ...content,
  })
  return line.ok ? line.value : undefined
}

export type SaidKind = Exclude<PieceLine['kind'], 'pieceFile'>

const asWords = (value: unknown): object =>
  typeof value === 'object' && value !== null ? value : {}

export const valueOf = (line: Exclude<PieceLine, PieceFile>): unknown =>
  line.kind === 'pieceHands' ? line.corrections : { said: line.said, order: line.order }

/** Hands and hard spots of a piece are settings of it: kept whether its file is stored here, shipped, or removed. */
export const keyOfSaid = (kind: SaidKind, id: PieceId): string => `${prefixes[kind]}${id}`
const prefixes = { pieceHands: 'hands ', pieceSpots: 'spots ' } as const
const saidKinds = ['pieceHands', 'pieceSpots'] as const

/** Which lines there are, without the files. */
export const readNames = async (database: Database): Promise<readonly PieceLineName[]> => {
  const reading = database.transaction(['pieces', 'settings'])
  const files = (await reading.objectStore('pieces').getAll()).map((row) => ({
    kind: 'pieceFile' as const,
    piece: row.id,
    atEpochMs: keptSince(row),
  }))
  const settings = reading.objectStore('settings')
  const said: PieceLineName[] = []
  for (const kind of saidKinds) {
    const prefix = prefixes[kind]
    const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`)
    const [keys, values] = await Promise.all([settings.getAllKeys(range), settings.getAll(range)])
    for (const [i, key] of keys.entries()) {
      const piece = pieceId(key.slice(prefix.length))
      said.push({ kind, piece, atEpochMs: asSaid(values[i]).saidAtEpochMs })
    }
  }
  return [...files, ...said]
}

export const keptSince = ({ keptAtEpochMs, addedAtEpochMs }: KeptPiece): number =>
  keptAtEpochMs ?? addedAtEpochMs

/** The stores in which pieces are, in whatever transaction they are read. */
interface Stores {
  readonly pieces: { readonly get: (id: PieceId) => Promise<KeptPiece | undefined> }
  readonly files: { readonly get: (id: PieceId) => Promise<Uint8Array | undefined> }
  readonly settings: { readonly get: (key: string) => Promise<unknown> }
}

export const readLine = (
  database: Database,
  name: Pick<PieceLineName, 'kind' | 'piece'>,
): Promise<PieceLine | undefined> => {
  const reading = database.transaction(['pieces', 'files', 'settings'])
  return lineIn(
    {
      pieces: reading.objectStore('pieces'),
      files: reading.objectStore('files'),
      settings: reading.objectStore('settings'),
    },
    name,
  )
}

const lineIn = async (
  { pieces, files, settings }: Stores,
  { kind, piece }: Pick<PieceLineName, 'kind' | 'piece'>,
): Promise<PieceLine | undefined> => {
  if (kind !== 'pieceFile') {
    const stored = await settings.get(keyOfSaid(kind, piece))
    return stored === undefined ? undefined : saidLine(kind, piece, asSaid(stored))
  }
  const row = await pieces.get(piece)
  const bytes = await files.get(piece)
  if (!row || !bytes) return undefined
  const { keptAtEpochMs: _at, ...listing } = row
  return fileLine({ ...listing, bytes }, keptSince(row))
}

/** Takes in what holds before that of here, in one change; tells which lines came in. */
export const takeLines = async (
  database: Database,
  lines: readonly PieceLine[],
): Promise<readonly PieceLine[]> => {
  const change = database.transaction(['pieces', 'files', 'settings'], 'readwrite', strict)
  const pieces = change.objectStore('pieces')
  const files = change.objectStore('files')
  const settings = change.objectStore('settings')
  const taking = async (): Promise<readonly PieceLine[]> => {
    const taken: PieceLine[] = []
    for (const line of lines) {
      const own = await lineIn({ pieces, files, settings }, line)
      if (own && !holdsBefore(line, own)) continue
      taken.push(line)
      if (line.kind === 'pieceFile') {
        const { bytes, ...listing } = pieceOf(line)
        await pieces.put({ ...listing, keptAtEpochMs: line.atEpochMs })
        await files.put(bytes, line.piece)
      } else {
        const said: Said = { saidAtEpochMs: line.atEpochMs, value: valueOf(line) }
        await settings.put(said, keyOfSaid(line.kind, line.piece))
      }
    }
    return taken
  }
  const [taken] = await Promise.all([taking(), change.done])
  return taken
}
