import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import { decodeEvent } from '@/journal/decode'
import type { JournalEvent } from '@/journal/journal'
import { compareEvents, mergeJournals, sameEvent } from '@/journal/merge'
import { failed, ok } from '@/music/result'
import { problemOf, type StorageProblem } from './problem'
import { isIn, newest } from './query'
import type { PieceId } from '@/music/units'
import type { EventQuery, PieceListing, Storage, Stored, StoredEvents } from './storage'

/** Raised with each change of the stores; `upgrade` then takes every older one along. */
const databaseVersion = 1

interface Schema extends DBSchema {
  /** Records as written, perhaps by another version: decoded at each reading. */
  events: {
    key: string
    value: unknown
    indexes: { bySession: string; byPiece: string; byChunk: string; byTime: number }
  }
  pieces: { key: string; value: PieceListing }
  /** Apart from `pieces`, so that listing them reads no file. */
  files: { key: string; value: Uint8Array }
  settings: { key: string; value: unknown }
}

type Database = IDBPDatabase<Schema>

/** Opens the database of this page's origin, making it where there is none. */
export const openStorage = async (name = 'passagework'): Stored<Storage> => {
  const connection = connect(name)
  const opened = await connection.database()
  return opened.ok ? ok(storageOver(connection)) : opened
}

interface Connection {
  /** The open database; one that the browser took away is opened again. */
  readonly database: () => Stored<Database>
  readonly close: () => void
  readonly watchLoss: (see: (problem: StorageProblem) => void) => void
}

