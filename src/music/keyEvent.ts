import type { Key, Ms } from './units'

export const pedals = ['sustain', 'sostenuto', 'soft'] as const
export type Pedal = (typeof pedals)[number]

/** A key pressed. `velocity` 1 to 127. */
export interface KeyDown {
  readonly kind: 'down'
  readonly key: Key
  readonly velocity: number
  /** The event's own timestamp, from the device on. */
  readonly at: Ms
}

export interface KeyUp {
  readonly kind: 'up'
  readonly key: Key
  readonly at: Ms
}

/** A pedal moved. `value` 0 to 127; 64 and more is down (MIDI 1.0, controllers 64, 66, 67). */
export interface PedalMove {
  readonly kind: 'pedal'
  readonly pedal: Pedal
  readonly value: number
  readonly at: Ms
}

/** What every device gives: one stream of key and pedal events, in the order of their times. */
export type KeyEvent = KeyDown | KeyUp | PedalMove

/** Recorded playing, sorted by time. */
export interface Take {
  readonly events: readonly KeyEvent[]
}
