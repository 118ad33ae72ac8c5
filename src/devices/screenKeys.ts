import { ms, type Key, type Ms } from '@/music/units'
import type { Device } from './devices'
import { createHolding } from './holding'

/** The keys on screen: the view pushes each pointer in, several at once. */
export interface ScreenKeys extends Device {
  /** A pointer went down on a key, or slid onto another one: that lifts the one before. */
  readonly press: (key: Key, at: number, pointerId: number, velocity?: number) => void
  readonly release: (at: number, pointerId: number) => void
  readonly releaseAll: (at: number) => void
}

/** A pointer tells no force; a middle one lies clear of both brushed and struck hard. */
const pointerVelocity = 72

/** `at` is the pointer event's own `timeStamp`. */
export const createScreenKeys = (): ScreenKeys => {
  const holding = createHolding()
  const under = new Map<number, Key>()
  const release = (at: Ms, pointerId: number): void => {
    under.delete(pointerId)
    holding.letGo(`${pointerId}`, at)
  }
  return {
    listen: holding.listen,
    press: (key, at, pointerId, velocity = pointerVelocity) => {
      if (under.get(pointerId) === key) return
      release(ms(at), pointerId)
      under.set(pointerId, key)
      holding.feed(`${pointerId}`, { kind: 'down', key, velocity, at: ms(at) })
    },
    release: (at, pointerId) => release(ms(at), pointerId),
    releaseAll: (at) => {
      for (const pointerId of under.keys()) release(ms(at), pointerId)
    },
  }
}
