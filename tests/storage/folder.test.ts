import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { eventId, sessionId } from '@/journal/ids'
import { journalVersion, type JournalEvent } from '@/journal/journal'
import { formatJournal, parseJournal } from '@/journal/lines'
import { mergeJournals } from '@/journal/merge'
import { formatPieceLine } from '@/journal/pieceLines'
import { pieceId } from '@/music/units'
import { monthsBetween, piecesFile, spanOfMonth } from '@/storage/folderCopy'
import { createFolderKeeper, type FolderKeeper, type FolderState } from '@/storage/folderKeeper'
import { createMemoryStorage } from '@/storage/memory'
import { fileLine } from '@/storage/pieceLines'
import type { Storage, StoredPiece } from '@/storage/storage'
import { anyEvent } from '../support/anyEvent'
import { createFakeFolder, type FakeFolder } from '../support/fakeFolder'

const begun = (id: string, date: string): JournalEvent => ({
  v: journalVersion,
  id: eventId(id),
  session: sessionId('s1'),
  atEpochMs: Date.parse(`${date}T12:00:00Z`),
  kind: 'sessionBegun',
})

interface Kept {
  readonly storage: Storage
  readonly folder: FakeFolder
  readonly keeper: FolderKeeper
  readonly state: () => FolderState
  /** Sets the clock to a day. */
  readonly on: (date: string) => void
}

const keep = (
  folder = createFakeFolder(),
  storage: Storage = createMemoryStorage(),
  today = '2026-03-20',
): Kept => {
  let now = Date.parse(`${today}T20:00:00Z`)
  let state: FolderState = { kind: 'none' }
  let last = Promise.resolve()
  const keeper = createFolderKeeper(storage, {
    now: () => now,
    alone: (run) => (last = last.then(run)),
    supported: true,
    choose: () => Promise.resolve(folder),
    open: () => folder,
  })
  keeper.watch((next) => {
    state = next
  })
  return {
    storage,
    folder,
    keeper,
    state: () => state,
    on: (date) => {
      now = Date.parse(`${date}T20:00:00Z`)
    },
  }
}

const idsIn = ({ files }: FakeFolder, month: string): string =>
  parseJournal(files.get(`passagework-${month}.jsonl`) ?? '')
    .events.map(({ id }) => id)
    .join(' ')

test('months go by UTC, both ends included, over the turn of a year', () => {
  const [from, to] = [Date.parse('2025-11-30T23:59:59Z'), Date.parse('2026-02-01T00:00:00Z')]
  expect(monthsBetween(from, to)).toEqual(['2025-11', '2025-12', '2026-01', '2026-02'])
  expect(spanOfMonth('2025-12')).toEqual({ from: Date.UTC(2025, 11), to: Date.UTC(2026, 0) })
})

describe('a folder that is chosen', () => {
  test('gets the whole record, a file for each month in which something happened', async () => {
    const { storage, folder, keeper, state } = keep()
    for (const [id, date] of [
      ['a', '2026-01-02'],
      ['b', '2026-03-05'],
      ['c', '2026-03-20'],
    ])
      await storage.append(begun(id ?? '', date ?? ''))
    await keeper.choose()
    expect([...folder.files.keys()]).toEqual([
      'passagework-2026-01.jsonl',
      'passagework-2026-03.jsonl',
    ])
    expect(idsIn(folder, '2026-03')).toBe('b c')
    expect(state()).toMatchObject({ kind: 'ready', name: 'Piano', elsewhere: 0 })
  })

  test('gets after a session only what is new, and nothing where nothing is', async () => {
    const { storage, folder, keeper, on } = keep()
    await storage.append(begun('a', '2026-01-02'))
    await storage.append(begun('b', '2026-03-20'))
    await keeper.choose()
    on('2026-03-27')
    await keeper.write()
    expect(folder.written).toHaveLength(2)
    await storage.append(begun('c', '2026-03-27'))
    await keeper.write()
    expect(folder.written.slice(2)).toEqual(['passagework-2026-03.jsonl'])
    expect(idsIn(folder, '2026-03')).toBe('b c')
    expect(folder.reads()).toBe(0)
  })

  test('gets the months to which an import adds, however old', async () => {
    const { storage, folder, keeper } = keep()
    await storage.append(begun('a', '2026-01-02'))
    await storage.append(begun('b', '2026-03-20'))
    await keeper.choose()
    const old = [begun('x', '2025-12-24'), begun('y', '2026-01-03')]
    await keeper.expect(old)
    await storage.importAll(old)
    await keeper.write()
    expect(idsIn(folder, '2025-12')).toBe('x')
    expect(idsIn(folder, '2026-01')).toBe('a y')
    expect(folder.written).toHaveLength(4)
  })

  test('gets a session that was played while the clock stood wrong', async () => {
    const { storage, folder, keeper } = keep()
    await storage.append(begun('a', '2026-01-02'))
    await storage.append(begun('b', '2026-03-20'))
    await keeper.choose()
    const wrong = begun('c', '2026-01-15')
    await storage.append(wrong)
    await keeper.expect([wrong])
    await keeper.write()
    expect(idsIn(folder, '2026-01')).toBe('a c')
    expect(folder.reads()).toBe(0)
  })

  test('is left in peace when it is stopped, and its files stay', async () => {
    const { storage, folder, keeper, state } = keep()
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    await keeper.stop()
    await storage.append(begun('b', '2026-03-21'))
    await keeper.write()
    expect(state()).toEqual({ kind: 'none' })
    expect(idsIn(folder, '2026-03')).toBe('a')
  })
})

