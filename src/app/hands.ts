import type { KeyEvent } from '@/music/keyEvent'
import type { Key, Ms } from '@/music/units'

/** Whether the hands are at the keys or rest. */
export interface Hands {
  readonly hear: (event: KeyEvent) => void
  /** All keys are up, and have been for so long. */
  readonly haveRested: (at: Ms, forMs: number) => boolean
}

export const createHands = (): Hands => {
  const down = new Set<Key>()
  let lastMove = -Infinity
  return {
    hear: (event) => {
      if (event.kind === 'pedal') return
      lastMove = event.at
      if (event.kind === 'down') down.add(event.key)
      else down.delete(event.key)
    },
    haveRested: (at, forMs) => down.size === 0 && at >= lastMove + forMs,
  }
}
