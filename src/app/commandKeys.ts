import { pedals, type KeyEvent, type Pedal } from '@/music/keyEvent'
import { key, type Key } from '@/music/units'

/** What can be asked for in a drill from the instrument itself. */
export const drillCommands = ['hear', 'again', 'next', 'back', 'goOn', 'metronome'] as const
export type DrillCommand = (typeof drillCommands)[number]

/** A key outside the passage, or a pedal, that was bound to a command. */
export type Binding =
  { readonly kind: 'key'; readonly key: Key } | { readonly kind: 'pedal'; readonly pedal: Pedal }

export type Bindings = Readonly<Partial<Record<DrillCommand, Binding>>>

/** From the lowest to the highest key of a passage, and what lies near them, both ends included: there a bound key plays. */
export interface Reach {
  readonly lowest: number
  readonly highest: number
}

/**
 * A fourth, in semitones. A slip goes to a neighbouring key or misses a leap by a few keys; the inner
 * part of an octave grip, struck by a thumb or a fifth finger that lands beside its key, stays within
 * it too. Common practice, no source.
 */
const margin = 5

export const reachOf = (keys: readonly Key[]): Reach => ({
  lowest: Math.min(...keys) - margin,
  highest: Math.max(...keys) + margin,
})

/** A bound key works as a command where this chunk is drilled; a pedal always does. */
export const isFree = (binding: Binding, { lowest, highest }: Reach): boolean =>
  binding.kind === 'pedal' || binding.key < lowest || binding.key > highest

/** Where the command keys and pedals stand. */
export interface Pressed {
  readonly keys: ReadonlySet<Key>
  readonly pedals: ReadonlySet<Pedal>
}

export const nothingPressed: Pressed = { keys: new Set(), pedals: new Set() }

/** What an event of the instrument is: playing, a command, or the rest of a command (its key comes up). */
export type Meaning =
  | { readonly kind: 'playing' }
  | { readonly kind: 'command'; readonly command: DrillCommand }
  | { readonly kind: 'nothing' }

/** Down is 64 and more (MIDI 1.0); up again only well below, so that a half pedal does not flutter. */
const pedalDown = 64
const pedalUp = 40

/**
 * Tells commands from playing. A command's key goes up as nothing even when its binding or the chunk
 * has changed meanwhile.
 */
export const readCommand = (
  pressed: Pressed,
  event: KeyEvent,
  bindings: Bindings,
  reach: Reach,
): readonly [Pressed, Meaning] => {
  switch (event.kind) {
    case 'down': {
      const command = commandBoundTo(bindings, { kind: 'key', key: event.key })
      if (!command || !isFree({ kind: 'key', key: event.key }, reach))
        return [pressed, { kind: 'playing' }]
      return [
        { ...pressed, keys: new Set([...pressed.keys, event.key]) },
        { kind: 'command', command },
      ]
    }
    case 'up': {
      if (!pressed.keys.has(event.key)) return [pressed, { kind: 'playing' }]
      return [{ ...pressed, keys: without(pressed.keys, event.key) }, { kind: 'nothing' }]
    }
    case 'pedal':
      return readPedal(pressed, event, bindings)
  }
}

const readPedal = (
  pressed: Pressed,
  { pedal, value }: Extract<KeyEvent, { kind: 'pedal' }>,
  bindings: Bindings,
): readonly [Pressed, Meaning] => {
  const command = commandBoundTo(bindings, { kind: 'pedal', pedal })
  const wasDown = pressed.pedals.has(pedal)
  if (!command && !wasDown) return [pressed, { kind: 'playing' }]
  if (wasDown && value < pedalUp)
    return [{ ...pressed, pedals: without(pressed.pedals, pedal) }, { kind: 'nothing' }]
  if (!command || wasDown || value < pedalDown) return [pressed, { kind: 'nothing' }]
  return [
    { ...pressed, pedals: new Set([...pressed.pedals, pedal]) },
    { kind: 'command', command },
  ]
}

/** The key or pedal that an event binds, when a command is being learnt. */
export const bindingIn = (event: KeyEvent, allowDamper: boolean): Binding | undefined => {
  if (event.kind === 'down') return { kind: 'key', key: event.key }
  if (event.kind === 'up' || event.value < pedalDown) return undefined
  return event.pedal === 'sustain' && !allowDamper
    ? undefined
    : { kind: 'pedal', pedal: event.pedal }
}

/** One key or pedal means one thing: what it meant before, it means no more. */
export const bind = (bindings: Bindings, command: DrillCommand, binding: Binding): Bindings => {
  const others = entriesOf(bindings).filter(
    ([of, other]) => of !== command && !isSame(other, binding),
  )
  return Object.fromEntries([...others, [command, binding]])
}

export const unbind = (bindings: Bindings, command: DrillCommand): Bindings =>
  Object.fromEntries(entriesOf(bindings).filter(([of]) => of !== command))

/** What the damper pedal means is forgotten where it may only damp. */
export const withoutDamper = (bindings: Bindings): Bindings =>
  Object.fromEntries(
    entriesOf(bindings).filter(([, b]) => b.kind !== 'pedal' || b.pedal !== 'sustain'),
  )

/** Reads stored bindings; what is unknown is left out, and of two for one key the first stays. */
export const decodeBindings = (stored: unknown): Bindings => {
  if (typeof stored !== 'object' || stored === null) return {}
  const given: Readonly<Record<string, unknown>> = { ...stored }
  const decoded: [DrillCommand, Binding][] = []
  for (const command of drillCommands) {
    const binding = decodeBinding(given[command])
    if (binding && !decoded.some(([, other]) => isSame(other, binding)))
      decoded.push([command, binding])
  }
  return Object.fromEntries(decoded)
}

const decodeBinding = (stored: unknown): Binding | undefined => {
  if (typeof stored !== 'object' || stored === null) return undefined
  const given: Readonly<Record<string, unknown>> = { ...stored }
  const { kind, key: number } = given
  const pedal = pedals.find((each) => each === given['pedal'])
  if (kind === 'pedal') return pedal && { kind, pedal }
  const isKey = typeof number === 'number' && Number.isInteger(number)
  return kind === 'key' && isKey && number >= 0 && number <= 127
    ? { kind, key: key(number) }
    : undefined
}

const commandBoundTo = (bindings: Bindings, binding: Binding): DrillCommand | undefined =>
  entriesOf(bindings).find(([, bound]) => isSame(bound, binding))?.[0]

const entriesOf = (bindings: Bindings): readonly (readonly [DrillCommand, Binding])[] =>
  drillCommands.flatMap((command) => {
    const binding = bindings[command]
    return binding ? [[command, binding] as const] : []
  })

const isSame = (a: Binding, b: Binding): boolean =>
  a.kind === 'key' ? b.kind === 'key' && a.key === b.key : b.kind === 'pedal' && a.pedal === b.pedal

const without = <T>(all: ReadonlySet<T>, one: T): ReadonlySet<T> => {
  const rest = new Set(all)
  rest.delete(one)
  return rest
}
