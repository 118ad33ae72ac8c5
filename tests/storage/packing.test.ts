import 'fake-indexeddb/auto'
import fc from 'fast-check'
import { openDB } from 'idb'
import { readFileSync } from 'node:fs'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { dayAt } from '@/journal/day'
import { spanOf } from '@/journal/daySpan'
import { eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { formatJournal, parseJournal } from '@/journal/lines'
import { mergeJournals } from '@/journal/merge'
import { sumDays } from '@/journal/sumDays'
import { pieceId } from '@/music/units'
import type { DayRule } from '@/storage/days'
import { openStorage } from '@/storage/indexedDb'
import type { Storage } from '@/storage/storage'
import { anyEvent } from '../support/anyEvent'

afterEach(() => vi.restoreAllMocks())

const zone = (name: string, minutesEast: number): DayRule => ({
  name,
  dayOf: (epochMs) => dayAt(epochMs, minutesEast),
})
const utc = zone('UTC', 0)
const dayMs = 86_400_000

let names = 0
const opened = async (name = `packing ${names++}`, days = utc, size = 4): Promise<Storage> => {
  const result = await openStorage(name, days, size)
  if (!result.ok) throw new Error(result.reason.kind)
  return result.value
}

const value = async <T>(stored: Promise<{ ok: true; value: T } | { ok: false }>): Promise<T> => {
  const result = await stored
  if (!result.ok) throw new Error(JSON.stringify(result))
  return result.value
}

/** JSON has no negative zero, and the journal none either. */
const plain = <T>(data: T): T => JSON.parse(JSON.stringify(data)) as T

/** Events with ids of their own, over some days, hours apart. */
const anyEvents = fc
  .array(fc.tuple(anyEvent, fc.integer({ min: 0, max: 40 })), { minLength: 1, maxLength: 40 })
  .map((pairs) =>
    pairs.map(([event, quarterDay], i) =>
      plain({
        ...event,
        id: eventId(`e${i}`),
        atEpochMs: event.atEpochMs + quarterDay * (dayMs / 4),
      }),
    ),
  )

const begun = (id: string, day: number): JournalEvent => ({
  v: journalVersion,
  id: eventId(id),
  session: sessionId(`s${day}`),
  atEpochMs: 1_767_225_600_000 + day * dayMs + dayMs / 2,
  kind: 'sessionBegun',
})
/** 'a b | c': events by day. */
const days = (text: string): JournalEvent[] =>
  text.split('|').flatMap((ids, day) =>
    ids
      .trim()
      .split(' ')
      .filter(Boolean)
      .map((id) => begun(id, day)),
  )

const idsIn = async (storage: Storage): Promise<string> =>
  (await value(storage.events({ kind: 'all' }))).events.map(({ id }) => id).join(' ')

/** Everything that a storage says is what these events come to. */
const expectAll = async (
  storage: Storage,
  events: readonly JournalEvent[],
  { dayOf }: DayRule,
): Promise<void> => {
  const merged = mergeJournals(events)
  expect(await value(storage.events({ kind: 'all' }))).toEqual({ events: merged, unread: [] })
  const sums = sumDays(merged, dayOf)
  const kept = await value(storage.sums())
  expect(kept.totals).toEqual(sums.map(({ total }) => total))
  expect(kept.pieces).toEqual(sums.flatMap(({ pieces }) => pieces))
  for (const piece of [pieceId('p1'), pieceId('p2')])
    expect(await value(storage.chunkSums(piece))).toEqual(
      sums.flatMap(({ chunks }) => chunks.filter((row) => row.piece === piece)),
    )
}

describe('packing', () => {
  test('takes what is older than the newest day, and everything is read as before', async () => {
    const storage = await opened()
    for (const event of days('a b c | d e | f g')) await storage.append(event)
    expect(await value(storage.pack())).toBe(5)
    expect(await idsIn(storage)).toBe('a b c d e f g')
    expect(await value(storage.pack())).toBe(0)
  })

  test.each([
    ['too little is old', 'a b c | d', 0],
    ['all is of one day', 'a b c d e', 0],
    ['nothing is there', '', 0],
    ['enough is old', 'a b | c d | e', 4],
  ])('%s: %s packs %i', async (_, text, packed) => {
    const storage = await opened()
    for (const event of days(text)) await storage.append(event)
    expect(await value(storage.pack())).toBe(packed)
  })

  test('the newest, a session and a time are found in tail and blocks', async () => {
    const storage = await opened()
    await storage.importAll(days('a b | c d e | f | g'))
    await storage.pack()
    const ids = async (query: Parameters<Storage['events']>[0]): Promise<string> =>
      (await value(storage.events(query))).events.map(({ id }) => id).join(' ')
    expect(await ids({ kind: 'latest', count: 1 })).toBe('g')
    expect(await ids({ kind: 'latest', count: 3 })).toBe('e f g')
    expect(await ids({ kind: 'latest', count: 99 })).toBe('a b c d e f g')
    expect(await ids({ kind: 'session', session: sessionId('s1') })).toBe('c d e')
    expect(await value(storage.firstAt())).toBe(begun('a', 0).atEpochMs)
  })

  test('of a day that is packed no other block is read', async () => {
    const storage = await opened()
    await storage.importAll(days('a b c d | e f g h | i j k l | m'))
    await storage.pack()
    const reading = vi.spyOn(IDBObjectStore.prototype, 'get')
    const { from, to } = spanOf(utc.dayOf(begun('e', 1).atEpochMs), utc.dayOf)
    const { events } = await value(storage.events({ kind: 'time', from, to }))
    expect(events.map(({ id }) => id)).toEqual(['e', 'f', 'g', 'h'])
    // Blocks go by numbers.
    expect(reading.mock.calls.filter(([key]) => typeof key === 'number')).toHaveLength(1)
  })

  test('what the person wrote is never packed, and no day is counted anew for it', async () => {
    const storage = await opened()
    const wrote = { ...begun('w', 0), kind: 'notebookWritten', piece: pieceId('p1') } as const
    await storage.append({ ...wrote, subject: 'idea', text: 'Slower' })
    for (let day = 0; day < 8; day++) await storage.append(begun(`b${day}`, day))
    expect(await value(storage.pack())).toBe(7)
    const { events } = await value(storage.events({ kind: 'written' }))
    expect(events.map(({ id }) => id)).toEqual(['w'])
    const reading = vi.spyOn(IDBObjectStore.prototype, 'get')
    expect((await value(storage.sums())).totals).toHaveLength(8)
    // Blocks go by numbers: none was read.
    expect(reading.mock.calls.filter(([key]) => typeof key === 'number')).toEqual([])
  })

  test('an older journal brought later leaves the newest where they belong', async () => {
    const storage = await opened()
    await storage.importAll(days('| | | k l m n o | p'))
    await storage.pack()
    await storage.importAll(days('a | b'))
    const latest = await value(storage.events({ kind: 'latest', count: 2 }))
    expect(latest.events.map(({ id }) => id)).toEqual(['o', 'p'])
  })

  test('all passes by in parts, each event once', async () => {
    const storage = await opened()
    await storage.importAll(days('a b c d | e f g h | i'))
    await storage.pack()
    const parts: string[] = []
    await value(
      storage.eventsInParts(({ events }) => parts.push(events.map(({ id }) => id).join(' '))),
    )
    expect(parts).toEqual(['a b c d', 'e f g h', 'i'])
  })
})

describe('sums', () => {
  test('kept equal those from scratch, after any operations, in any order', async () => {
    type Operation =
      | { readonly kind: 'append' | 'import'; readonly at: number }
      | { readonly kind: 'pack' | 'reopen' | 'travel' }
    const operation: fc.Arbitrary<Operation> = fc.oneof(
      {
        weight: 4,
        arbitrary: fc.record({
          kind: fc.constantFrom('append' as const, 'import' as const),
          at: fc.nat(),
        }),
      },
      {
        weight: 2,
        arbitrary: fc.record({
          kind: fc.constantFrom('pack' as const, 'reopen' as const, 'travel' as const),
        }),
      },
    )
    await fc.assert(
      fc.asyncProperty(
        anyEvents,
        fc.array(operation, { maxLength: 25 }),
        async (events, operations) => {
          const name = `any ${names++}`
          let rule = utc
          let storage = await opened(name, rule)
          const done: JournalEvent[] = []
          for (const each of operations) {
            if (each.kind === 'append') {
              const event = events[each.at % events.length]
              if (!event) continue
              done.push(event)
              await value(storage.append(event))
            } else if (each.kind === 'import') {
              const some = events.slice(each.at % events.length).slice(0, 7)
              done.push(...some)
              expect((await value(storage.importAll(some))).taken).toEqual([])
            } else if (each.kind === 'pack') await value(storage.pack())
            else {
              storage.close()
              if (each.kind === 'travel') rule = rule === utc ? zone('Far', 660) : utc
              storage = await opened(name, rule)
            }
          }
          await expectAll(storage, done, rule)
          storage.close()
        },
      ),
      { numRuns: 150 },
    )
  })

  test('are counted anew where the days begin elsewhere', async () => {
    const first = await opened('travel', utc)
    const events = days('a b c d | e f | g')
    await first.importAll(events)
    await first.pack()
    first.close()
    // Noon at UTC is half past three at night, and so the day before, where clocks stand 15½ hours ahead.
    const far = zone('Far', 930)
    await expectAll(await opened('travel', far), events, far)
  })

  test('hold what could not be stored', async () => {
    const storage = await opened()
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('the disk is full', 'QuotaExceededError')
    })
    await storage.append(begun('a', 0))
    expect((await value(storage.sums())).totals.map(({ day }) => day)).toEqual(['2026-01-01'])
  })
})

