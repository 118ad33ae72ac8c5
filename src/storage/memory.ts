import { sameEvent, compareEvents } from '@/journal/merge'
import type { JournalEvent } from '@/journal/journal'
import { holdsBefore, type PieceLine } from '@/journal/pieceLines'
import { sumDays } from '@/journal/sumDays'
import { failed, ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import { localDays, type DayRule } from './days'
import type { StorageProblem } from './problem'
import { fileLine, pieceOf, saidLine, valueOf, type SaidKind } from './pieceLines'
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
  const pieces = new Map<PieceId, Kept<StoredPiece>>()
  const said: Readonly<Record<SaidKind, Map<PieceId, Kept<unknown>>>> = {
    pieceHands: new Map(),
    pieceSpots: new Map(),
  }
  const asides = new Map<Aside, unknown>()
  let settings: unknown

  const lineOf = (kind: PieceLine['kind'], id: PieceId): PieceLine | undefined => {
    if (kind === 'pieceFile') {
      const kept = pieces.get(id)
      return kept && fileLine(kept.value, kept.atEpochMs)
    }
    const word = said[kind].get(id)
    return word && saidLine(kind, id, { saidAtEpochMs: word.atEpochMs, value: word.value })
  }
  const lines = (): readonly PieceLine[] =>
    [
      ...[...pieces.keys()].map((id) => lineOf('pieceFile', id)),
      ...[...said.pieceHands.keys()].map((id) => lineOf('pieceHands', id)),
      ...[...said.pieceSpots.keys()].map((id) => lineOf('pieceSpots', id)),
    ].filter((line) => line !== undefined)

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
      pieces.set(piece.id, keptNow(piece))
      return Promise.resolve(ok(undefined))
    },
    removePiece: (id) => {
      pieces.delete(id)
      return Promise.resolve(ok(undefined))
    },
    piece: (id) => Promise.resolve(ok(structuredClone(pieces.get(id)?.value))),
    pieces: () =>
      Promise.resolve(
        ok(
          [...pieces.values()]
            .map(({ value: { bytes: _bytes, ...listing } }) => listing)
            .toSorted((a, b) => a.addedAtEpochMs - b.addedAtEpochMs),
        ),
      ),
    saveHands: (id, corrections) => {
      said.pieceHands.set(id, keptNow(corrections))
      return Promise.resolve(ok(undefined))
    },
    hands: (id) => Promise.resolve(ok(structuredClone(said.pieceHands.get(id)?.value))),
    saveSpots: (id, words) => {
      said.pieceSpots.set(id, keptNow(words))
      return Promise.resolve(ok(undefined))
    },
    spots: (id) => Promise.resolve(ok(structuredClone(said.pieceSpots.get(id)?.value))),
    pieceLines: () =>
      Promise.resolve(
        ok(lines().map(({ kind, piece, atEpochMs }) => ({ kind, piece, atEpochMs }))),
      ),
    pieceLine: ({ kind, piece }) => Promise.resolve(ok(lineOf(kind, piece))),
    takePieceLines: (given) => {
      const taken = given.filter((line) => {
        const own = lineOf(line.kind, line.piece)
        const holds = !own || holdsBefore(line, own)
        if (holds && line.kind === 'pieceFile')
          pieces.set(line.piece, { value: pieceOf(line), atEpochMs: line.atEpochMs })
        else if (holds && line.kind !== 'pieceFile')
          said[line.kind].set(line.piece, { value: valueOf(line), atEpochMs: line.atEpochMs })
        return holds
      })
      return Promise.resolve(ok(taken))
    },
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
      for (const line of lines())
        await whereNone(other.pieceLine(line), () => other.takePieceLines([line]))
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

/** A value, and since when it stands. */
interface Kept<T> {
  readonly value: T
  readonly atEpochMs: number
}

/** What was handed in may change afterwards. */
const keptNow = <T>(value: T): Kept<T> => ({
  value: structuredClone(value),
  atEpochMs: Date.now(),
})

const whereNone = async (there: Stored<unknown>, put: () => Promise<unknown>): Promise<void> => {
  const found = await there
  if (found.ok && found.value === undefined) await put()
}
