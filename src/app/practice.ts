import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Coach } from '@/coach/coach'
import type { KeyEvent } from '@/music/keyEvent'
import { takeBreath } from './breath'
import {
  nothingPressed,
  reachOf,
  readCommand,
  type DrillCommand,
  type Pressed,
  type Reach,
} from './commandKeys'
import { createDrilling } from './drilling'
import { createHands } from './hands'
import type { Instrument } from './instrument'
import { createMarkBoard, type MarkBoard } from './markBoard'
import type { Ports, Stop } from './ports'
import type { PracticeState } from './practiceState'
import type { Practising } from './practising'
import type { Session } from './session'
import type { Settings } from './settings'
import { createSignals } from './signals'

/** The drill at the instrument: hears every key, shows what the judge and the coach find, keeps the record. */
export interface Practice {
  /** `undefined` while nothing is drilled. */
  readonly store: StoreApi<PracticeState | undefined>
  readonly marks: MarkBoard
  readonly begin: (practising: Practising, coach: Coach) => void
  readonly end: () => void
  /** Breaks off the repetition under way, and stays with the exercise where a breath was taken. */
  readonly again: () => void
  /** Ends a pause or a breath; where there is none, a pause begins and nothing is judged. */
  readonly goOnOrRest: () => void
  /** What the space bar does: goes on after a pause, else starts or stops the metronome. */
  readonly goOnOrMetronome: () => void
  readonly toggleMetronome: () => Promise<void>
  /** Plays the chunk at the present tempo, or stops playing it. */
  readonly hear: () => Promise<void>
  readonly raise: () => void
  readonly lower: () => void
  /** Lets the simulated player show a drill, or stops it; any key of the person stops it too. */
  readonly toggleSimulated: () => Promise<void>
  /** The standard or the forgiveness changed: the judge starts anew after the present repetition. */
  readonly settingsChanged: () => void
}

/** What the drill leads to: the next exercise comes on the desk, or the one before. */
export interface Onward {
  readonly next: () => void
  readonly back: () => void
}

/** The hands must have rested so long, or the last touch of the old exercise is taken for the new one. */
const handsOffMs = 300

export const createPractice = (
  ports: Ports,
  instrument: Instrument,
  session: Session,
  settings: StoreApi<Settings>,
  onward: Onward,
): Practice => {
  const store = createStore<PracticeState | undefined>(() => undefined)
  const marks = createMarkBoard()
  const hands = createHands()
  const signals = createSignals(ports.sound, hands)
  let next: Practising['next']
  let reach: Reach | undefined
  let pressed: Pressed = nothingPressed
  /** Keys are judged only once the hands have left them. */
  let waitsForHands = false
  let stopListening: Stop = () => {}

  const update = (part: Partial<PracticeState>): void =>
    store.setState((state) => state && { ...state, ...part }, true)
  const breathe = (): void => {
    if (next) update({ breath: takeBreath(ports.now()) })
  }
  const desk = { ports, session, settings, store, marks, signals }
  const drilling = createDrilling({ ...desk, onDone: breathe })

  const goNext = (): void => {
    update({ breath: undefined })
    onward.next()
  }
  const goOn = (): void => {
    if (store.getState()?.breath) return goNext()
    drilling.tellCoach({ kind: 'goOn', at: ports.now() })
    update({ said: undefined, resting: false })
  }
  const again = (): void => {
    const wasPaused = isPaused()
    update({ breath: undefined, resting: false })
    drilling.breakOff()
    if (wasPaused) goOn()
  }
  const isPaused = (): boolean => {
    const state = store.getState()
    return state !== undefined && (state.resting || !!state.breath || !!state.coach.paused)
  }
  const goOnOrRest = (): void => {
    if (isPaused()) return goOn()
    drilling.breakOff()
    update({ resting: true })
  }

  const run = (command: DrillCommand): void => {
    switch (command) {
      case 'hear':
        return void drilling.hearIt()
      case 'again':
        return again()
      case 'next':
        return onward.next()
      case 'back':
        return store.getState()?.breath ? again() : onward.back()
      case 'goOn':
        return goOnOrRest()
      case 'metronome':
        return void drilling.toggleMetronome()
    }
  }
  const hearPerson = (event: KeyEvent): void => {
    hands.hear(event)
    if (!reach) return
    const [now, meaning] = readCommand(pressed, event, settings.getState().commands, reach)
    pressed = now
    if (meaning.kind === 'command') return run(meaning.command)
    if (meaning.kind === 'nothing') return
    signals.hear(event)
    if (event.kind === 'down') drilling.stopSimulated()
    const state = store.getState()
    if (state?.breath) return event.kind === 'down' ? goNext() : undefined
    if (state?.resting || waitsForHands) return
    drilling.hear(event)
  }
  const pass = (): void => {
    const at = ports.now()
    signals.pass(at)
    if (waitsForHands && hands.haveRested(at, handsOffMs)) waitsForHands = false
    const breath = store.getState()?.breath
    if (breath && at >= breath.until) return goNext()
    drilling.hear({ kind: 'clock', at })
  }
  const end = (): void => {
    stopListening()
    drilling.end()
    signals.hush()
    store.setState(() => undefined, true)
  }

  return {
    store,
    marks,
    end,
    again,
    goOnOrRest,
    begin: (practising, coach) => {
      end()
      const { chunk } = practising
      next = practising.next
      reach = reachOf(chunk)
      waitsForHands = !hands.haveRested(ports.now(), handsOffMs)
      drilling.begin(practising, coach)
      const begun = { metronome: 'off', hearing: false, simulated: false, resting: false } as const
      store.setState(() => ({ ...begun, coach }), true)
      ports.computerKeys.reach(chunk.onsets.flatMap(({ notes }) => notes.map((n) => n.key)))
      const stops = [
        instrument.listen((event, who) =>
          who === 'person' ? hearPerson(event) : drilling.hear(event),
        ),
        instrument.watchUnplugged(drilling.drop),
        ports.everyMoment(pass),
      ]
      stopListening = () => stops.forEach((stop) => stop())
    },
    goOnOrMetronome: () => (isPaused() ? goOn() : void drilling.toggleMetronome()),
    toggleMetronome: drilling.toggleMetronome,
    hear: drilling.hearIt,
    raise: () => drilling.tellCoach({ kind: 'raise', at: ports.now() }),
    lower: () => drilling.tellCoach({ kind: 'lower', at: ports.now() }),
    toggleSimulated: drilling.toggleSimulated,
    settingsChanged: drilling.judgeAnew,
  }
}