describe('importing', () => {
  test('journals in any order, any number of times, packed between or not, gives the same', async () => {
    const overlapping = anyEvents.chain((events) =>
      fc.record({
        events: fc.constant(events),
        journals: fc.array(fc.subarray(events), { maxLength: 4 }).map((some) => [...some, events]),
        order: fc.array(fc.nat(), { maxLength: 8 }),
      }),
    )
    await fc.assert(
      fc.asyncProperty(overlapping, async ({ events, journals, order }) => {
        const [one, other] = [await opened(), await opened()]
        for (const journal of journals) await value(one.importAll(journal))
        for (const at of order) {
          await value(other.importAll(journals[at % journals.length] ?? []))
          if (at % 2 === 0) await value(other.pack())
        }
        for (const journal of journals.toReversed()) await value(other.importAll(journal))
        for (const storage of [one, other]) {
          await expectAll(storage, events, utc)
          storage.close()
        }
      }),
      { numRuns: 60 },
    )
  })

  test('what was saved as a file brings everything back on a new machine', async () => {
    await fc.assert(
      fc.asyncProperty(anyEvents, async (events) => {
        const [old, fresh] = [await opened(), await opened()]
        await value(old.importAll(events))
        await value(old.pack())
        const lines: string[] = []
        await value(old.eventsInParts((part) => lines.push(formatJournal(part.events))))
        const { events: read, unread } = parseJournal(lines.join(''))
        expect(unread).toEqual([])
        expect((await value(fresh.importAll(read))).added).toBe(events.length)
        await expectAll(fresh, events, utc)
        old.close()
        fresh.close()
      }),
      { numRuns: 40 },
    )
  })

  test('again changes nothing, whether the events are packed or not', async () => {
    const storage = await opened()
    const events = days('a b c d | e f g h | i')
    const progress: number[] = []
    expect(await value(storage.importAll(events, (done) => progress.push(done)))).toEqual({
      added: 9,
      known: 0,
      taken: [],
    })
    expect(progress).toEqual([9])
    await storage.pack()
    const known = await value(storage.known([...events, begun('new', 3)]))
    expect([...known].join(' ')).toBe('a b c d e f g h i')
    expect(await value(storage.importAll(events))).toEqual({ added: 0, known: 9, taken: [] })
    expect(await idsIn(storage)).toBe('a b c d e f g h i')
  })

  test('keeps the first of two events under one id, packed or not', async () => {
    const storage = await opened()
    await storage.importAll(days('a b c d | e'))
    await storage.pack()
    const other = (id: string, day: number) => ({ ...begun(id, day), session: sessionId('else') })
    expect(await value(storage.importAll([other('a', 0), other('e', 1)]))).toEqual({
      added: 0,
      known: 0,
      taken: ['a', 'e'],
    })
    expect(await storage.append(other('b', 0))).toEqual({
      ok: false,
      reason: { kind: 'idTaken', id: 'b' },
    })
  })
})

