import { describe, expect, test } from 'vitest'
import { createCopies, type Copies } from '@/app/copies'
import type { FolderPort, FolderState, Keeping } from '@/app/copyPorts'
import { eventId } from '@/journal/ids'
import { parseJournal } from '@/journal/lines'
import type { JournalEvent } from '@/journal/journal'
import { createMemoryStorage } from '@/storage/memory'
import type { Storage } from '@/storage/storage'
import { createDesk, type Desk } from '../support/fakePorts'
import { drillBegun, repetition } from '../review/session'

const dayMs = 86_400_000

/** So many repetitions with ids of their own. */
const played = (count: number, name = 'r'): readonly JournalEvent[] => [
  drillBegun(1),
  ...Array.from({ length: count }, (_, i) => ({
    ...repetition('c', i + 1),
    id: eventId(`${name}${i}`),
  })),
]

interface Sat {
  readonly desk: Desk
  readonly copies: Copies
  /** What was asked of the browser and of the folder, in order. */
  readonly asked: string[]
  readonly play: (count: number, name?: string) => Promise<readonly JournalEvent[]>
}

const sit = (
  storage: Storage = createMemoryStorage(),
  folderState: FolderState = { kind: 'none' },
): Sat => {
  const asked: string[] = []
  const folder: Partial<FolderPort> = {
    watch: (see) => {
      see(folderState)
      return () => undefined
    },
    write: async () => void asked.push('write'),
    expect: async (events) => void asked.push(`expect ${events.length}`),
  }
  const desk = createDesk([], storage, 0, folder)
  const keeping: Keeping = { promised: true, words: 'kept' }
  const askToPersist = async (): Promise<Keeping> => {
    asked.push('persist')
    return keeping
  }
  const ports = { ...desk.ports, storage: { ...desk.ports.storage, askToPersist } }
  const play = async (count: number, name?: string): Promise<readonly JournalEvent[]> => {
    const events = played(count, name)
    await storage.importAll(events)
    return events
  }
  return { desk, copies: createCopies(ports), asked, play }
}
const reminded = ({ copies }: Sat): boolean => copies.copies.getState().reminder

describe('the browser is asked to keep the record for good', () => {
  test('at the end of the first session that is worth it, and once', async () => {
    const at = sit()
    await at.copies.sessionEnded(await at.play(9))
    expect(at.asked).not.toContain('persist')
    const events = await at.play(10)
    await at.copies.sessionEnded(events)
    await at.copies.sessionEnded(events)
    expect(at.asked.filter((each) => each === 'persist')).toEqual(['persist'])
    expect(at.copies.copies.getState().keeping?.words).toBe('kept')
  })

  test('not where nothing was played', async () => {
    const at = sit()
    await at.copies.sessionEnded([drillBegun(1)])
    expect(at.asked).toEqual([])
  })
})

describe('a saved record', () => {
  test('is dated, and what comes after it is counted, also on a page opened later', async () => {
    const storage = createMemoryStorage()
    const at = sit(storage)
    await at.play(7)
    await at.copies.save()
    const [[name, text] = ['', '']] = [...at.desk.saved]
    expect(name).toBe('passagework-2026-01-05.jsonl')
    expect(parseJournal(text).events).toHaveLength(8)
    await at.play(3, 'later')
    const later = sit(storage)
    await later.copies.lookAtCopies()
    expect(later.copies.copies.getState()).toMatchObject({
      saved: { atEpochMs: at.desk.ports.wallClock(), repetitions: 7 },
      since: 3,
      keeping: { words: expect.stringContaining('does not say') },
    })
  })

  test('is at least what is in memory, where the database cannot be read', async () => {
    const memory = createMemoryStorage()
    const broken: Storage = {
      ...memory,
      eventsInParts: async () => ({ ok: false, reason: { kind: 'replaced' } }),
    }
    const at = sit(broken)
    await at.play(2)
    await at.copies.save()
    const [[name, text] = ['', '']] = [...at.desk.saved]
    expect(name).toBe('passagework-unsaved-2026-01-05.jsonl')
    expect(parseJournal(text).events).toHaveLength(3)
    expect(at.copies.copies.getState().problem).toMatch(/newer version.*holds what is not/)
  })
})

describe('a reminder to save a copy', () => {
  test.each([
    ['few were played and none is saved', 499, undefined, undefined, false],
    ['many were played and none is saved', 500, undefined, undefined, true],
    ['some since a month', 60, 31, 0, true],
    ['some since a fortnight', 60, 14, 0, false],
    ['hardly any since a month', 49, 31, 0, false],
    ['told four days ago', 500, undefined, 4, false],
    ['told eight days ago', 500, undefined, 8, true],
  ])('%s: %i repetitions', async (_, count, savedDaysAgo, toldDaysAgo, due) => {
    const at = sit()
    const now = at.desk.ports.wallClock()
    await at.desk.storage.saveAside('copies', {
      ...(savedDaysAgo === undefined
        ? {}
        : { saved: { atEpochMs: now - savedDaysAgo * dayMs, repetitions: 0 } }),
      ...(toldDaysAgo === undefined || toldDaysAgo === 0
        ? {}
        : { remindedAtEpochMs: now - toldDaysAgo * dayMs }),
    })
    await at.copies.sessionEnded(await at.play(count))
    expect(reminded(at)).toBe(due)
  })

  test('is said once, and not again on the next day', async () => {
    const storage = createMemoryStorage()
    const first = sit(storage)
    await first.copies.sessionEnded(await first.play(500))
    expect(reminded(first)).toBe(true)
    const next = sit(storage)
    await next.copies.sessionEnded(await next.play(20, 'more'))
    expect(reminded(next)).toBe(false)
  })

  test('goes when the record is saved', async () => {
    const at = sit()
    await at.copies.sessionEnded(await at.play(500))
    await at.copies.save()
    expect(reminded(at)).toBe(false)
  })

  test('is not needed where a folder keeps a copy, which is written at the end of a session', async () => {
    const at = sit(undefined, { kind: 'ready', name: 'Piano' })
    await at.copies.sessionEnded(await at.play(600))
    expect(reminded(at)).toBe(false)
    expect(at.asked.slice(0, 2)).toEqual(['expect 601', 'write'])
  })

  test('what was kept of it and is odd counts as never', async () => {
    const at = sit()
    await at.desk.storage.saveAside('copies', { saved: { atEpochMs: 'x' }, remindedAtEpochMs: [] })
    await at.copies.lookAtCopies()
    expect(at.copies.copies.getState().saved).toBeUndefined()
  })
})
