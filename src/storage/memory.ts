import { sameEvent, compareEvents } from '@/journal/merge'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import { failed, ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import { localDays, type DayRule } from './days'
import type { StorageProblem } from './problem'
import { isIn, newest } from './query'
import type { Aside, Imported, Storage, Stored, StoredPiece } from './storage'

export interface MemoryStorage extends Storage {
  /** Gives all of it to another storage, where that has nothing of its own under the same name. */
  readonly moveTo: (other: Storage) => Promise<Result<void, StorageProblem>>
}

/** The same contract without a disk: everything is gone when the page is closed, and `watch` says so. */
export const createMemoryStorage = (
  problem: StorageProblem = { kind: 'memoryOnly' },
  days: DayRule = localDays(),
): MemoryStorage => {
  const events = new Map<string, JournalEvent>()
  const pieces = new Map<PieceId, StoredPiece>()
  const hands = new Map<PieceId, unknown>()
  const spots = new Map<PieceId, unknown>()
  const asides = new Map<Aside, unknown>()
  let settings: unknown

  const sorted = (): readonly JournalEvent[] => [...events.values()].toSorted(compareEvents)
  const add = (given: readonly JournalEvent[]): Imported => {
    let added = 0
    const taken: string[] = []
    for (const event of given) {
      const known = events.get(event.id)
      if (known && !sameEvent(known, event)) taken.push(event.id)
      if (known) continue
      events.set(event.id, event)
      added++
    }
    return { added, known: given.length - added - taken.length, taken }
  }

  return {
    append: (event) =>
      Promise.resolve(
        add([event]).taken.length > 0 ? failed({ kind: 'idTaken', id: event.id }) : ok(undefined),
      ),
    events: (query) => {
      const found = [...events.values()].filter(isIn(query)).toSorted(compareEvents)
      return Promise.resolve(ok({ events: newest(found, query), unread: [] }))
    },
    eventsInParts: (see) => {
      see({ events: sorted(), unread: [] })
      return Promise.resolve(ok(undefined))
    },
    known: (given) =>
      Promise.resolve(ok(new Set(given.map(({ id }) => id).filter((id) => events.has(id))))),
    importAll: (given, progress = () => undefined) => {
      const { added, known, taken } = add(given)
      progress(given.length)
      return Promise.resolve(ok({ added, known, taken }))
    },
    pack: () => Promise.resolve(ok(0)),
    sums: () => {
      const sums = sumDays([...events.values()], days.dayOf)
      const totals = sums.map(({ total }) => total)
      return Promise.resolve(ok({ totals, pieces: sums.flatMap(({ pieces }) => pieces) }))
    },
    chunkSums: (piece) => {
      const rows = sumDays([...events.values()], days.dayOf).flatMap(({ chunks }) => chunks)
      return Promise.resolve(ok(rows.filter((row) => row.piece === piece)))
    },
    firstAt: () => Promise.resolve(ok(sorted()[0]?.atEpochMs)),
    unsaved: sorted,
    putPiece: (piece) => {
      pieces.set(piece.id, structuredClone(piece))
      return Promise.resolve(ok(undefined))
    },
    removePiece: (id) => {
      pieces.delete(id)
      return Promise.resolve(ok(undefined))
    },
    piece: (id) => Promise.resolve(ok(structuredClone(pieces.get(id)))),
    pieces: () =>
      Promise.resolve(
        ok(
          [...pieces.values()]
            .map(({ bytes: _bytes, ...listing }) => listing)
            .toSorted((a, b) => a.addedAtEpochMs - b.addedAtEpochMs),
        ),
      ),
    saveHands: (id, corrections) => {
      hands.set(id, structuredClone(corrections))
      return Promise.resolve(ok(undefined))
    },
    hands: (id) => Promise.resolve(ok(structuredClone(hands.get(id)))),
    saveSpots: (id, words) => {
      spots.set(id, structuredClone(words))
      return Promise.resolve(ok(undefined))
    },
    spots: (id) => Promise.resolve(ok(structuredClone(spots.get(id)))),
    saveSettings: (given) => {
      settings = structuredClone(given)
      return Promise.resolve(ok(undefined))
    },
    settings: () => Promise.resolve(ok(structuredClone(settings))),
    saveAside: (name, value) => {
      asides.set(name, value)
      return Promise.resolve(ok(undefined))
    },
    aside: (name) => Promise.resolve(ok(asides.get(name))),
    watchOthers: () => () => undefined,
    moveTo: async (other) => {
      const imported = await other.importAll(sorted())
      if (!imported.ok) return imported
      for (const [id, piece] of pieces)
        await whereNone(other.piece(id), () => other.putPiece(piece))
      for (const [id, said] of hands)
        await whereNone(other.hands(id), () => other.saveHands(id, said))
      for (const [id, said] of spots)
        await whereNone(other.spots(id), () => other.saveSpots(id, said))
      await whereNone(other.settings(), () => other.saveSettings(settings))
      return ok(undefined)
    },
    watch: (see) => {
      see(problem)
      return () => undefined
    },
    close: () => undefined,
  }
}

const whereNone = async (there: Stored<unknown>, put: () => Promise<unknown>): Promise<void> => {
  const found = await there
  if (found.ok && found.value === undefined) await put()
}
