import { createStore, type StoreApi } from 'zustand/vanilla'
import type { KeyEvent } from '@/music/keyEvent'
import type { Key } from '@/music/units'
import type { MidiInput, MidiState, Ports, Stop } from './ports'

export interface InstrumentState {
  readonly midi: MidiState
  /** Instruments on which "hear it" can sound. */
  readonly outputs: readonly MidiInput[]
}

/** Who plays: the person, on whatever keys, or the simulated player. */
export type Who = 'person' | 'simulated'

/** How a keyboard that was heard is heard no more. */
export type Loss = 'unplugged' | 'taken'

type Hear = (event: KeyEvent, who: Who) => void

/** Everything that can play, as one stream. */
export interface Instrument {
  readonly store: StoreApi<InstrumentState>
  readonly listen: (hear: Hear) => Stop
  /** Until it is given back, nobody else hears. */
  readonly borrow: (hear: Hear) => Stop
  /** Called when a keyboard that was heard is unplugged, or another program takes it. */
  readonly watchLost: (see: (how: Loss) => void) => Stop
  /** Each key as it goes down and up, for the keyboard strip. */
  readonly watchKeys: (see: (key: Key, down: boolean) => void) => Stop
}

export const createInstrument = (ports: Ports): Instrument => {
  const store = createStore<InstrumentState>(() => ({ midi: { kind: 'asking' }, outputs: [] }))
  const hearers = new Set<Hear>()
  let borrower: Hear | undefined
  const hear: Hear = (event, who) => {
    if (borrower) return borrower(event, who)
    for (const each of hearers) each(event, who)
  }
  ports.person.listen((event) => hear(event, 'person'))
  ports.player.listen((event) => hear(event, 'simulated'))
  ports.midi.watch((midi) => store.setState({ midi }))
  ports.midiOut.watch((outputs) => store.setState({ outputs }))

  const listen = (hearer: Hear): Stop => {
    hearers.add(hearer)
    return () => hearers.delete(hearer)
  }
  return {
    store,
    listen,
    borrow: (hearer) => {
      borrower = hearer
      return () => {
        if (borrower === hearer) borrower = undefined
      }
    },
    watchLost: (see) =>
      store.subscribe((now, before) => {
        const lost = heardInputs(before.midi).find((id) => !heardInputs(now.midi).includes(id))
        if (lost !== undefined) see(howLost(now.midi, lost))
      }),
    watchKeys: (see) =>
      listen((event) => {
        if (event.kind !== 'pedal') see(event.key, event.kind === 'down')
      }),
  }
}

/** The inputs that are connected and listened to, by id. */
const heardInputs = (midi: MidiState): readonly string[] => {
  if (midi.kind !== 'ready') return []
  const { inputs, chosen = 'all' } = midi
  return inputs
    .filter(({ id, standing }) => standing === 'there' && (chosen === 'all' || chosen === id))
    .map(({ id }) => id)
}

const howLost = (midi: MidiState, id: string): Loss => {
  const input = midi.kind === 'ready' && midi.inputs.find((each) => each.id === id)
  return input && input.standing === 'taken' ? 'taken' : 'unplugged'
}
