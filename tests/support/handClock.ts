import type { PlayerClock } from '@/devices/simulatedPlayer'

/** A clock that stands still until it is moved by hand; timers run in their order as it passes them. */
export interface HandClock extends PlayerClock<number> {
  readonly move: (byMs: number) => void
}

export const createHandClock = (start = 0): HandClock => {
  let now = start
  let count = 0
  const timers = new Map<number, { readonly at: number; readonly run: () => void }>()
  const due = (until: number) =>
    [...timers].filter(([, timer]) => timer.at <= until).toSorted(([, a], [, b]) => a.at - b.at)[0]
  return {
    now: () => now,
    setTimer: (run, delayMs) => {
      timers.set(++count, { at: now + Math.max(0, delayMs), run })
      return count
    },
    clearTimer: (timer) => timers.delete(timer),
    move: (byMs) => {
      const until = now + byMs
      for (let next = due(until); next; next = due(until)) {
        const [id, timer] = next
        timers.delete(id)
        now = Math.max(now, timer.at)
        timer.run()
      }
      now = until
    },
  }
}
