import 'fake-indexeddb/auto'
import { forceCloseDatabase } from 'fake-indexeddb'
import { openDB, type IDBPDatabase } from 'idb'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { pieceId } from '@/music/units'
import { openStorage } from '@/storage/indexedDb'
import type { StorageProblem } from '@/storage/problem'
import type { Storage } from '@/storage/storage'
import { rememberInstead } from '@/storage/waiting'

afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

const begun = (id: string): JournalEvent => ({
  v: journalVersion,
  id: eventId(id),
  session: sessionId('s1'),
  atEpochMs: Number(id),
  kind: 'sessionBegun',
})

const opened = async (name: string): Promise<Storage> => {
  const result = await openStorage(name)
  if (!result.ok) throw new Error(result.reason.kind)
  return result.value
}

const idsIn = async (storage: Storage): Promise<string> => {
  const found = await storage.events({ kind: 'all' })
  return found.ok ? found.value.events.map((event) => event.id).join(' ') : found.reason.kind
}

/** What was there before blocks and sums. */
const makeVersionOne = (database: IDBPDatabase): void => {
  const events = database.createObjectStore('events', { keyPath: 'id' })
  events.createIndex('bySession', 'session')
  events.createIndex('byPiece', 'piece')
  events.createIndex('byChunk', 'chunk')
  events.createIndex('byTime', 'atEpochMs')
  for (const name of ['pieces', 'files', 'settings']) database.createObjectStore(name)
}

/** What `watch` tells, as it comes. */
const watched = (storage: Storage): (StorageProblem['kind'] | undefined)[] => {
  const told: (StorageProblem['kind'] | undefined)[] = []
  storage.watch((problem) => told.push(problem?.kind))
  return told
}

/** The next write finds the disk full. */
const fillDisk = () =>
  vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
    throw new DOMException('the disk is full', 'QuotaExceededError')
  })

test('pieces, hands and spots of before are read as they were, and anything said since then holds before them', async () => {
  const name = 'before moments were kept'
  const before = await opened(name)
  before.close()
  const study = { id: 'p1', title: 'A Study', fileName: 'study.mid', addedAtEpochMs: 7 }
  const corrections = [{ from: '0', to: '1', hand: 'left' }]
  const spots = { said: [], order: [{ from: '0', to: '4', hand: 'right' }] }
  const raw = await openDB(name)
  await raw.put('pieces', study)
  await raw.put('files', Uint8Array.of(1, 2, 3), 'p1')
  await raw.put('settings', corrections, 'hands p1')
  await raw.put('settings', spots, 'spots p1')
  raw.close()
  const storage = await opened(name)
  const id = pieceId('p1')
  expect(await storage.pieces()).toEqual({ ok: true, value: [study] })
  expect(await storage.hands(id)).toEqual({ ok: true, value: corrections })
  expect(await storage.spots(id)).toEqual({ ok: true, value: spots })
  expect(await storage.pieceLine({ kind: 'pieceFile', piece: id })).toMatchObject({
    value: { atEpochMs: 7, bytes: 'AQID' },
  })
  const hands = await storage.pieceLine({ kind: 'pieceHands', piece: id })
  expect(hands).toMatchObject({ value: { atEpochMs: 0, corrections } })
  await storage.saveHands(id, [])
  expect(hands.ok && hands.value && (await storage.takePieceLines([hands.value]))).toEqual({
    ok: true,
    value: [],
  })
  storage.close()
})

describe('durably', () => {
  test('an event is there when the page is opened again', async () => {
    const first = await opened('again')
    await first.append(begun('1'))
    first.close()
    expect(await idsIn(await opened('again'))).toBe('1')
  })

  test('events and pieces are written with strict durability', async () => {
    const storage = await opened('strict')
    const begin = vi.spyOn(IDBDatabase.prototype, 'transaction')
    await storage.append(begun('1'))
    expect(begin.mock.calls.map(([, mode, options]) => [mode, options])).toEqual([
      ['readwrite', { durability: 'strict' }],
    ])
  })

  test('append resolves only when the transaction is complete', async () => {
    const storage = await opened('complete')
    const begin = vi.spyOn(IDBDatabase.prototype, 'transaction')
    const order: string[] = []
    const appending = storage.append(begun('1')).then(() => order.push('appended'))
    while (begin.mock.results.length === 0) await Promise.resolve()
    const transaction = begin.mock.results[0]?.value as IDBTransaction
    transaction.addEventListener('complete', () => order.push('complete'))
    await appending
    expect(order).toEqual(['complete', 'appended'])
  })
})

