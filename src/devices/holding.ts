import type { KeyEvent } from '@/music/keyEvent'
import { ms, type Ms } from '@/music/units'
import type { Device } from './devices'
import { hold, holders, letGo, nothingHeld } from './heldKeys'
import { createListeners } from './listeners'

/** A device that is fed by its edge and keeps its stream sound: no key stays down when a source goes. */
export interface Holding extends Device {
  readonly feed: (source: string, event: KeyEvent) => void
  readonly letGo: (source: string, at: Ms) => void
  /** Without a time of its own, at that of the last event. */
  readonly letGoAll: (at?: Ms) => void
}

export const createHolding = (): Holding => {
  const listeners = createListeners<KeyEvent>()
  let held = nothingHeld
  let last = ms(0)
  const release = (source: string, at: Ms): void => {
    // The browser stamps a loss by another hand than the keys before it; time must not run backwards.
    last = ms(Math.max(last, at))
    const [next, events] = letGo(held, source, last)
    held = next
    events.forEach(listeners.tell)
  }
  return {
    listen: listeners.add,
    feed: (source, event) => {
      last = event.at
      const [next, events] = hold(held, source, event)
      held = next
      events.forEach(listeners.tell)
    },
    letGo: release,
    letGoAll: (at = last) => {
      for (const source of holders(held)) release(source, at)
    },
  }
}