const connect = (name: string): Connection => {
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
    close: () => letGo({ kind: 'failed', message: 'it is closed' }),
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

const upgrade = (database: Database, from: number): void => {
  if (from >= 1) return
  const events = database.createObjectStore('events', { keyPath: 'id' })
  events.createIndex('bySession', 'session')
  events.createIndex('byPiece', 'piece')
  events.createIndex('byChunk', 'chunk')
  events.createIndex('byTime', 'atEpochMs')
  database.createObjectStore('pieces', { keyPath: 'id' })
  database.createObjectStore('files')
  database.createObjectStore('settings')
}

const storageOver = (connection: Connection): Storage => {
  const unsaved = new Map<string, JournalEvent>()
  const watchers = new Set<(problem: StorageProblem | undefined) => void>()
  let problem: StorageProblem | undefined

  const tell = (now: StorageProblem | undefined): void => {
    if (now?.kind === problem?.kind) return
    problem = now
    for (const see of watchers) see(now)
  }
  connection.watchLoss(tell)

  /** Runs on the open database; whatever it throws becomes a problem. */
  const within = async <T>(run: (database: Database) => Promise<T>): Stored<T> => {
    const opened = await connection.database()
    if (!opened.ok) return opened
    try {
      return ok(await run(opened.value))
    } catch (error) {
      return failed(problemOf(error))
    }
  }

  return {
    append: async (event) => {
      unsaved.set(event.id, event)
      const pending = [...unsaved.values()]
      const written = await within((database) => addEvents(database, pending))
      if (!written.ok) {
        tell(written.reason)
        return written
      }
      for (const { id } of pending) unsaved.delete(id)
      tell(undefined)
      return written.value.includes(event.id)
        ? failed({ kind: 'idTaken', id: event.id })
        : ok(undefined)
    },
    events: async (query) => {
      const records = await within((database) => readRecords(database, query))
      if (!records.ok) return records
      const { events, unread } = decodeRecords(records.value)
      const all = mergeJournals(events, [...unsaved.values()].filter(isIn(query)))
      return ok({ events: newest(all, query), unread })
    },
    unsaved: () => [...unsaved.values()].toSorted(compareEvents),
    putPiece: ({ bytes, ...listing }) =>
      within(async (database) => {
        const change = database.transaction(['pieces', 'files'], 'readwrite', strict)
        await Promise.all([
          change.objectStore('pieces').put(listing),
          change.objectStore('files').put(bytes, listing.id),
          change.done,
        ])
      }),
    removePiece: (id) =>
      within(async (database) => {
        const change = database.transaction(['pieces', 'files'], 'readwrite', strict)
        await Promise.all([
          change.objectStore('pieces').delete(id),
          change.objectStore('files').delete(id),
          change.done,
        ])
      }),
    piece: (id) =>
      within(async (database) => {
        const reading = database.transaction(['pieces', 'files'])
        const listing = await reading.objectStore('pieces').get(id)
        const bytes = await reading.objectStore('files').get(id)
        return listing && bytes && { ...listing, bytes }
      }),
    pieces: () =>
      within(async (database) =>
        (await database.getAll('pieces')).toSorted((a, b) => a.addedAtEpochMs - b.addedAtEpochMs),
      ),
    saveHands: (id, corrections) =>
      within(async (database) => {
        const change = database.transaction('settings', 'readwrite', strict)
        await Promise.all([change.store.put(corrections, handsOf(id)), change.done])
      }),
    hands: (id) => within((database) => database.get('settings', handsOf(id))),
    saveSettings: (settings) =>
      within(async (database) => {
        await database.put('settings', settings, 'settings')
      }),
    settings: () => within((database) => database.get('settings', 'settings')),
    watch: (see) => {
      watchers.add(see)
      see(problem)
      return () => watchers.delete(see)
    },
    close: connection.close,
  }
}

/** The hands of a piece are settings of it: kept whether its file is stored here, shipped, or removed. */
const handsOf = (id: PieceId): string => `hands ${id}`

/** Durable means that the disk has it, not only the browser's memory. */
const strict = { durability: 'strict' } as const

/** Adds events in one transaction; gives the ids under which another event stands already. */
const addEvents = async (
  database: Database,
  events: readonly JournalEvent[],
): Promise<readonly string[]> => {
  const change = database.transaction('events', 'readwrite', strict)
  const adding = Promise.all(
    events.map(async (event) => {
      const known = await change.store.get(event.id)
      if (known === undefined) await change.store.add(event)
      return known === undefined || isThis(known, event) ? [] : [event.id]
    }),
  )
  const [taken] = await Promise.all([adding, change.done])
  return taken.flat()
}

/** The record may be of an older version. */
const isThis = (record: unknown, event: JournalEvent): boolean => {
  const known = decodeEvent(record)
  return known.ok && sameEvent(known.value, event)
}

const readRecords = async (database: Database, query: EventQuery): Promise<readonly unknown[]> => {
  switch (query.kind) {
    case 'all':
      return database.getAll('events')
    case 'session':
      return database.getAllFromIndex('events', 'bySession', query.session)
    case 'piece':
      return database.getAllFromIndex('events', 'byPiece', query.piece)
    case 'chunk':
      return database.getAllFromIndex('events', 'byChunk', query.chunk)
    case 'latest':
      return readLatest(database, query.count)
  }
}

/** Backwards from the newest, so that the length of the journal does not matter. */
const readLatest = async (database: Database, count: number): Promise<readonly unknown[]> => {
  const records: unknown[] = []
  const index = database.transaction('events').store.index('byTime')
  let cursor = await index.openCursor(null, 'prev')
  while (cursor && records.length < count) {
    records.push(cursor.value)
    cursor = await cursor.continue()
  }
  return records
}

const decodeRecords = (records: readonly unknown[]): StoredEvents => {
  const events: JournalEvent[] = []
  const unread: StoredEvents['unread'][number][] = []
  for (const record of records) {
    const event = decodeEvent(record)
    if (event.ok) events.push(event.value)
    else unread.push({ id: idOf(record), reason: event.reason })
  }
  return { events, unread }
}

const idOf = (record: unknown): string =>
  typeof record === 'object' && record !== null && 'id' in record ? String(record.id) : ''