describe('trouble', () => {
  test('two tabs that pack at once lose nothing and count nothing twice', async () => {
    const [one, other] = [await opened('tabs'), await opened('tabs')]
    const events = days('a b c d | e f | g')
    for (const event of events) await one.append(event)
    const packed = await Promise.all([value(one.pack()), value(other.pack()), value(one.pack())])
    expect(packed.toSorted((a, b) => a - b)).toEqual([0, 0, 6])
    await expectAll(other, events, utc)
  })

  test('a disk that fills up while packing changes nothing', async () => {
    const storage = await opened()
    const events = days('a b c d | e f | g')
    for (const event of events) await storage.append(event)
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('the disk is full', 'QuotaExceededError')
    })
    expect(await storage.pack()).toEqual({ ok: false, reason: { kind: 'quota' } })
    full.mockRestore()
    await expectAll(storage, events, utc)
    expect(await value(storage.pack())).toBe(6)
    await expectAll(storage, events, utc)
  })

  test('a damaged block is told, hides no other event, and stays where it is', async () => {
    const storage = await opened('damaged')
    await storage.importAll(days('a b c d | e f g h | i'))
    await storage.pack()
    const raw = await openDB('damaged')
    const [key] = await raw.getAllKeys('blocks')
    const block = (await raw.get('blocks', key as number)) as object
    await raw.put('blocks', { ...block, others: '[' }, key)
    raw.close()
    const found = await value(storage.events({ kind: 'all' }))
    expect(found.events.map(({ id }) => id).join(' ')).toBe('e f g h i')
    expect(found.unread.map(({ reason }) => reason.kind)).toEqual(['wrongShape'])
    expect((await storage.sums()).ok).toBe(true)
  })
})