describe('a full disk', () => {
  test('is told, the event is kept in memory and still read', async () => {
    const storage = await opened('full')
    const told = watched(storage)
    await storage.append(begun('1'))
    fillDisk()
    expect(await storage.append(begun('2'))).toEqual({ ok: false, reason: { kind: 'quota' } })
    expect(storage.unsaved().map((event) => event.id)).toEqual(['2'])
    expect(await idsIn(storage)).toBe('1 2')
    expect(told).toEqual([undefined, 'quota'])
  })

  test('that has room again takes all that waited', async () => {
    const storage = await opened('room')
    const told = watched(storage)
    const disk = fillDisk()
    await storage.append(begun('1'))
    await storage.append(begun('2'))
    disk.mockRestore()
    expect((await storage.append(begun('3'))).ok).toBe(true)
    expect(storage.unsaved()).toEqual([])
    storage.close()
    expect(await idsIn(await opened('room'))).toBe('1 2 3')
    expect(told).toEqual([undefined, 'quota', undefined])
  })

  test('is tried again while nobody plays, so that nothing waits for the next repetition', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    const storage = await opened('idle')
    const told = watched(storage)
    const disk = fillDisk()
    await storage.append(begun('1'))
    await vi.advanceTimersByTimeAsync(10_000)
    expect(storage.unsaved()).toHaveLength(1)
    disk.mockRestore()
    await vi.advanceTimersByTimeAsync(10_000)
    vi.useRealTimers()
    await vi.waitFor(() => expect(storage.unsaved()).toEqual([]))
    expect(told).toEqual([undefined, 'quota', undefined])
    storage.close()
    expect(await idsIn(await opened('idle'))).toBe('1')
  })

  test('and a database that is gone leave what is in memory to be saved as a file', async () => {
    const storage = await opened('gone')
    const newer = await openDB('gone', 3)
    await storage.append(begun('1'))
    const parts: string[] = []
    const read = await storage.eventsInParts(({ events }) => parts.push(...events.map((e) => e.id)))
    expect(read.ok).toBe(false)
    expect(parts).toEqual(['1'])
    newer.close()
  })
})

