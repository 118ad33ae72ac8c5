import type { StoragePort } from '@/app/ports'
import type { JournalEvent } from '@/journal/journal'
import { formatJournal } from '@/journal/lines'
import { formatPieceLine } from '@/journal/pieceLines'
import { ok, type Result } from '@/music/result'
import { localDays } from '@/storage/days'
import { askToPersist, lookAtKeeping } from '@/storage/persistence'
import { explainStorageProblem, explainUnread, type StorageProblem } from '@/storage/problem'
import type { Storage } from '@/storage/storage'

/** The storage as the app sees it: what it asks for, and its problems as sentences. */
export const storagePort = (storage: Storage): StoragePort => ({
  append: async (event) => explained(await storage.append(event)),
  latestSession: async () => {
    const latest = await storage.events({ kind: 'latest', count: 1 })
    if (!latest.ok) return explained(latest)
    const session = latest.value.events[0]?.session
    const stored = await storage.events(
      session === undefined ? { kind: 'latest', count: 0 } : { kind: 'session', session },
    )
    if (!stored.ok) return explained(stored)
    const unread = explainUnread([...latest.value.unread, ...stored.value.unread])
    return ok({ events: stored.value.events, ...(unread === undefined ? {} : { unread }) })
  },
  exportText: async () => {
    const parts: string[] = []
    const read = await storage.eventsInParts(({ events, unread }) => {
      parts.push(formatJournal(events))
      parts.push(...unread.map(({ record }) => `${JSON.stringify(record)}\n`))
    })
    if (!read.ok) return explained(read)
    const names = await storage.pieceLines()
    if (!names.ok) return explained(names)
    for (const name of names.value) {
      const line = await storage.pieceLine(name)
      if (!line.ok) return explained(line)
      if (line.value) parts.push(formatPieceLine(line.value))
    }
    return ok(parts)
  },
  tableText: async () => {
    const events: JournalEvent[] = []
    const read = await storage.eventsInParts((part) => {
      // The table tells nothing of the takes, which are most of a record.
      for (const event of part.events)
        events.push(event.kind === 'repetition' ? { ...event, take: '' } : event)
    })
    if (!read.ok) return explained(read)
    const { formatRepetitionTable } = await import('@/journal/table')
    return ok(formatRepetitionTable(events, dayOf))
  },
  known: async (events) => explained(await storage.known(events)),
  importAll: async (events, progress) => explained(await storage.importAll(events, progress)),
  sums: async () => explained(await storage.sums()),
  dayOf,
  ofChunk: async (chunk) => {
    const events = await storage.events({ kind: 'chunk', chunk })
    return events.ok ? ok(events.value.events) : explained(events)
  },
  chunkDays: async (piece) => explained(await storage.chunkSums(piece)),
  ofPiece: async (piece) => {
    const events = await storage.events({ kind: 'piece', piece })
    return events.ok ? ok(events.value.events) : explained(events)
  },
  ofTime: async (span) => {
    const events = await storage.events({ kind: 'time', ...span })
    return events.ok ? ok(events.value.events) : explained(events)
  },
  written: async () => {
    const events = await storage.events({ kind: 'written' })
    return events.ok ? ok(events.value.events) : explained(events)
  },
  pieceLines: async () => explained(await storage.pieceLines()),
  takePieceLines: async (lines) => explained(await storage.takePieceLines(lines)),
  putPiece: async (piece) => explained(await storage.putPiece(piece)),
  removePiece: async (id) => explained(await storage.removePiece(id)),
  pieces: async () => explained(await storage.pieces()),
  piece: async (id) => explained(await storage.piece(id)),
  hands: async (id) => {
    const hands = await storage.hands(id)
    return hands.ok ? hands.value : undefined
  },
  saveHands: async (id, corrections) => explained(await storage.saveHands(id, corrections)),
  spots: async (id) => explained(await storage.spots(id)),
  saveSpots: async (id, words) => explained(await storage.saveSpots(id, words)),
  watchOthers: storage.watchOthers,
  unsavedText: () => formatJournal(storage.unsaved()),
  keeping: () => lookAtKeeping(globalThis.navigator?.storage),
  askToPersist: () => askToPersist(globalThis.navigator?.storage),
  copies: async () => {
    const copies = await storage.aside('copies')
    return copies.ok ? copies.value : undefined
  },
  saveCopies: async (copies) => explained(await storage.saveAside('copies', copies)),
  day: async () => explained(await storage.aside('day')),
  saveDay: async (run) => explained(await storage.saveAside('day', run)),
  loadSettings: async () => {
    const settings = await storage.settings()
    return settings.ok ? settings.value : undefined
  },
  saveSettings: async (settings) => explained(await storage.saveSettings(settings)),
  watchProblem: (see) => storage.watch((problem) => see(problem && explainStorageProblem(problem))),
})

const { dayOf } = localDays()

export const explained = <T>(result: Result<T, StorageProblem>): Result<T, string> =>
  result.ok ? result : { ok: false, reason: explainStorageProblem(result.reason) }
