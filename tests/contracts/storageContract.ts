import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { chunkId, key, pieceId } from '@/music/units'
import { eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { sumDays } from '@/journal/sumDays'
import { mergePieceLines, type PieceLine } from '@/journal/pieceLines'
import { isWritten } from '@/journal/written'
import { localDays } from '@/storage/days'
import type { EventQuery, Storage, StoredPiece } from '@/storage/storage'
import { anyEvent } from '../support/anyEvent'
import { anyPieceLine } from '../support/anyPieceLine'

const begun = (id: string, atEpochMs: number, session = 's1'): JournalEvent => ({
  v: journalVersion,
  id: eventId(id),
  session: sessionId(session),
  atEpochMs,
  kind: 'sessionBegun',
})

const piece = (id: string, addedAtEpochMs: number): StoredPiece => ({
  id: pieceId(id),
  title: `Study ${id}`,
  fileName: `${id}.mid`,
  bytes: Uint8Array.of(0x4d, 0x54, 0x68, 0x64, 0),
  addedAtEpochMs,
})

const read = async (storage: Storage, query: EventQuery): Promise<readonly JournalEvent[]> => {
  const result = await storage.events(query)
  if (!result.ok) throw new Error(result.reason.kind)
  expect(result.value.unread).toEqual([])
  return result.value.events
}
const idsOf = async (storage: Storage, query: EventQuery): Promise<string> =>
  (await read(storage, query)).map((event) => event.id).join(' ')

const linesOf = async (storage: Storage): Promise<readonly PieceLine[]> => {
  const lines: PieceLine[] = []
  const names = await storage.pieceLines()
  for (const name of names.ok ? names.value : []) {
    const line = await storage.pieceLine(name)
    if (line.ok && line.value) lines.push(line.value)
  }
  return mergePieceLines(lines)
}

/** What every storage keeps to, the database and the one in memory. */
export const describeStorage = (name: string, open: () => Promise<Storage>): void => {
  describe(name, () => {
    let storage: Storage
    beforeEach(async () => {
      storage = await open()
    })
    afterEach(() => storage.close())

    test('is empty at first', async () => {
      expect(await read(storage, { kind: 'all' })).toEqual([])
      expect(await storage.pieces()).toEqual({ ok: true, value: [] })
      expect(await storage.settings()).toEqual({ ok: true, value: undefined })
    })

    test('gives events back in the order of their times, whatever the order they came in', async () => {
      for (const event of [begun('b', 2), begun('c', 3), begun('a', 1)])
        expect(await storage.append(event)).toEqual({ ok: true, value: undefined })
      expect(await idsOf(storage, { kind: 'all' })).toBe('a b c')
    })

    test('gives the newest so many', async () => {
      for (const event of [begun('b', 2), begun('c', 3), begun('a', 1)]) await storage.append(event)
      expect(await idsOf(storage, { kind: 'latest', count: 2 })).toBe('b c')
      expect(await idsOf(storage, { kind: 'latest', count: 0 })).toBe('')
      expect(await idsOf(storage, { kind: 'latest', count: 9 })).toBe('a b c')
    })

    test('any events are read back whole, by session, piece and chunk', async () => {
      const events = mergeJournals(fc.sample(anyEvent, { numRuns: 60, seed: 7 }))
      for (const event of events) await storage.append(event)
      expect(await read(storage, { kind: 'all' })).toEqual(events)
      expect(await read(storage, { kind: 'session', session: sessionId('s1') })).toEqual(
        events.filter((event) => event.session === 's1'),
      )
      expect(await read(storage, { kind: 'piece', piece: pieceId('p1') })).toEqual(
        events.filter((event) => 'piece' in event && event.piece === 'p1'),
      )
      expect(await read(storage, { kind: 'written' })).toEqual(events.filter(isWritten))
      const chunk = chunkId('p1:0-2:right')
      expect(await read(storage, { kind: 'chunk', chunk })).toEqual(
        events.filter((event) => 'chunk' in event && event.chunk === chunk),
      )
    })

    test('gives the events from one moment to before another', async () => {
      for (const event of [begun('d', 40), begun('b', 20), begun('c', 30), begun('a', 10)])
        await storage.append(event)
      expect(await idsOf(storage, { kind: 'time', from: 20, to: 40 })).toBe('b c')
      expect(await idsOf(storage, { kind: 'time', from: 41, to: 99 })).toBe('')
    })

    test('the same event once more changes nothing', async () => {
      await storage.append(begun('a', 1))
      expect(await storage.append(begun('a', 1))).toEqual({ ok: true, value: undefined })
      expect(await idsOf(storage, { kind: 'all' })).toBe('a')
    })

    test('another event under a taken id is refused and the first is kept', async () => {
      await storage.append(begun('a', 1))
      expect(await storage.append(begun('a', 2))).toEqual({
        ok: false,
        reason: { kind: 'idTaken', id: 'a' },
      })
      expect(await read(storage, { kind: 'all' })).toEqual([begun('a', 1)])
      expect((await storage.append(begun('b', 3))).ok).toBe(true)
    })

    test('events appended at once are all kept', async () => {
      const events = Array.from({ length: 20 }, (_, i) => begun(`e${i}`, i))
      const appended = await Promise.all(events.map((event) => storage.append(event)))
      expect(appended.every((result) => result.ok)).toBe(true)
      expect(await read(storage, { kind: 'all' })).toEqual(events)
    })

    test('sums are those of all events, by day, piece and chunk', async () => {
      const events = mergeJournals(fc.sample(anyEvent, { numRuns: 60, seed: 8 }))
      for (const event of events) await storage.append(event)
      const sums = sumDays(events, localDays().dayOf)
      expect(await storage.sums()).toEqual({
        ok: true,
        value: {
          totals: sums.map(({ total }) => total),
          pieces: sums.flatMap(({ pieces }) => pieces),
        },
      })
      const chunks = await storage.chunkSums(pieceId('p1'))
      expect(chunks.ok && chunks.value).toEqual(
        sums.flatMap(({ chunks: rows }) => rows.filter(({ piece: of }) => of === 'p1')),
      )
    })

    test('brings another journal in, and once more without a change', async () => {
      await storage.append(begun('a', 1))
      const other = [begun('a', 1), begun('b', 2), begun('c', 3)]
      const known = await storage.known(other)
      expect(known.ok && [...known.value]).toEqual(['a'])
      const told: number[] = []
      expect(await storage.importAll(other, (done) => told.push(done))).toEqual({
        ok: true,
        value: { added: 2, known: 1, taken: [] },
      })
      expect(told.at(-1)).toBe(3)
      expect(
        await storage.importAll([...other, { ...begun('c', 3), session: sessionId('s2') }]),
      ).toMatchObject({
        ok: true,
        value: { added: 0 },
      })
      expect(await idsOf(storage, { kind: 'all' })).toBe('a b c')
      expect((await storage.pack()).ok).toBe(true)
      const parts: string[] = []
      await storage.eventsInParts(({ events }) => parts.push(...events.map(({ id }) => id)))
      expect(parts).toEqual(['a', 'b', 'c'])
    })

    test('a piece comes back with its bytes, the list without them', async () => {
      await storage.putPiece(piece('p2', 2))
      await storage.putPiece(piece('p1', 1))
      expect(await storage.piece(pieceId('p1'))).toEqual({ ok: true, value: piece('p1', 1) })
      expect(await storage.piece(pieceId('p9'))).toEqual({ ok: true, value: undefined })
      const { bytes: _bytes, ...listing } = piece('p1', 1)
      const pieces = await storage.pieces()
      expect(pieces.ok ? pieces.value.map((p) => p.id) : []).toEqual(['p1', 'p2'])
      expect(pieces.ok ? pieces.value[0] : undefined).toEqual(listing)
    })

    test('a piece put again is replaced', async () => {
      await storage.putPiece(piece('p1', 1))
      await storage.putPiece({ ...piece('p1', 1), title: 'Renamed' })
      const pieces = await storage.pieces()
      expect(pieces.ok ? pieces.value.map((p) => p.title) : []).toEqual(['Renamed'])
    })

    test('a removed piece is gone with its file, and the journal stays', async () => {
      await storage.append(begun('a', 1))
      await storage.putPiece(piece('p1', 1))
      await storage.putPiece(piece('p2', 2))
      expect(await storage.removePiece(pieceId('p1'))).toEqual({ ok: true, value: undefined })
      expect(await storage.piece(pieceId('p1'))).toEqual({ ok: true, value: undefined })
      const pieces = await storage.pieces()
      expect(pieces.ok ? pieces.value.map((p) => p.id) : []).toEqual(['p2'])
      expect(await idsOf(storage, { kind: 'all' })).toBe('a')
      expect((await storage.removePiece(pieceId('p9'))).ok).toBe(true)
    })

    test('composer and chosen parts come back with a piece', async () => {
      const chosen = { ...piece('p1', 1), composer: 'A. Nobody', parts: [0, 2] }
      await storage.putPiece(chosen)
      expect(await storage.piece(pieceId('p1'))).toEqual({ ok: true, value: chosen })
    })

    test('what was said of the hands of a piece comes back as saved, and stays when it is removed', async () => {
      const id = pieceId('p1')
      expect(await storage.hands(id)).toEqual({ ok: true, value: undefined })
      const said = [{ from: '0', to: '3_2', hand: 'left' }]
      await storage.saveHands(id, said)
      await storage.saveSettings({ theme: 'dark' })
      await storage.putPiece(piece('p1', 1))
      await storage.removePiece(id)
      expect(await storage.hands(id)).toEqual({ ok: true, value: said })
      expect(await storage.hands(pieceId('p2'))).toEqual({ ok: true, value: undefined })
    })

    test('what was said of the hard spots of a piece comes back as saved, apart from its hands', async () => {
      const id = pieceId('p1')
      expect(await storage.spots(id)).toEqual({ ok: true, value: undefined })
      const said = { said: [{ from: '0', to: '3_2', hand: 'left', word: 'rejected' }], order: [] }
      await storage.saveSpots(id, said)
      await storage.saveHands(id, [])
      await storage.removePiece(id)
      expect(await storage.spots(id)).toEqual({ ok: true, value: said })
      expect(await storage.spots(pieceId('p2'))).toEqual({ ok: true, value: undefined })
    })

    test('pieces, hands and spots go to another storage line by line, and only what is newer takes a place', async () => {
      const id = pieceId('p1')
      expect(await storage.pieceLines()).toEqual({ ok: true, value: [] })
      await storage.putPiece({ ...piece('p1', 1), composer: 'A. Nobody', parts: [0, 2] })
      await storage.saveHands(id, [{ from: '0', to: '3_2', hand: 'left' }])
      await storage.saveSpots(pieceId('p2'), { said: [], order: [] })
      const lines = await linesOf(storage)
      expect(lines.map((line) => `${line.kind} ${line.piece}`)).toEqual([
        'pieceFile p1',
        'pieceHands p1',
        'pieceSpots p2',
      ])
      expect(lines[0]).toMatchObject({ composer: 'A. Nobody', parts: [0, 2], bytes: 'TVRoZAA' })
      expect(await storage.takePieceLines(lines)).toEqual({ ok: true, value: [] })
      const [file, hands] = lines
      if (file?.kind !== 'pieceFile' || hands?.kind !== 'pieceHands') throw new Error('not there')
      const older = { ...file, title: 'Older', atEpochMs: file.atEpochMs - 1 }
      const newer = { ...hands, corrections: [], atEpochMs: hands.atEpochMs + 1 }
      expect(await storage.takePieceLines([older, newer])).toEqual({ ok: true, value: [newer] })
      expect(await storage.piece(id)).toMatchObject({ ok: true, value: { title: 'Study p1' } })
      expect(await storage.hands(id)).toEqual({ ok: true, value: [] })
    })

    test('lines taken in any order, any number of times, come to their union', async () => {
      const all = fc.sample(anyPieceLine, { numRuns: 40, seed: 9 })
      for (const line of all) await storage.takePieceLines([line])
      await storage.takePieceLines(all.toReversed())
      expect(await linesOf(storage)).toEqual(mergePieceLines(all))
    })

    test('what is kept beside comes back under its name, and the time of the earliest event is known', async () => {
      expect(await storage.aside('copies')).toEqual({ ok: true, value: undefined })
      await storage.saveAside('copies', { at: 1 })
      expect(await storage.aside('copies')).toEqual({ ok: true, value: { at: 1 } })
      expect(await storage.aside('folder')).toEqual({ ok: true, value: undefined })
      expect(await storage.firstAt()).toEqual({ ok: true, value: undefined })
      for (const event of [begun('b', 20), begun('a', 10)]) await storage.append(event)
      expect(await storage.firstAt()).toEqual({ ok: true, value: 10 })
    })

    test('settings come back as saved, and what was handed in may change afterwards', async () => {
      const settings = { theme: 'dark', keys: [key(21)] }
      await storage.saveSettings(settings)
      settings.keys.push(key(108))
      expect(await storage.settings()).toEqual({
        ok: true,
        value: { theme: 'dark', keys: [21] },
      })
    })
  })
}
