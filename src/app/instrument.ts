import { createStore, type StoreApi } from 'zustand/vanilla'
import type { KeyEvent } from '@/music/keyEvent'
import type { Key } from '@/music/units'
import type { MidiState, Ports, Stop } from './ports'

export interface InstrumentState {
  readonly midi: MidiState
  /** A simulated player is playing. */
  readonly simulated: boolean
  /** A key was heard since the page opened. */
  readonly heard: boolean
}

/** Everything that can play, as one stream. */
export interface Instrument {
  readonly store: StoreApi<InstrumentState>
  readonly listen: (hear: (event: KeyEvent) => void) => Stop
  /** Each key as it goes down and up, for the keyboard strip. */
  readonly watchKeys: (see: (key: Key, down: boolean) => void) => Stop
}

export const createInstrument = (ports: Ports): Instrument => {
  const store = createStore<InstrumentState>(() => ({
    midi: { kind: 'asking' },
    simulated: false,
    heard: false,
  }))
  const hearers = new Set<(event: KeyEvent) => void>()
  const hear = (event: KeyEvent): void => {
    for (const each of hearers) each(event)
    if (!store.getState().heard) store.setState({ heard: true })
  }
  for (const device of [ports.midi, ports.computerKeys, ports.screenKeys, ports.player])
    device.listen(hear)
  ports.midi.watch((midi) => store.setState({ midi }))

  const listen = (hearer: (event: KeyEvent) => void): Stop => {
    hearers.add(hearer)
    return () => hearers.delete(hearer)
  }
  return {
    store,
    listen,
    watchKeys: (see) =>
      listen((event) => {
        if (event.kind !== 'pedal') see(event.key, event.kind === 'down')
      }),
  }
}
