import type { Coach } from '@/coach/coach'
import type { KeyEvent } from '@/music/keyEvent'
import type { Ms } from '@/music/units'
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
import type { Stop } from './ports'
import type { MusicDesk, PracticeHouse, PracticeShown } from './practice'
import type { PracticeState } from './practiceState'
import type { Practising } from './practising'
import { createSignals } from './signals'
import { createSolving } from './solving'

/** A longer pause between two repetitions is none of the item's time: the person was away. */
const longestPauseMs = 30_000

/** The hands must have rested so long, or the last touch of the old exercise is taken for the new one. */
const handsOffMs = 300

/** The drill at the instrument: judge and coach, the metronome, remedies, commands by keys and pedals. */
export const createMusicDesk = (
  { ports, instrument, session, settings, onward }: PracticeHouse,
  { store, marks }: PracticeShown,
): MusicDesk => {
  const hands = createHands()
  const signals = createSignals(ports.sound, hands)
  let reach: Reach | undefined
  let pressed: Pressed = nothingPressed
  /** Keys are judged only once the hands have left them. */
  let waitsForHands = false
  /** The exercise is left, and the next is not on the desk yet: nothing is heard meanwhile. */
  let isLeaving = false
  /** Names who holds the drill, where anyone does. */
  let holder: symbol | undefined
  let stopListening: Stop = () => {}
  /** When the last verdict of what is on the desk came. */
  let judgedAt: Ms | undefined

  const update = (part: Partial<PracticeState>): void =>
    store.setState((state) => state && { ...state, ...part }, true)
  const desk = { ports, session, settings, store, marks, signals }
  const drilling = createDrilling({
    ...desk,
    onJudged: (repetition, at, stops) => {
      const { item } = store.getState()?.desk ?? {}
      if (!item) return
      const took = at - repetition.start
      const passed = at - (judgedAt ?? repetition.start)
      const isOver = onward.spend(item.number, Math.min(passed, took + longestPauseMs))
      judgedAt = at
      if (isOver && !stops && !solving.isAway()) breathe(true)
    },
    onDone: () => {
      const { breath, desk: now } = store.getState() ?? {}
      if (breath?.ofItem) return
      if (solving.isAway() || now?.next) breathe(false)
      // The last exercise of a place is done before its time; a warm-up goes on.
      else if (now?.item && now.item.item.kind !== 'warmUp') breathe(true)
    },
    onProblem: (problem) => void solving.open(problem),
  })
  const breathe = (ofItem: boolean): void =>
    update({ breath: { ...takeBreath(ports.now()), ...(ofItem ? { ofItem } : {}) } })
  /** Nothing is left of the drill before but the metronome. */
  const putOnDesk = (practising: Practising, coach: Coach): void => {
    drilling.begin(practising, coach)
    isLeaving = false
    judgedAt = undefined
    waitsForHands = !hands.haveRested(ports.now(), handsOffMs)
    const { metronome = 'off' } = store.getState() ?? {}
    store.setState(() => ({ desk: practising, coach, metronome, ...quietly, resting: false }), true)
  }
  const solving = createSolving({
    ...desk,
    drilling,
    putOnDesk,
    standard: () => settings.getState().standard,
    reach: () => settings.getState().span,
  })

  const goNext = (): void => {
    if (solving.isAway()) return solving.leave(true)
    isLeaving = true
    const { breath, desk: now } = store.getState() ?? {}
    if (breath?.ofItem && now?.item) onward.itemOver(now.item.number)
    else onward.next()
  }
  const goOn = (): void => {
    if (store.getState()?.breath) return goNext()
    drilling.tellCoach({ kind: 'goOn', at: ports.now() })
    update({ said: undefined, resting: false, problem: undefined })
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
  const hold = (): Stop => {
    const mine = Symbol('hold')
    if (!isPaused()) drilling.breakOff()
    holder = mine
    return () => {
      if (holder !== mine) return
      holder = undefined
      waitsForHands = !hands.haveRested(ports.now(), handsOffMs)
      if (store.getState()?.breath) update({ breath: takeBreath(ports.now()) })
    }
  }
  const undo = (): void => {
    if (solving.isAway()) return solving.leave(false)
    update({ breath: undefined, problem: undefined })
    drilling.tellCoach({ kind: 'undo', at: ports.now() })
  }
  /** Where nothing was played, nothing is left undone. */
  const turnAway = (kind: 'skip' | 'end'): void => {
    const { coach } = drilling.standing() ?? {}
    if (coach && coach.repetitions > 0) drilling.tellCoach({ kind, at: ports.now() })
  }

  /** What a key of the instrument means at a problem: next chooses, again plays what is chosen. */
  const runAtProblem = (command: DrillCommand): boolean => {
    if (!store.getState()?.problem) return false
    if (command === 'next') solving.chooseNext()
    else if (command === 'again') void solving.start()
    else return false
    return true
  }
  const run = (command: DrillCommand): void => {
    if (runAtProblem(command)) return
    switch (command) {
      case 'hear':
        return void drilling.hearIt()
      case 'again':
        return again()
      case 'next':
        return solving.isAway() ? solving.leave(false) : onward.turn(1)
      case 'back':
        if (solving.isAway()) return solving.leave(false)
        return store.getState()?.breath ? again() : onward.turn(-1)
      case 'goOn':
        return goOnOrRest()
      case 'metronome':
        return void drilling.toggleMetronome()
    }
  }
  const hearPerson = (event: KeyEvent): void => {
    hands.hear(event)
    if (!reach || isLeaving) return
    const [now, meaning] = readCommand(pressed, event, settings.getState().commands, reach)
    pressed = now
    if (holder) return
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
    if (isLeaving || holder) return
    if (session.isOver()) return onward.anew()
    if (waitsForHands && hands.haveRested(at, handsOffMs)) waitsForHands = false
    const breath = store.getState()?.breath
    if (breath && at >= breath.until) return goNext()
    drilling.hear({ kind: 'clock', at })
  }
  const end = (): void => {
    stopListening()
    holder = undefined
    solving.forget()
    drilling.end()
    signals.hush()
    store.setState(() => undefined, true)
  }

  return {
    end,
    again,
    undo,
    skip: () => turnAway('skip'),
    leave: () => turnAway('end'),
    goOnOrRest,
    hold,
    begin: (practising, coach) => {
      const wasClicking = store.getState()?.metronome === 'on'
      end()
      putOnDesk(practising, coach)
      if (wasClicking) void drilling.toggleMetronome()
      reach = reachOf(practising.keys)
      ports.computerKeys.reach(practising.keys)
      const stops = [
        instrument.listen((event, who) =>
          who === 'person' ? hearPerson(event) : drilling.hear(event),
        ),
        instrument.watchLost(drilling.lose),
        ports.everyMoment(pass),
      ]
      stopListening = () => stops.forEach((stop) => stop())
      // After a reload the drill still stands at its problem.
      if (coach.paused?.reason.kind === 'sameFlaw') void solving.open(coach.paused.reason.problem)
    },
    remedy: (index) => void solving.start(index),
    goOnOrMetronome: () => (isPaused() ? goOn() : void drilling.toggleMetronome()),
    toggleMetronome: drilling.toggleMetronome,
    hear: drilling.hearIt,
    raise: () => drilling.tellCoach({ kind: 'raise', at: ports.now() }),
    lower: () => drilling.tellCoach({ kind: 'lower', at: ports.now() }),
    toggleSimulated: drilling.toggleSimulated,
    settingsChanged: drilling.settingsChanged,
  }
}

const quietly = { hearing: false, simulated: false } as const
