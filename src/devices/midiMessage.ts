import type { KeyEvent, Pedal } from '@/music/keyEvent'
import { key, type Ms } from '@/music/units'

/** Damper, sostenuto and soft pedal (MIDI 1.0, control change numbers). */
const pedalControllers: ReadonlyMap<number, Pedal> = new Map([
  [64, 'sustain'],
  [66, 'sostenuto'],
  [67, 'soft'],
])

/**
 * One MIDI message as a key event: `[0x90, 60, 64]` is C4 down. `undefined` for all that moves no key
 * or pedal: clock, active sensing, bends, other controllers. A note-on of velocity 0 is an up (MIDI 1.0).
 */
export const readMidiMessage = (bytes: ArrayLike<number>, at: Ms): KeyEvent | undefined => {
  const [status = 0, first = 0, second = 0] = [bytes[0], bytes[1], bytes[2]]
  if (bytes.length < 3 || first > 127 || second > 127) return undefined
  switch (status & 0xf0) {
    case 0x80:
      return { kind: 'up', key: key(first), at }
    case 0x90:
      if (second === 0) return { kind: 'up', key: key(first), at }
      return { kind: 'down', key: key(first), velocity: second, at }
    case 0xb0: {
      const pedal = pedalControllers.get(first)
      return pedal && { kind: 'pedal', pedal, value: second, at }
    }
  }
  return undefined
}

/** All sound off and all notes off (MIDI 1.0, controllers 120 and 123): the sender lets go of every key. */
export const isAllOff = (bytes: ArrayLike<number>): boolean =>
  ((bytes[0] ?? 0) & 0xf0) === 0xb0 && (bytes[1] === 120 || bytes[1] === 123)