describe('a database of version 1', () => {
  /** As version 1 made it. */
  const makeOld = async (name: string, records: readonly unknown[]): Promise<void> => {
    const old = await openDB(name, 1, {
      upgrade: (database) => {
        const events = database.createObjectStore('events', { keyPath: 'id' })
        events.createIndex('bySession', 'session')
        events.createIndex('byPiece', 'piece')
        events.createIndex('byChunk', 'chunk')
        events.createIndex('byTime', 'atEpochMs')
        database.createObjectStore('pieces', { keyPath: 'id' })
        database.createObjectStore('files')
        database.createObjectStore('settings')
      },
    })
    for (const record of records) await old.put('events', record)
    await old.put('settings', { theme: 'dark' }, 'settings')
    await old.put('pieces', { id: 'p1', title: 'Study', fileName: 'a.mid', addedAtEpochMs: 1 })
    await old.put('files', Uint8Array.of(1, 2), 'p1')
    old.close()
  }
  const lines = readFileSync(new URL('../journals/v1.jsonl', import.meta.url), 'utf8')
  const records = lines
    .trim()
    .split('\n')
    .map((line): unknown => JSON.parse(line))

  test('is taken along without loss: events, pieces, files and settings', async () => {
    await makeOld('old', records)
    const storage = await opened('old')
    const { events } = parseJournal(lines)
    await expectAll(storage, events, utc)
    expect(await value(storage.settings())).toEqual({ theme: 'dark' })
    expect((await value(storage.piece(pieceId('p1'))))?.bytes).toEqual(Uint8Array.of(1, 2))
    const later = begun('z', 30)
    await storage.append(later)
    expect(await value(storage.pack())).toBe(events.length)
    await expectAll(storage, [...events, later], utc)
  })

  test('its events are known again when they are imported', async () => {
    await makeOld('again', records)
    const storage = await opened('again')
    const { events } = parseJournal(lines)
    expect(await value(storage.importAll(events))).toEqual({
      added: 0,
      known: events.length,
      taken: [],
    })
  })

  test('a record that nobody can read stays in the tail when the others are packed', async () => {
    await makeOld('odd', [...records, { id: 'x', v: 99, atEpochMs: 3 }])
    const storage = await opened('odd')
    await storage.append(begun('z', 30))
    await storage.pack()
    const found = await value(storage.events({ kind: 'all' }))
    expect(found.unread).toEqual([
      {
        id: 'x',
        reason: { kind: 'newerVersion', version: 99, known: journalVersion },
        record: { id: 'x', v: 99, atEpochMs: 3 },
      },
    ])
    expect(found.events).toHaveLength(records.length + 1)
  })
})
