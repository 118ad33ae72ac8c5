import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb'
import type { PackedBlock } from '@/journal/block'
import type { DayTotal, ChunkDay, PieceDay } from '@/journal/sums'
import { failed, ok } from '@/music/result'
import { storageText } from '@/text/storage'
import { problemOf, type StorageProblem } from './problem'
import type { PieceListing, Stored } from './storage'

/** Raised with each change of the stores; `upgrade` then takes every older one along. */
const databaseVersion = 2

/** The sums of a month's days. */
export interface MonthSums {
  readonly totals: readonly DayTotal[]
  readonly pieces: readonly PieceDay[]
}

/** What the kept sums are worth. */
export interface SumsState {
  /** By what rule they were counted; another rule, and they are counted anew. Empty while that is done. */
  readonly rule: string
  /** Raised with each change of blocks or sums, so that what was read before is not written after. */
  readonly generation: number
}

/** A piece as it stands in the database. */
export interface KeptPiece extends PieceListing {
  /** Since when it stands so; absent where that is when it was added. */
  readonly keptAtEpochMs?: number
}

interface Schema extends DBSchema {
  /** The tail: records as written, perhaps by another version: decoded at each reading. */
  events: {
    key: string
    value: unknown
    indexes: { bySession: string; byPiece: string; byChunk: string; byTime: number }
  }
  /** Older events, a thousand in one record. */
  blocks: {
    key: number
    value: PackedBlock
    indexes: {
      byFrom: number
      byTo: number
      bySession: string
      byPiece: string
      byChunk: string
    }
  }
  /** Sums of the days that are in blocks, by month. */
  monthSums: { key: string; value: MonthSums }
  /** The same for each chunk, by piece and month. */
  chunkSums: { key: [piece: string, month: string]; value: readonly ChunkDay[] }
  sumsState: { key: string; value: SumsState }
  pieces: { key: string; value: KeptPiece }
  /** Apart from `pieces`, so that listing them reads no file. */
  files: { key: string; value: Uint8Array }
  settings: { key: string; value: unknown }
}

export type Database = IDBPDatabase<Schema>
export type StoreName = keyof Pick<
  Schema,
  'events' | 'blocks' | 'monthSums' | 'chunkSums' | 'sumsState' | 'pieces' | 'files' | 'settings'
>
export type Change<Names extends StoreName> = IDBPTransaction<Schema, Names[], 'readwrite'>

/** Durable means that the disk has it, not only the browser's memory. */
export const strict = { durability: 'strict' } as const

export interface Connection {
  /** The open database; one that the browser took away is opened again. */
  readonly database: () => Stored<Database>
  readonly close: () => void
  readonly watchLoss: (see: (problem: StorageProblem) => void) => void
}

export const connect = (name: string): Connection => {
  let open: Stored<Database> | undefined
  let lost: StorageProblem | undefined
  let seeLoss: (problem: StorageProblem) => void = () => undefined

  const letGo = (problem: StorageProblem): void => {
    void open?.then((opened) => opened.ok && opened.value.close())
    lost = problem
  }
  const openOnce = async (): Stored<Database> => {
    const opened = await openDatabase(name, {
      blocking: () => {
        letGo({ kind: 'replaced' })
        seeLoss({ kind: 'replaced' })
      },
      terminated: () => {
        open = undefined
      },
    })
    if (!opened.ok) open = undefined
    return opened
  }

  return {
    database: () => {
      if (lost) return Promise.resolve(failed(lost))
      open ??= openOnce()
      return open
    },
    close: () => letGo({ kind: 'failed', message: storageText.closed }),
    watchLoss: (see) => {
      seeLoss = see
    },
  }
}

interface Loss {
  /** Another tab wants to upgrade: let go, or it would be blocked by this one. */
  readonly blocking: () => void
  /** The browser closed the database, as when the person clears site data: it can be opened again. */
  readonly terminated: () => void
}

const openDatabase = (name: string, loss: Loss): Stored<Database> =>
  new Promise((resolve) => {
    let waiting = true
    const give: typeof resolve = (opened) => {
      waiting = false
      resolve(opened)
    }
    // Another tab holds an older version: practice must not wait for the person to close it.
    const blocked = (): void => give(failed({ kind: 'blocked' }))
    const refuse = (error: unknown): void => give(failed(openingProblem(error)))
    try {
      openDB<Schema>(name, databaseVersion, { upgrade, blocked, ...loss }).then(
        (database) => (waiting ? give(ok(database)) : database.close()),
        refuse,
      )
    } catch (error) {
      refuse(error)
    }
  })

/** Browsers name it in many ways when they offer no database. */
const openingProblem = (error: unknown): StorageProblem => {
  const problem = problemOf(error)
  return problem.kind === 'failed' ? { kind: 'unavailable', message: problem.message } : problem
}

/** Nothing is rewritten: what version 1 stored is the tail of version 2, and is packed like any other. */
const upgrade = (database: Database, from: number): void => {
  if (from < 1) {
    const events = database.createObjectStore('events', { keyPath: 'id' })
    events.createIndex('bySession', 'session')
    events.createIndex('byPiece', 'piece')
    events.createIndex('byChunk', 'chunk')
    events.createIndex('byTime', 'atEpochMs')
    database.createObjectStore('pieces', { keyPath: 'id' })
    database.createObjectStore('files')
    database.createObjectStore('settings')
  }
  if (from < 2) {
    const blocks = database.createObjectStore('blocks', { autoIncrement: true })
    blocks.createIndex('byFrom', 'from')
    blocks.createIndex('byTo', 'to')
    blocks.createIndex('bySession', 'sessions', { multiEntry: true })
    blocks.createIndex('byPiece', 'pieces', { multiEntry: true })
    blocks.createIndex('byChunk', 'chunks', { multiEntry: true })
    database.createObjectStore('monthSums')
    database.createObjectStore('chunkSums')
    database.createObjectStore('sumsState')
  }
}
