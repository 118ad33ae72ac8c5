import type { JournalEvent } from '@/journal/journal'
import { compareEvents, mergeJournals } from '@/journal/merge'
import { failed, ok } from '@/music/result'
import type { PieceId } from '@/music/units'
import { connect, strict, type Connection, type Database, type KeptPiece } from './connection'
import { localDays, type DayRule } from './days'
import { addEvents, readEvents, readFirstAt, readInParts, type Added } from './events'
import { importEvents, knownIds } from './importEvents'
import { watchOtherTabs } from './otherTabs'
import { packOldDays, readState, usualBlockSize } from './packing'
import {
  asSaid,
  keyOfSaid,
  readLine,
  readNames,
  takeLines,
  type Said,
  type SaidKind,
} from './pieceLines'
import { problemOf, type StorageProblem } from './problem'
import { isIn, newest } from './query'
import type { PieceListing, Storage, Stored } from './storage'
import { readChunkSums, readSums } from './sums'

/** Opens the database of this page's origin, making it where there is none. */
export const openStorage = async (
  name = 'passagework',
  days: DayRule = localDays(),
  blockSize: number = usualBlockSize,
): Stored<Storage> => {
  const connection = connect(name)
  const opened = await connection.database()
  return opened.ok ? ok(storageOver(name, connection, days, blockSize)) : opened
}

/** What waits for room on the disk is tried again so often, also while nobody plays. */
const retryMs = 10_000

const storageOver = (
  name: string,
  connection: Connection,
  days: DayRule,
  blockSize: number,
): Storage => {
  const unsaved = new Map<string, JournalEvent>()
  const watchers = new Set<(problem: StorageProblem | undefined) => void>()
  const others = watchOtherTabs(name)
  let problem: StorageProblem | undefined
  let retry: ReturnType<typeof setTimeout> | undefined

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

  const writeUnsaved = async (): Stored<Added> => {
    const pending = [...unsaved.values()]
    const written = await within((database) => addEvents(database, pending))
    if (!written.ok) {
      tell(written.reason)
      retry ??= setTimeout(() => {
        retry = undefined
        if (unsaved.size > 0) void writeUnsaved()
      }, retryMs)
      return written
    }
    for (const event of pending) if (unsaved.delete(event.id)) others.tell(event)
    tell(undefined)
    return written
  }

  const say = (kind: SaidKind, id: PieceId, value: unknown): Stored<void> =>
    within(async (database) => {
      const word: Said = { saidAtEpochMs: Date.now(), value }
      const change = database.transaction('settings', 'readwrite', strict)
      await Promise.all([change.store.put(word, keyOfSaid(kind, id)), change.done])
    })
  const said = (kind: SaidKind, id: PieceId): Stored<unknown> =>
    within(async (database) => asSaid(await database.get('settings', keyOfSaid(kind, id))).value)

  return {
    append: async (event) => {
      unsaved.set(event.id, event)
      const written = await writeUnsaved()
      if (!written.ok) return written
      return written.value.taken.includes(event.id)
        ? failed({ kind: 'idTaken', id: event.id })
        : ok(undefined)
    },
    events: async (query) => {
      const stored = await within((database) => readEvents(database, query))
      if (!stored.ok) return stored
      const { events, unread } = stored.value
      const all = mergeJournals(events, [...unsaved.values()].filter(isIn(query)))
      return ok({ events: newest(all, query), unread })
    },
    eventsInParts: async (see) => {
      const read = await within((database) => readInParts(database, see))
      if (unsaved.size > 0) see({ events: [...unsaved.values()], unread: [] })
      return read
    },
    known: (events) =>
      within(async (database) => {
        const known = new Set(await knownIds(database, events))
        return new Set(events.map(({ id }) => id).filter((id) => known.has(id) || unsaved.has(id)))
      }),
    importAll: (events, progress = () => undefined) =>
      within((database) => importEvents(database, days, blockSize, events, progress)),
    pack: () => within((database) => packOldDays(database, days, blockSize)),
    sums: () =>
      within(async (database) => {
        await readState(database, days)
        return readSums(database, days, [...unsaved.values()])
      }),
    chunkSums: (piece) =>
      within(async (database) => {
        await readState(database, days)
        return readChunkSums(database, days, [...unsaved.values()], piece)
      }),
    firstAt: () =>
      within(async (database) => {
        const stored = await readFirstAt(database)
        const times = [...unsaved.values()].map(({ atEpochMs }) => atEpochMs)
        return [...(stored === undefined ? [] : [stored]), ...times].toSorted((a, b) => a - b)[0]
      }),
    unsaved: () => [...unsaved.values()].toSorted(compareEvents),
    putPiece: ({ bytes, ...listing }) =>
      within(async (database) => {
        const change = database.transaction(['pieces', 'files'], 'readwrite', strict)
        await Promise.all([
          change.objectStore('pieces').put({ ...listing, keptAtEpochMs: Date.now() }),
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
        const kept = await reading.objectStore('pieces').get(id)
        const bytes = await reading.objectStore('files').get(id)
        return kept && bytes && { ...listingOf(kept), bytes }
      }),
    pieces: () =>
      within(async (database) =>
        (await database.getAll('pieces'))
          .map(listingOf)
          .toSorted((a, b) => a.addedAtEpochMs - b.addedAtEpochMs),
      ),
    saveHands: (id, corrections) => say('pieceHands', id, corrections),
    hands: (id) => said('pieceHands', id),
    saveSpots: (id, words) => say('pieceSpots', id, words),
    spots: (id) => said('pieceSpots', id),
    pieceLines: () => within(readNames),
    pieceLine: (name) => within((database) => readLine(database, name)),
    takePieceLines: (lines) => within((database) => takeLines(database, lines)),
    saveSettings: (settings) =>
      within(async (database) => {
        await database.put('settings', settings, 'settings')
      }),
    settings: () => within((database) => database.get('settings', 'settings')),
    saveAside: (name, value) =>
      within(async (database) => {
        const change = database.transaction('settings', 'readwrite', strict)
        await Promise.all([change.store.put(value, name), change.done])
      }),
    aside: (name) => within((database) => database.get('settings', name)),
    watchOthers: others.watch,
    watch: (see) => {
      watchers.add(see)
      see(problem)
      return () => watchers.delete(see)
    },
    close: () => {
      clearTimeout(retry)
      others.close()
      connection.close()
    },
  }
}

const listingOf = ({ keptAtEpochMs: _at, ...listing }: KeptPiece): PieceListing => listing
