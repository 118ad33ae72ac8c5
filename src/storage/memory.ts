import { sameEvent, compareEvents } from '@/journal/merge'
import type { JournalEvent } from '@/journal/journal'
import { failed, ok } from '@/music/result'
import type { PieceId } from '@/music/units'
import type { StorageProblem } from './problem'
import { isIn, newest } from './query'
import type { Storage, StoredPiece } from './storage'

/** The same contract without a disk: everything is gone when the page is closed, and `watch` says so. */
export const createMemoryStorage = (problem: StorageProblem = { kind: 'memoryOnly' }): Storage => {
  const events = new Map<string, JournalEvent>()
  const pieces = new Map<PieceId, StoredPiece>()
  const hands = new Map<PieceId, unknown>()
  let settings: unknown

  return {
    append: (event) => {
      const known = events.get(event.id)
      if (known && !sameEvent(known, event))
        return Promise.resolve(failed({ kind: 'idTaken', id: event.id }))
      events.set(event.id, event)
      return Promise.resolve(ok(undefined))
    },
    events: (query) => {
      const found = [...events.values()].filter(isIn(query)).toSorted(compareEvents)
      return Promise.resolve(ok({ events: newest(found, query), unread: [] }))
    },
    unsaved: () => [...events.values()].toSorted(compareEvents),
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
    saveSettings: (given) => {
      settings = structuredClone(given)
      return Promise.resolve(ok(undefined))
    },
    settings: () => Promise.resolve(ok(structuredClone(settings))),
    watch: (see) => {
      see(problem)
      return () => undefined
    },
    close: () => undefined,
  }
}
