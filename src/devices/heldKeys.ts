import { unreachable } from '@/music/music'
import { pedals, type KeyEvent, type Pedal } from '@/music/keyEvent'
import type { Key, Ms } from '@/music/units'

/**
 * Which source (an input, a pointer, a device) holds which keys and pedals. A key that two sources
 * hold is down once: two ports of one keyboard must not give every note twice.
 */
export interface Held {
  readonly keys: ReadonlyMap<Key, ReadonlySet<string>>
  /** The last value other than 0 of each pedal that a source has moved. */
  readonly pedals: ReadonlyMap<string, ReadonlyMap<Pedal, number>>
}

export const nothingHeld: Held = { keys: new Map(), pedals: new Map() }

/**
 * Passes a source's event on as a sound stream: each up follows its down, a key goes up when its
 * last source lets go, and a second strike without an up between gets one.
 */
export const hold = (
  held: Held,
  source: string,
  event: KeyEvent,
): readonly [Held, readonly KeyEvent[]] => {
  switch (event.kind) {
    case 'down': {
      const holders = held.keys.get(event.key) ?? new Set()
      const next = withKey(held, event.key, new Set([...holders, source]))
      if (holders.size === 0) return [next, [event]]
      if (!holders.has(source)) return [next, []]
      return [next, [{ kind: 'up', key: event.key, at: event.at }, event]]
    }
    case 'up': {
      const holders = held.keys.get(event.key)
      if (!holders?.has(source)) return [held, []]
      const rest = new Set([...holders].filter((holder) => holder !== source))
      return [withKey(held, event.key, rest), rest.size === 0 ? [event] : []]
    }
    case 'pedal': {
      const moved = new Map(held.pedals.get(source))
      if (event.value === 0) moved.delete(event.pedal)
      else moved.set(event.pedal, event.value)
      return [{ ...held, pedals: new Map(held.pedals).set(source, moved) }, [event]]
    }
  }
  return unreachable(event)
}

/** Lets go of everything that a source holds: it was pulled, stopped or lost the focus. */
export const letGo = (held: Held, source: string, at: Ms): readonly [Held, readonly KeyEvent[]] => {
  const ups = [...held.keys]
    .filter(([, holders]) => holders.has(source))
    .map(([key]): KeyEvent => ({ kind: 'up', key, at }))
  const lifted = pedals
    .filter((pedal) => held.pedals.get(source)?.has(pedal))
    .map((pedal): KeyEvent => ({ kind: 'pedal', pedal, value: 0, at }))
  let state = held
  const out: KeyEvent[] = []
  for (const event of [...ups, ...lifted]) {
    const [next, passed] = hold(state, source, event)
    state = next
    out.push(...passed)
  }
  return [state, out]
}

/** Every source that holds a key or a pedal. */
export const holders = (held: Held): readonly string[] => [
  ...new Set([...[...held.keys.values()].flatMap((set) => [...set]), ...held.pedals.keys()]),
]

const withKey = (held: Held, key: Key, sources: ReadonlySet<string>): Held => {
  const keys = new Map(held.keys)
  if (sources.size === 0) keys.delete(key)
  else keys.set(key, sources)
  return { ...held, keys }
}