describe('pieces', () => {
  const study: StoredPiece = {
    id: pieceId('p1'),
    title: 'A Study',
    fileName: 'study.mid',
    bytes: Uint8Array.of(0x4d, 0x54, 0x68, 0x64),
    addedAtEpochMs: 1,
  }
  const linesIn = ({ files }: FakeFolder) => parseJournal(files.get(piecesFile) ?? '').pieces

  test('stand in a file of their own, which is written when one of them is new or changed', async () => {
    const { storage, folder, keeper } = keep()
    await keeper.choose()
    expect(folder.files.size).toBe(0)
    await storage.putPiece(study)
    await storage.saveHands(study.id, [{ from: '0', to: '1', hand: 'left' }])
    await keeper.write()
    await keeper.write()
    expect(folder.written).toEqual([piecesFile])
    expect(linesIn(folder)).toMatchObject([
      { kind: 'pieceFile', title: 'A Study', bytes: 'TVRoZA' },
      { kind: 'pieceHands', corrections: [{ hand: 'left' }] },
    ])
  })

  test('and one that is removed here, or comes from elsewhere, stays in it', async () => {
    const { storage, folder, keeper } = keep()
    const other = fileLine({ ...study, id: pieceId('p2') }, 1)
    folder.putByOther(piecesFile, formatPieceLine(other))
    await storage.putPiece(study)
    await keeper.choose()
    await storage.removePiece(study.id)
    await storage.saveSpots(study.id, { said: [], order: [] })
    await keeper.write()
    expect(linesIn(folder).map(({ kind, piece }) => `${kind} ${piece}`)).toEqual([
      'pieceFile p1',
      'pieceFile p2',
      'pieceSpots p1',
    ])
  })

  test('that stand in the file of a month stay there', async () => {
    const { storage, folder, keeper, on } = keep()
    folder.putByOther('passagework-2026-03.jsonl', formatPieceLine(fileLine(study, 1)))
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    on('2026-03-21')
    await storage.append(begun('b', '2026-03-21'))
    await keeper.write()
    const text = folder.files.get('passagework-2026-03.jsonl') ?? ''
    expect(parseJournal(text).pieces).toEqual([fileLine(study, 1)])
    expect(idsIn(folder, '2026-03')).toBe('a b')
  })
})

