import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Coach } from '@/coach/coach'
import type { Instrument } from './instrument'
import { createMarkBoard, type MarkBoard } from './markBoard'
import type { Ports, Stop } from './ports'
import type { PracticeState } from './practiceState'
import type { Practising } from './practising'
import type { Session } from './session'
import type { Settings } from './settings'

/** The drill at the instrument: hears every key, shows what the judge and the coach find, keeps the record. */
export interface MusicDesk {
  readonly begin: (practising: Practising, coach: Coach) => void
  readonly end: () => void
  /** Breaks off the repetition under way, and stays with the exercise where a breath was taken. */
  readonly again: () => void
  /** Takes back what the coach decided last; leaves a remedy. */
  readonly undo: () => void
  /** At a problem: starts the remedy of this index. */
  readonly remedy: (index: number) => void
  /** The person turns to another exercise: recorded where this one is not done. */
  readonly skip: () => void
  /** The person ends: recorded where this is not done. */
  readonly leave: () => void
  /** Ends a pause or a breath; where there is none, a pause begins and nothing is judged. */
  readonly goOnOrRest: () => void
  /** Something else is done at the desk: nothing is heard and no time runs out until the answer lets go. */
  readonly hold: () => Stop
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

/** Where the drill leads: on when it is done; or the person turns to what is beside it. */
export interface Onward {
  readonly next: () => void
  /** The page was left open and the session is over: the drill is taken up as on a page just opened. */
  readonly anew: () => void
  readonly turn: (step: 1 | -1) => void
  /** A repetition of the item of this number took so long, with the pause before it; whether the item is over. */
  readonly spend: (number: number, ms: number) => boolean
  /** The item of today is over. */
  readonly itemOver: (number: number) => void
}

/** What a drill needs around it. */
export interface PracticeHouse {
  readonly ports: Ports
  readonly instrument: Instrument
  readonly session: Session
  readonly settings: StoreApi<Settings>
  readonly onward: Onward
}

/** What the page shows of it. */
export interface PracticeShown {
  /** `undefined` while nothing is drilled. */
  readonly store: StoreApi<PracticeState | undefined>
  readonly marks: MarkBoard
}

export interface Practice extends PracticeShown, MusicDesk {
  /** Fetches what a drill needs: judge and coach are not part of the first page. Ask before `begin`. */
  readonly prepare: () => Promise<void>
}

/** Stands ready from the first page on; until it is prepared its orders do nothing. */
export const createPractice = (house: PracticeHouse): Practice => {
  const store = createStore<PracticeState | undefined>(() => undefined)
  const marks = createMarkBoard()
  let desk: MusicDesk | undefined
  return {
    store,
    marks,
    prepare: async () => {
      const { createMusicDesk } = await import('./musicDesk')
      desk ??= createMusicDesk(house, { store, marks })
    },
    begin: (practising, coach) => desk?.begin(practising, coach),
    end: () => desk?.end(),
    again: () => desk?.again(),
    undo: () => desk?.undo(),
    remedy: (index) => desk?.remedy(index),
    skip: () => desk?.skip(),
    leave: () => desk?.leave(),
    goOnOrRest: () => desk?.goOnOrRest(),
    hold: () => desk?.hold() ?? (() => {}),
    goOnOrMetronome: () => desk?.goOnOrMetronome(),
    raise: () => desk?.raise(),
    lower: () => desk?.lower(),
    settingsChanged: () => desk?.settingsChanged(),
    toggleMetronome: () => desk?.toggleMetronome() ?? Promise.resolve(),
    hear: () => desk?.hear() ?? Promise.resolve(),
    toggleSimulated: () => desk?.toggleSimulated() ?? Promise.resolve(),
  }
}
