import type { JournalEvent } from '@/journal/journal'
import { openStorage } from './indexedDb'
import { createMemoryStorage } from './memory'
import type { StorageProblem } from './problem'
import type { Storage, Stored } from './storage'

/** A disk that is full is asked again so often. */
const retryMs = 10_000

/**
 * Memory in the place of a database that does not open. Where only another tab holds it back, or the
 * disk is full, all moves over when that has passed: nothing that was played meanwhile is lost.
 */
export const rememberInstead = (
  reason: StorageProblem,
  open: () => Stored<Storage> = openStorage,
): Storage => {
  const memory = createMemoryStorage(reason)
  if (reason.kind !== 'blocked' && reason.kind !== 'quota') return memory
  let current: Storage = memory
  let closed = false
  let retry: ReturnType<typeof setTimeout> | undefined
  const watchers = new Set<(problem: StorageProblem | undefined) => void>()
  const othersWatchers = new Set<(event: JournalEvent) => void>()

  const move = async (): Promise<void> => {
    // Where it was blocked, the browser lets this request wait behind the one that was.
    const opened = await open()
    if (closed) return
    if (!opened.ok) return tryLater()
    const database = opened.value
    const moved = await memory.moveTo(database)
    if (!moved.ok) {
      database.close()
      return tryLater()
    }
    current = database
    // What came while it moved.
    await memory.moveTo(database)
    for (const see of othersWatchers) database.watchOthers(see)
    database.watch((problem) => {
      for (const see of watchers) see(problem ?? { kind: 'moved' })
    })
  }
  const tryLater = (): void => {
    retry = setTimeout(() => void move(), retryMs)
  }
  if (reason.kind === 'blocked') void move()
  else tryLater()

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
      clearTimeout(retry)
      current.close()
    },
  }
  return new Proxy(memory, {
    get: (_, name): unknown => Reflect.get(name in own ? own : current, name),
  })
}