describe('what stands there already', () => {
  test('is never lost: the file becomes the union, each time again, and odd lines stay', async () => {
    const { storage, folder, keeper, state, on } = keep()
    const file = 'passagework-2026-03.jsonl'
    folder.putByOther(file, `${formatJournal([begun('x', '2026-03-01')])}half a li`)
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    expect(state()).toMatchObject({ kind: 'ready', elsewhere: 1 })
    on('2026-03-21')
    await storage.append(begun('b', '2026-03-21'))
    await keeper.write()
    expect(idsIn(folder, '2026-03')).toBe('x a b')
    expect(folder.files.get(file)?.trimEnd().split('\n').at(-1)).toBe('half a li')
    expect(state()).toMatchObject({ kind: 'ready', elsewhere: 1 })
  })

  test('and what another machine writes between is kept too', async () => {
    const { storage, folder, keeper, on } = keep()
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    const theirs = [begun('a', '2026-03-20'), begun('z', '2026-03-20')]
    folder.putByOther('passagework-2026-03.jsonl', formatJournal(theirs))
    on('2026-03-21')
    await storage.append(begun('b', '2026-03-21'))
    await keeper.write()
    expect(idsIn(folder, '2026-03')).toBe('a z b')
  })

  test('an empty record that is given a full folder does not empty it', async () => {
    const { storage, folder, keeper } = keep()
    folder.putByOther('passagework-2026-03.jsonl', formatJournal([begun('x', '2026-03-01')]))
    await keeper.choose()
    await storage.append(begun('a', '2026-03-21'))
    await keeper.write()
    expect(idsIn(folder, '2026-03')).toBe('x a')
  })

  test('two machines that write into one folder in any order end with the union of both', async () => {
    const steps = fc.array(fc.tuple(fc.boolean(), fc.nat({ max: 19 })), { maxLength: 20 })
    await fc.assert(
      fc.asyncProperty(
        fc.array(anyEvent, { minLength: 20, maxLength: 20 }),
        steps,
        async (any, all) => {
          const events = any.map((event, i) => ({ ...event, id: eventId(`e${i}`) }))
          const folder = createFakeFolder()
          const last = Math.max(...events.map(({ atEpochMs }) => atEpochMs))
          const day = new Date(last).toISOString().slice(0, 10)
          const machines = [keep(folder, undefined, day), keep(folder, undefined, day)] as const
          const done: JournalEvent[] = []
          for (const { keeper } of machines) await keeper.choose()
          for (const [which, at] of all) {
            const { storage, keeper } = machines[which ? 0 : 1]
            const event = events[at]
            if (!event) continue
            done.push(event)
            await keeper.expect([event])
            await storage.importAll([event])
            await keeper.write()
          }
          const text = [...folder.files.values()].join('')
          expect(mergeJournals(parseJournal(text).events).map(({ id }) => id)).toEqual(
            mergeJournals(done).map(({ id }) => id),
          )
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('trouble', () => {
  test('a permission that lapsed is asked for again, in a press of the person', async () => {
    const { storage, folder, keeper, state, on } = keep()
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    folder.permit('prompt', 'granted')
    on('2026-03-21')
    await storage.append(begun('b', '2026-03-21'))
    await keeper.write()
    expect(state()).toMatchObject({ kind: 'asks', name: 'Piano' })
    expect(idsIn(folder, '2026-03')).toBe('a')
    await keeper.allow()
    expect(state().kind).toBe('ready')
    expect(idsIn(folder, '2026-03')).toBe('a b')
  })

  test('a permission that is refused leaves all as it is', async () => {
    const { storage, folder, keeper, state } = keep()
    await storage.append(begun('a', '2026-03-20'))
    folder.permit('prompt', 'denied')
    await keeper.choose()
    await keeper.allow()
    expect(state().kind).toBe('asks')
    expect(folder.files.size).toBe(0)
  })

  // Names of the File System Standard and of Web IDL.
  test.each([
    ['NotFoundError', /not there.*Bring it back/],
    ['NotAllowedError', /does not let this page write/],
    ['QuotaExceededError', /no room left.*as it was before/],
    ['NoModificationAllowedError', /holds the file.*as it was before/],
    ['UnknownError', /could not be written: odd/],
  ])('%s is told, and the next writing makes up for it', async (name, message) => {
    const { storage, folder, keeper, state } = keep()
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    await storage.append(begun('b', '2026-03-21'))
    folder.failWith(new DOMException('odd', name))
    await keeper.write()
    expect(state()).toMatchObject({ kind: 'failed', message: expect.stringMatching(message) })
    expect(idsIn(folder, '2026-03')).toBe('a')
    folder.failWith(undefined)
    await keeper.write()
    expect(state().kind).toBe('ready')
    expect(idsIn(folder, '2026-03')).toBe('a b')
  })

  test('a file that is shorter than what was written is told', async () => {
    const { storage, folder, keeper, state } = keep(
      Object.assign(createFakeFolder(), {
        write: () => Promise.resolve({ size: 7, lastModified: 1 }),
      }),
    )
    await storage.append(begun('a', '2026-03-20'))
    await keeper.choose()
    expect(state()).toMatchObject({ kind: 'failed', message: expect.stringMatching(/7 bytes/) })
    expect(folder.files.size).toBe(0)
  })

  test('where the browser knows no folders it is said', () => {
    const keeper = createFolderKeeper(createMemoryStorage(), {
      now: () => 0,
      alone: (run) => run(),
    })
    keeper.watch((state) => expect(state).toEqual({ kind: 'unsupported' }))
    expect.assertions(1)
  })
})
