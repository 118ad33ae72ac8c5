/**
 * Everything that can play: a MIDI keyboard, the computer's keys, the keys on screen, a simulated
 * player. All give one stream of `KeyEvent`, stamped with the event's own time. An instrument can be
 * played too (midiOut.ts).
 *
 * Example: `const stop = device.listen((event) => step(event))`; `stop()` ends it.
 */
import type { KeyEvent } from '@/music/keyEvent'

export type Stop = () => void

/** What can be listened to. */
export interface Device {
  readonly listen: (hear: (event: KeyEvent) => void) => Stop
}

/** A MIDI input as the person sees it. */
export interface MidiInput {
  readonly id: string
  readonly name: string
  /** It is heard, pulled out, or another program has it. */
  readonly standing: 'there' | 'unplugged' | 'taken'
}

/** Where Web MIDI stands. */
export type MidiState =
  | { readonly kind: 'asking' }
  | { readonly kind: 'unsupported' }
  | { readonly kind: 'denied' }
  | { readonly kind: 'failed'; readonly detail: string }
  | {
      readonly kind: 'ready'
      /** Those that are there, and those that were there in this session. */
      readonly inputs: readonly MidiInput[]
      /** The input listened to: its id, or 'all'. A chosen one that came back under another id has that one. */
      readonly chosen?: string
    }

/** The MIDI keyboard: which inputs there are, as they come and go. */
export interface MidiDevice extends Device {
  /** Asks for access (a permission prompt may show); the answer arrives by `watch`. */
  readonly connect: () => Promise<void>
  /** Called at once with the present state, then at each change. */
  readonly watch: (see: (state: MidiState) => void) => Stop
  /** Listen to one input by its id, or to all. */
  readonly choose: (inputId: string | 'all', name?: string) => void
  /** Semitones added to each key, for a transposed or octave-shifted keyboard. */
  readonly transpose: (semitones: number) => void
}
