import type { Stop } from './devices'

/** Those who listen to one source. A listener that leaves while being told is told no more. */
export interface Listeners<T> {
  readonly add: (listener: (value: T) => void) => Stop
  readonly tell: (value: T) => void
  readonly count: () => number
}

export const createListeners = <T>(): Listeners<T> => {
  const all = new Set<{ readonly hear: (value: T) => void }>()
  return {
    add: (hear) => {
      const listener = { hear }
      all.add(listener)
      return () => {
        all.delete(listener)
      }
    },
    tell: (value) => {
      for (const listener of all) listener.hear(value)
    },
    count: () => all.size,
  }
}
