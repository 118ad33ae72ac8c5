import type { Output } from 'webmidi'
import { ms, type Key, type Ms } from '@/music/units'
import type { Echoes } from './echoes'
import type { MidiInput, Stop } from './devices'
import { createListeners } from './listeners'
import { loadMidiLibrary, type MidiLibrary } from './midiLibrary'

/** A note to be sent: seconds from the start, velocity 1 to 127. */
export interface SentNote {
  readonly key: Key
  readonly at: number
  readonly length: number
  readonly velocity: number
}

/** An instrument that plays what is sent to it, by Web MIDI. Access is asked for by the MIDI keyboard. */
export interface MidiOut {
  /** The instruments that can be sent to; called at once and at each change. */
  readonly watch: (see: (outputs: readonly MidiInput[]) => void) => Stop
  /** By its id, or by its name where the browser gives it another id; an empty id is none. */
  readonly choose: (id: string, name: string) => void
  /** One is chosen, and it is there. */
  readonly isReady: () => boolean
  /** Resolves at the end, or when stopped; whatever sounded before stops. */
  readonly play: (notes: readonly SentNote[]) => Promise<void>
  /** Every note that was sent goes off. */
  readonly quiet: () => void
}

/** Messages are handed over this long ahead, with their times; what is handed over cannot be taken back. */
const lookAheadMs = 100
const wakeEveryMs = 25
const leadInMs = 80

/** Channel 1: note on, note off, and the controller that means all notes off (MIDI 1.0). */
const noteOn = 0x90
const noteOff = 0x80
const allNotesOff = [0xb0, 123, 0] as const
/** Hardly a key that a person lets go has this, so that an echo is told from it. */
const releaseVelocity = 63

interface Message {
  readonly bytes: readonly [number, number, number]
  readonly at: Ms
}

export const createMidiOut = (
  tellSent: Echoes['sent'],
  page: Pick<EventTarget, 'addEventListener'>,
): MidiOut => {
  const watchers = createListeners<readonly MidiInput[]>()
  let library: MidiLibrary | undefined
  let outputs: readonly MidiInput[] = []
  let chosen = ''
  let chosenName = ''
  /** Not handed over yet. */
  let waiting: readonly Message[] = []
  /** Keys that were struck and not let go, as far as was handed over, and up to when that is. */
  const down = new Set<number>()
  let handedTo = ms(0)
  let timer: ReturnType<typeof setInterval> | undefined
  let finish = (): void => {}

  const target = (): Output | undefined =>
    chosen === ''
      ? undefined
      : library?.outputs.find(({ id, name, state }) => state === 'connected' && isChosen(id, name))
  const isChosen = (id: string, name: string): boolean =>
    id === chosen || (name === chosenName && !outputs.some((one) => one.id === chosen))
  const send = (output: Output, { bytes, at }: Message): void => {
    output.send([...bytes], { time: at })
    tellSent(bytes, at)
    if (bytes[0] === noteOn) down.add(bytes[1])
    else if (bytes[0] === noteOff) down.delete(bytes[1])
    handedTo = ms(Math.max(handedTo, at))
  }
  const wake = (): void => {
    const output = target()
    if (!output) return stop()
    const until = performance.now() + lookAheadMs
    for (const message of waiting.filter(({ at }) => at <= until)) send(output, message)
    waiting = waiting.filter(({ at }) => at > until)
    if (waiting.length === 0 && performance.now() >= handedTo) stop()
  }
  /** Nothing more is handed over. */
  const stop = (): void => {
    clearInterval(timer)
    timer = undefined
    waiting = []
    finish()
    finish = () => {}
  }
  /** After the last that was handed over, since that cannot be taken back. */
  const quiet = (): void => {
    stop()
    const output = target()
    if (!output || handedTo === 0) return
    const at = ms(Math.max(performance.now(), handedTo + 1))
    for (const key of down) send(output, { bytes: [noteOff, key, releaseVelocity], at })
    send(output, { bytes: allNotesOff, at })
    handedTo = ms(0)
  }
  const look = (): void => {
    const now = (library?.outputs ?? []).map(({ id, name, state }): MidiInput => ({
      id,
      name,
      standing: state === 'connected' ? 'there' : 'unplugged',
    }))
    const gone = outputs.filter(({ id }) => !now.some((one) => one.id === id))
    outputs = [...now, ...gone.map((one): MidiInput => ({ ...one, standing: 'unplugged' }))]
    if (!target()) stop()
    // It was pulled amid a note, and is back.
    else if (timer === undefined && down.size > 0) quiet()
    watchers.tell(outputs)
  }
  const begin = (loaded: MidiLibrary): void => {
    library = loaded
    library.addListener('enabled', look)
    library.addListener('portschanged', look)
    look()
  }
  // Where it cannot be fetched there are no instruments, and the MIDI keyboard says why.
  loadMidiLibrary().then(begin, () => undefined)
  page.addEventListener('pagehide', quiet)
  // Timers nearly stand still in a page that nobody sees. The event comes up from the document.
  page.addEventListener('visibilitychange', () => {
    if (globalThis.document?.visibilityState !== 'visible') quiet()
  })

  return {
    watch: (see) => {
      see(outputs)
      return watchers.add(see)
    },
    choose: (id, name) => {
      if (id === chosen) return
      quiet()
      chosen = id
      chosenName = outputs.find((one) => one.id === id)?.name ?? name
    },
    isReady: () => target() !== undefined,
    play: (notes) => {
      quiet()
      const start = performance.now() + leadInMs
      waiting = messagesOf(notes, start)
      if (waiting.length === 0) return Promise.resolve()
      return new Promise((resolve) => {
        finish = resolve
        timer = setInterval(wake, wakeEveryMs)
        wake()
      })
    },
    quiet,
  }
}

/** In the order of time; a key goes up before it is struck again. */
const messagesOf = (notes: readonly SentNote[], start: number): readonly Message[] =>
  notes
    .flatMap(({ key, at, length, velocity }): Message[] => [
      { bytes: [noteOn, key, velocity], at: ms(start + at * 1000) },
      { bytes: [noteOff, key, releaseVelocity], at: ms(start + (at + length) * 1000) },
    ])
    .toSorted((a, b) => a.at - b.at || a.bytes[0] - b.bytes[0])