describe('other tabs and versions', () => {
  test('a database of a newer version is left as it is', async () => {
    const newer = await openDB('newer', 99)
    newer.close()
    expect(await openStorage('newer')).toEqual({ ok: false, reason: { kind: 'newerVersion' } })
  })

  test('this tab lets go when another wants to upgrade, and keeps what comes after', async () => {
    const storage = await opened('upgrade')
    const told = watched(storage)
    const newer = await openDB('upgrade', 3)
    expect(told).toEqual([undefined, 'replaced'])
    expect(await storage.append(begun('1'))).toEqual({ ok: false, reason: { kind: 'replaced' } })
    expect(storage.unsaved()).toEqual([begun('1')])
    newer.close()
  })

  test('an older tab that holds on is told as blocked, and practice need not wait', async () => {
    const older = await openDB('blocked', 2)
    const open = indexedDB.open.bind(indexedDB)
    const spy = vi.spyOn(indexedDB, 'open').mockImplementation((name) => open(name, 3))
    expect(await openStorage('blocked')).toEqual({ ok: false, reason: { kind: 'blocked' } })
    spy.mockRestore()
    older.close()
    // What was opened too late lets go by itself, or this would wait for ever.
    const next = await openDB('blocked', 4)
    expect(next.version).toBe(4)
    next.close()
  })

  test('when the older tab is closed, what memory kept meanwhile moves into the database', async () => {
    const older = await openDB('moving', 1, { upgrade: makeVersionOne })
    const first = await openStorage('moving')
    if (first.ok) throw new Error('it should be blocked')
    const storage = rememberInstead(first.reason, () => openStorage('moving'))
    const told = watched(storage)
    await storage.append(begun('1'))
    await storage.saveSettings({ theme: 'dark' })
    expect(await idsIn(storage)).toBe('1')
    older.close()
    await vi.waitFor(() => expect(told).toEqual(['blocked', 'moved']))
    await storage.append(begun('2'))
    storage.close()
    const next = await opened('moving')
    expect(await idsIn(next)).toBe('1 2')
    expect(await next.settings()).toEqual({ ok: true, value: { theme: 'dark' } })
  })

  test('where the disk was full from the start, what memory kept moves when there is room', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    const full = { ok: false, reason: { kind: 'quota' } } as const
    const tries: (() => ReturnType<typeof openStorage>)[] = [
      () => Promise.resolve(full),
      () => openStorage('room later'),
    ]
    const storage = rememberInstead(full.reason, () => (tries.shift() ?? openStorage)())
    const told = watched(storage)
    await storage.append(begun('1'))
    await vi.advanceTimersByTimeAsync(10_000)
    expect([told, storage.unsaved().length]).toEqual([['quota'], 1])
    await vi.advanceTimersByTimeAsync(10_000)
    vi.useRealTimers()
    await vi.waitFor(() => expect(told).toEqual(['quota', 'moved']))
    storage.close()
    expect(await idsIn(await opened('room later'))).toBe('1')
  })

  test('two tabs write into one journal, and each sees what the other stores', async () => {
    const [one, other] = [await opened('two'), await opened('two')]
    const [seen, seenByOther]: [string[], string[]] = [[], []]
    one.watchOthers(({ id }) => seen.push(id))
    other.watchOthers(({ id }) => seenByOther.push(id))
    await Promise.all([one.append(begun('1')), other.append(begun('2'))])
    await vi.waitFor(() => expect([seen, seenByOther]).toEqual([['2'], ['1']]))
    expect(await idsIn(one)).toBe('1 2')
    expect(await idsIn(other)).toBe('1 2')
  })
})

describe('a browser that gives no database', () => {
  test('is told where there is none at all', async () => {
    vi.stubGlobal('indexedDB', undefined)
    const result = await openStorage('none')
    expect(result.ok ? undefined : result.reason.kind).toBe('unavailable')
  })

  test('is told where opening fails, as in some private windows', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('A mutation operation was attempted.', 'InvalidStateError')
    })
    expect(await openStorage('private')).toEqual({
      ok: false,
      reason: { kind: 'unavailable', message: 'A mutation operation was attempted.' },
    })
  })

  test('or takes it away is asked again, and nothing is lost', async () => {
    const raw: IDBDatabase[] = []
    const open = indexedDB.open.bind(indexedDB)
    vi.spyOn(indexedDB, 'open').mockImplementation((name, version) => {
      const request = open(name, version)
      request.addEventListener('success', () => raw.push(request.result))
      return request
    })
    const storage = await opened('taken')
    await storage.append(begun('1'))
    for (const database of raw) forceCloseDatabase(database as never)
    await new Promise((resolve) => setTimeout(resolve, 10))
    expect((await storage.append(begun('2'))).ok).toBe(true)
    expect(await idsIn(storage)).toBe('1 2')
    expect(raw).toHaveLength(2)
  })
})

test('a record that this version cannot read stays, is named, and hides no other', async () => {
  const storage = await opened('odd')
  await storage.append(begun('1'))
  const raw = await openDB('odd')
  await raw.put('events', { id: '2', v: 7, atEpochMs: 2 })
  await raw.put('events', { id: '3', v: 1, atEpochMs: 3, kind: 'sessionBegun', session: '' })
  raw.close()
  const found = await storage.events({ kind: 'all' })
  expect(found.ok ? found.value.events.map((event) => event.id) : []).toEqual(['1'])
  expect(found.ok ? found.value.unread.map(({ id, reason }) => [id, reason.kind]) : []).toEqual([
    ['2', 'newerVersion'],
    ['3', 'wrongShape'],
  ])
  const latest = await storage.events({ kind: 'latest', count: 1 })
  expect(latest.ok ? latest.value.events.map((event) => event.id) : []).toEqual(['1'])
})
