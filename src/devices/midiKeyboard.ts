import type { Input } from 'webmidi'
import type { KeyEvent } from '@/music/keyEvent'
import { key, ms, type Ms } from '@/music/units'
import type { Echoes } from './echoes'
import type { MidiDevice, MidiInput, MidiState } from './devices'
import { createHolding } from './holding'
import { createListeners } from './listeners'
import { loadMidiLibrary, type MidiLibrary } from './midiLibrary'
import { isAllOff, readMidiMessage } from './midiMessage'
import { watchRefusals } from './refusals'

/** The MIDI keyboard by Web MIDI. Asks for nothing before `connect`. */
export const createMidiKeyboard = (isEcho: Echoes['isEcho'] = () => false): MidiDevice => {
  const holding = createHolding()
  const watchers = createListeners<MidiState>()
  /** Every input seen so far, in the order of appearance; a pulled one stays, marked as such. */
  let inputs: readonly MidiInput[] = []
  let chosen = 'all'
  /** By which the chosen input is known again where the browser gives it another id. */
  let chosenName: string | undefined
  let semitones = 0
  let state: MidiState = isSupported() ? { kind: 'asking' } : { kind: 'unsupported' }
  let library: MidiLibrary | undefined
  let retry: ReturnType<typeof setTimeout> | undefined

  const show = (next: MidiState): void => {
    state = next
    watchers.tell(next)
  }
  const showReady = (): void => show({ kind: 'ready', inputs, chosen })
  const isChosen = (id: string): boolean => chosen === 'all' || chosen === id
  const hear = (input: Input, bytes: readonly number[], at: Ms): void => {
    if (!isChosen(input.id) || isEcho(bytes, at)) return
    if (isAllOff(bytes)) return holding.letGo(input.id, at)
    const event = readMidiMessage(bytes, at)
    const moved = event && transposed(event, semitones)
    if (moved) holding.feed(input.id, moved)
  }
  const heard = new WeakSet<Input>()
  /** Brings the list of inputs up to date, listens to new ones, lifts the keys of those that went. */
  const look = (at: Ms): void => {
    const present = library?.inputs ?? []
    for (const input of present) {
      if (heard.has(input)) continue
      heard.add(input)
      input.addListener('midimessage', (e) => hear(input, e.message.data, ms(e.timestamp)))
      for (const change of ['opened', 'closed', 'disconnected'] as const)
        input.addListener(change, (e) => look(ms(e.timestamp)))
    }
    const before = inputs
    inputs = listInputs(before, present)
    for (const gone of before) {
      const left = inputs.find((input) => input.id === gone.id)
      if (gone.standing === 'there' && left?.standing !== 'there') holding.letGo(gone.id, at)
    }
    const heir = findHeir(before, inputs, chosen, chosenName)
    if (heir) chosen = heir.id
    chosenName = inputs.find((input) => input.id === chosen)?.name ?? chosenName
    if (state.kind !== 'ready' || heir || !sameInputs(before, inputs)) showReady()
    clearTimeout(retry)
    if (inputs.some(({ standing }) => standing === 'taken'))
      retry = setTimeout(() => void tryAgain(), retryMs)
  }
  /** The other program may have let go: nothing tells a page so. */
  const tryAgain = async (): Promise<void> => {
    await Promise.all((library?.inputs ?? []).map((input) => input.open()))
    look(now())
  }
  const openLibrary = async (): Promise<void> => {
    if (!library) {
      library = await loadMidiLibrary()
      library.addListener('portschanged', (e) => look(ms(e.timestamp)))
      watchRefusals(library, () => look(now()))
    }
    await library.enable()
  }

  return {
    listen: holding.listen,
    watch: (see) => {
      see(state)
      return watchers.add(see)
    },
    connect: async () => {
      if (!isSupported()) return show({ kind: 'unsupported' })
      if (!library?.enabled) show({ kind: 'asking' })
      try {
        await openLibrary()
      } catch (error) {
        return show(explain(error))
      }
      // Also those that were refused before.
      await tryAgain()
    },
    choose: (inputId, name) => {
      chosen = inputId
      chosenName = inputs.find((input) => input.id === inputId)?.name ?? name
      for (const { id } of inputs) if (!isChosen(id)) holding.letGo(id, now())
      if (state.kind === 'ready') showReady()
    },
    transpose: (next) => {
      holding.letGoAll(now())
      semitones = next
    },
  }
}

/** On the clock of the messages. */
const now = (): Ms => ms(performance.now())

/** Soon enough for who has just closed the other program, milliseconds. */
const retryMs = 2000

const isSupported = (): boolean =>
  typeof navigator !== 'undefined' && typeof navigator.requestMIDIAccess === 'function'

const transposed = (event: KeyEvent, semitones: number): KeyEvent | undefined => {
  if (event.kind === 'pedal') return event
  const moved = event.key + semitones
  return moved < 0 || moved > 127 ? undefined : { ...event, key: key(moved) }
}

/** The chosen input when it comes back under another id: new, of the same name, the old one gone. */
const findHeir = (
  before: readonly MidiInput[],
  now: readonly MidiInput[],
  chosen: string,
  name: string | undefined,
): MidiInput | undefined => {
  if (chosen === 'all' || now.some((input) => input.id === chosen && input.standing === 'there'))
    return
  return now.find((input) => input.name === name && !before.some((old) => old.id === input.id))
}

/** The inputs there are now, and those that were there, without those that came back under another id. */
const listInputs = (
  before: readonly MidiInput[],
  there: readonly Input[],
): readonly MidiInput[] => {
  const present = there.map(({ id, name, state, connection }): MidiInput => ({
    id,
    name,
    standing: state !== 'connected' ? 'unplugged' : connection === 'open' ? 'there' : 'taken',
  }))
  const known = before.flatMap((old): MidiInput[] => {
    const now = present.find((input) => input.id === old.id)
    if (now) return [now]
    const cameBack = present.some(
      (input) => input.name === old.name && !before.some((one) => one.id === input.id),
    )
    return cameBack ? [] : [{ ...old, standing: 'unplugged' }]
  })
  return [...known, ...present.filter((input) => !known.some((old) => old.id === input.id))]
}

const sameInputs = (a: readonly MidiInput[], b: readonly MidiInput[]): boolean =>
  a.length === b.length &&
  a.every((one, i) => {
    const other = b[i]
    return one.id === other?.id && one.name === other.name && one.standing === other.standing
  })

/** A refusal is a NotAllowedError or, of old, a SecurityError (Web MIDI API, requestMIDIAccess). */
const explain = (error: unknown): MidiState => {
  const { name, message } = error instanceof Error ? error : { name: '', message: String(error) }
  if (name === 'NotAllowedError' || name === 'SecurityError') return { kind: 'denied' }
  if (name === 'NotSupportedError') return { kind: 'unsupported' }
  return { kind: 'failed', detail: message }
}
