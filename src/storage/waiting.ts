import type { JournalEvent } from '@/journal/journal'
import { openStorage } from './indexedDb'
import { createMemoryStorage } from './memory'
import type { StorageProblem } from './problem'
import type { Storage, Stored } from './storage'

/**
 * Memory in the place of a database that does not open. Where only another tab holds it back, all moves
 * over when that tab lets go: nothing that was played meanwhile is lost.
 */
export const rememberInstead = (
  reason: StorageProblem,
  open: () => Stored<Storage> = openStorage,
): Storage => {
  const memory = createMemoryStorage(reason)
  if (reason.kind !== 'blocked') return memory
  let current: Storage = memory
  let closed = false
  const watchers = new Set<(problem: StorageProblem | undefined) => void>()
  const othersWatchers = new Set<(event: JournalEvent) => void>()

  const move = async (): Promise<void> => {
    // The browser lets this request wait behind the one that was blocked.
    const opened = await open()
    if (!opened.ok || closed) return
    const database = opened.value
    const moved = await memory.moveTo(database)
    if (!moved.ok) return database.close()
    current = database
    // What came while it moved.
    await memory.moveTo(database)
    for (const see of othersWatchers) database.watchOthers(see)
    database.watch((problem) => {
      for (const see of watchers) see(problem ?? { kind: 'moved' })
    })
  }
  void move()

  const own: Pick<Storage, 'watch' | 'watchOthers' | 'close'> = {
    watch: (see) => {
      watchers.add(see)
      see(reason)
      return () => watchers.delete(see)
    },
    watchOthers: (see) => {
      othersWatchers.add(see)
      return () => othersWatchers.delete(see)
    },
    close: () => {
      closed = true
      current.close()
    },
  }
  return new Proxy(memory, {
    get: (_, name): unknown => Reflect.get(name in own ? own : current, name),
  })
}
