import { createStore, type StoreApi } from 'zustand/vanilla'
import { judgeTaps, type TapStroke, type TapTest as TapResult } from '@/judge/tapTest'
import { key, tempo, type Key, type Ms } from '@/music/units'
import type { Instrument } from './instrument'
import type { Ports, Stop } from './ports'

/** Slow enough that no strike lies nearer to the next click, fast enough to be struck evenly. */
export const tapTempo = tempo(80)
/** The strikes that are asked for. */
export const tapsWanted = 16
/** The clicks end by themselves when nobody strikes. */
const mostClicks = 48
/** Middle C and the octave above it, on the screen and under the computer's keys. */
export const tapKeys: readonly Key[] = Array.from({ length: 13 }, (_, i) => key(60 + i))

export type TapTestState =
  | { readonly kind: 'ready' }
  | { readonly kind: 'starting' }
  /** Nothing could sound. */
  | { readonly kind: 'silent' }
  | { readonly kind: 'listening'; readonly strokes: readonly TapStroke[] }
  | ({ readonly kind: 'done' } & TapResult)

/** Measures the constant lag of the person and the machine against the metronome's clicks. */
export interface TapTest {
  readonly store: StoreApi<TapTestState>
  /** Starts the clicks, or stops them. Call it in a press of the person: browsers allow sound only from there. */
  readonly toggle: () => Promise<void>
  /** Silent and as new. */
  readonly reset: () => void
}

export const createTapTest = (ports: Ports, instrument: Instrument): TapTest => {
  const store = createStore<TapTestState>(() => ({ kind: 'ready' }))
  const show = (state: TapTestState): void => store.setState(() => state, true)
  let clicks: readonly Ms[] = []
  let taps: readonly Ms[] = []
  let stopHearing: Stop = () => {}
  /** Counts the starts and stops, so that a start that was overtaken while it waited does nothing. */
  let orders = 0

  const silence = (): void => {
    orders++
    stopHearing()
    stopHearing = () => {}
    ports.sound.stopMetronome()
  }
  const reset = (): void => {
    if (store.getState().kind === 'ready') return
    silence()
    show({ kind: 'ready' })
  }
  const finish = (): void => {
    silence()
    show({ kind: 'done', ...judgeTaps(clicks, taps) })
  }
  const hearClick = (at: Ms): void => {
    if (clicks.length === mostClicks) return finish()
    clicks = [...clicks, at]
  }
  const hearTap = (at: Ms): void => {
    if (store.getState().kind !== 'listening') return
    taps = [...taps, at]
    const { strokes } = judgeTaps(clicks, taps)
    if (strokes.length < tapsWanted) show({ kind: 'listening', strokes })
    else finish()
  }
  const start = async (): Promise<void> => {
    const order = ++orders
    show({ kind: 'starting' })
    clicks = []
    taps = []
    const stops = [
      ports.sound.watchBeats(({ at }) => hearClick(at)),
      instrument.listen((event, who) => {
        if (who === 'person' && event.kind === 'down') hearTap(event.at)
      }),
    ]
    stopHearing = () => stops.forEach((stop) => stop())
    ports.computerKeys.reach(tapKeys)
    await ports.sound.unlock()
    if (order !== orders) return
    const started = await ports.sound.startMetronome({
      tempo: tapTempo,
      time: { beats: 4, beatType: 4 },
      countInBars: 0,
      barOffset: 0,
    })
    // It may have been stopped, or the page left, while it started.
    if (order !== orders) return
    if (started) return show({ kind: 'listening', strokes: [] })
    silence()
    show({ kind: 'silent' })
  }

  return {
    store,
    reset,
    toggle: () => {
      const { kind } = store.getState()
      return kind === 'starting' || kind === 'listening' ? Promise.resolve(reset()) : start()
    },
  }
}

/** The measured lag where it can be trusted. */
export const usableLag = (state: TapTestState): number | undefined =>
  state.kind === 'done' && state.lag.kind === 'trusted' ? Math.round(state.lag.lag) : undefined
