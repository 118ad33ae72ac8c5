import { createStore, type StoreApi } from 'zustand/vanilla'
import type { KeyEvent } from '@/music/keyEvent'
import type { HandChoice, Score, TimeSignature } from '@/music/music'
import { key, ms, quarterMs, type Key, type Ms, type Tempo } from '@/music/units'
import type { RecordingGrid, Recording } from '@/score/quantiseTake'
import type { ReadProblem } from '@/score/readProblem'
import { writeRecording } from '@/score/writeRecording'
import { writeText } from '@/text/write'
import type { Instrument } from './instrument'
import type { ChosenFile } from './library'
import type { Ports, Stop } from './ports'
import { fileNameOf } from './typing'

/** What is chosen before playing. */
export interface RecorderChoice {
  readonly time: TimeSignature
  readonly tempo: Tempo
  readonly grid: RecordingGrid
  readonly hand: HandChoice
}

export type RecorderState =
  | { readonly kind: 'ready' }
  | { readonly kind: 'starting' }
  /** Nothing could sound. */
  | { readonly kind: 'silent' }
  | { readonly kind: 'countIn' }
  | { readonly kind: 'recording'; readonly strikes: number }
  /** It was stopped before anything was played. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'done'; readonly score: Score }
  | { readonly kind: 'failed'; readonly reason: ReadProblem }

/** Records a fragment against the metronome. */
export interface Recorder {
  readonly store: StoreApi<RecorderState>
  /** Starts the count-in, or stops the recording. Call it in a press of the person: browsers allow sound only from there. */
  readonly toggle: (choice: RecorderChoice) => Promise<void>
  /** Silent and as new. */
  readonly reset: () => void
  /** What was recorded as the file of a piece; `undefined` when there is nothing. */
  readonly file: (title: string) => ChosenFile | undefined
}

/** So many silent bars end the recording. */
const silentBars = 2

export const createRecorder = (
  ports: Ports,
  instrument: Instrument,
  /** How long after a click a strike on it comes in, milliseconds. */
  lagMs: () => number,
): Recorder => {
  const store = createStore<RecorderState>(() => ({ kind: 'ready' }))
  const show = (state: RecorderState): void => store.setState(() => state, true)
  let choice: RecorderChoice | undefined
  let events: readonly KeyEvent[] = []
  let firstBeat: Ms | undefined
  let recording: Recording | undefined
  let stopHearing: Stop = () => {}
  /** Counts the starts and stops, so that a start that was overtaken while it waited does nothing. */
  let orders = 0

  const silence = (): void => {
    orders++
    stopHearing()
    stopHearing = () => {}
    ports.sound.stopMetronome()
  }
  const isRunning = (): boolean =>
    ['starting', 'countIn', 'recording'].includes(store.getState().kind)

  const hear = (event: KeyEvent): void => {
    // The strike that answers a click comes in by the measured lag after it.
    events = [...events, { ...event, at: ms(event.at - lagMs()) }]
    if (store.getState().kind === 'recording') showRecording()
  }
  const showRecording = (): void =>
    show({ kind: 'recording', strikes: events.filter(({ kind }) => kind === 'down').length })

  const look = (): void => {
    if (firstBeat === undefined || !choice) return
    const now = ports.now()
    if (store.getState().kind === 'countIn' && now >= firstBeat) showRecording()
    if (heldKeys(events).size > 0) return
    const last = Math.max(firstBeat, events.at(-1)?.at ?? firstBeat)
    if (now - last > silentBars * barMs(choice)) void finish()
  }

  const start = async (chosen: RecorderChoice): Promise<void> => {
    silence()
    const order = ++orders
    choice = chosen
    events = []
    firstBeat = undefined
    recording = undefined
    show({ kind: 'starting' })
    const stops = [
      instrument.listen((event, who) => {
        if (who === 'person') hear(event)
      }),
      ports.everyMoment(look),
    ]
    stopHearing = () => stops.forEach((stop) => stop())
    ports.computerKeys.reach(keysFor(chosen.hand))
    await ports.sound.unlock()
    if (order !== orders) return
    const { tempo, time } = chosen
    const started = await ports.sound.startMetronome({ tempo, time, countInBars: 1, barOffset: 0 })
    // It may have been stopped, or the page left, while it started.
    if (order !== orders) return
    if (!started) {
      silence()
      return show({ kind: 'silent' })
    }
    firstBeat = started.firstBeat
    show({ kind: 'countIn' })
  }

  const finish = async (): Promise<void> => {
    silence()
    if (firstBeat === undefined || !choice) return show({ kind: 'ready' })
    const { tempo, time, grid } = choice
    const take = { events: fromCountIn(events, firstBeat, barMs(choice)) }
    const end = ms(ports.now() - lagMs())
    recording = { take, firstBeat, end, quarter: quarterMs(tempo), time, grid }
    const bytes = writeRecording(recording, choice.hand, writeText.untitled)
    if (!bytes) return show({ kind: 'nothing' })
    const order = orders
    const read = await ports.readPiece(bytes, fileNameOf(writeText.untitled, 'mid'))
    if (order !== orders) return
    if (read.ok) show({ kind: 'done', score: read.value.score })
    else show({ kind: 'failed', reason: read.reason })
  }

  return {
    store,
    toggle: (chosen) => (isRunning() ? finish() : start(chosen)),
    reset: () => {
      silence()
      show({ kind: 'ready' })
    },
    file: (title) => {
      const name = title.trim() || writeText.untitled
      const bytes = recording && choice && writeRecording(recording, choice.hand, name)
      return (
        bytes && {
          name: fileNameOf(name, 'mid'),
          size: bytes.length,
          read: () => Promise.resolve(bytes),
        }
      )
    },
  }
}

const barMs = ({ time, tempo }: RecorderChoice): number =>
  ((time.beats * 4) / time.beatType) * quarterMs(tempo)

/** Two octaves where the hand plays, on the screen and under the computer's keys. */
export const keysFor = (hand: HandChoice): readonly Key[] => {
  const lowest = { right: 60, left: 36, both: 48 }[hand]
  return Array.from({ length: 25 }, (_, i) => key(lowest + i))
}

const heldKeys = (events: readonly KeyEvent[]): ReadonlySet<Key> => {
  const held = new Set<Key>()
  for (const event of events) {
    if (event.kind === 'down') held.add(event.key)
    if (event.kind === 'up') held.delete(event.key)
  }
  return held
}

/** What was played before the count-in was no music. A strike a little before its first click belongs to it. */
const fromCountIn = (
  events: readonly KeyEvent[],
  firstBeat: Ms,
  bar: number,
): readonly KeyEvent[] => events.filter(({ at }) => at > firstBeat - bar - 100)
