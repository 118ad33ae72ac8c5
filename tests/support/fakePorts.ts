import type { FolderPort } from '@/app/copyPorts'
import { layOut } from '@/app/layOut'
import type { MidiState, Ports, Sample } from '@/app/ports'
import type { ClickPattern, SoundState } from '@/app/soundPorts'
import { assessDifficulty } from '@/difficulty/difficulty'
import { compareFingerings } from '@/fingering/compare'
import { fingerHand } from '@/fingering/fingering'
import type { KeyEvent, Pedal } from '@/music/keyEvent'
import { key, ms, tempo, type Ms } from '@/music/units'
import { createMemoryStorage } from '@/storage/memory'
import type { Storage } from '@/storage/storage'
import { createStudentMemory } from '@/storage/students'
import { readWithHands } from '../../src/readWithHands'
import { storagePort } from '../../src/storagePort'
import { studentsPort } from '../../src/studentsPort'

/** The edges of the app as a test holds them: time stands until the test moves it, keys come from the test. */
export interface Desk {
  readonly ports: Ports
  readonly storage: Storage
  /** What the app asked of the sound, in order. */
  readonly sounded: string[]
  /** How loud each voice is. */
  readonly volumes: ReadonlyMap<string, number>
  /** The instruments chosen for "hear it", one after another. */
  readonly chosenOutputs: readonly string[]
  /** Files given to the person, by name. */
  readonly saved: ReadonlyMap<string, string>
  /** Strikes a key now and lifts it shortly after. */
  readonly strike: (key: number) => void
  /** Treads on a pedal now and lets it up shortly after. */
  readonly tread: (pedal: Pedal) => void
  /** Tells the app that a click is heard at this time. */
  readonly click: (at: number) => void
  /** The same by the simulated player. */
  readonly simulate: (key: number) => void
  /** Lets time pass in small steps, as the page's clock does. */
  readonly pass: (forMs: number) => void
  /** Strikes and lifts a key while time stands: one of a chord, or of a fast run. */
  readonly touch: (key: number) => void
  /** The machine sleeps: the page hears nothing meanwhile, and wakes once. */
  readonly sleep: (forMs: number) => void
  /** Somebody sets the computer's clock: by so much, while the clock of the events goes on. */
  readonly setClock: (byMs: number) => void
  readonly goTo: (hash: string) => void
  readonly address: () => string
  readonly setMidi: (state: MidiState) => void
  /** Tells the app how the sound stands now. */
  readonly setSound: (state: SoundState) => void
}

/** ' 2 a beat', ' silent bars'; nothing where each beat clicks. */
const inWords = ({ perBeat = 1, turns }: ClickPattern): string =>
  `${perBeat === 1 ? '' : ` ${perBeat} a beat`}${turns ? ' silent bars' : ''}`

/** Where wall clock and event clock stand at the start of a test. */
const epoch = Date.UTC(2026, 0, 5, 19)

export const createDesk = (
  samples: readonly Sample[],
  storage: Storage = createMemoryStorage(),
  startAt = 0,
  folder: Partial<FolderPort> = {},
): Desk => {
  let now = startAt
  let setBy = 0
  let hash = ''
  let ids = 0
  const hearers = new Set<(event: KeyEvent) => void>()
  const playerHearers = new Set<(event: KeyEvent) => void>()
  let endPlaying = (): void => {}
  const moments = new Set<() => void>()
  const hashWatchers = new Set<(hash: string) => void>()
  const midiWatchers = new Set<(state: MidiState) => void>()
  const soundWatchers = new Set<(state: SoundState) => void>()
  const beatWatchers = new Set<(beat: { readonly at: Ms }) => void>()
  const sounded: string[] = []
  const volumes = new Map<string, number>()
  const chosenOutputs: string[] = []
  const students = createStudentMemory()
  const saved = new Map<string, string>()
  const listen = (hear: (event: KeyEvent) => void) => {
    hearers.add(hear)
    return () => hearers.delete(hear)
  }
  const strikeFor = (to: ReadonlySet<(event: KeyEvent) => void>, struck: number): void => {
    for (const hear of to) hear({ kind: 'down', key: key(struck), velocity: 64, at: ms(now) })
    pass(90)
    for (const hear of to) hear({ kind: 'up', key: key(struck), at: ms(now) })
  }
  const goTo = (next: string): void => {
    hash = next
    for (const see of hashWatchers) see(next)
  }
  const later = (after: number): Ms => ms(now + after)
  const pass = (forMs: number): void => {
    for (const end = now + forMs; now < end;) {
      now = Math.min(end, now + 33)
      for (const run of moments) run()
    }
  }
  const sleep = (forMs: number): void => {
    now += forMs
    for (const run of moments) run()
  }
  const ports: Ports = {
    licences: () => Promise.resolve({ ok: true, value: [] }),
    person: { listen },
    midi: {
      connect: () => Promise.resolve(),
      watch: (see) => {
        midiWatchers.add(see)
        return () => midiWatchers.delete(see)
      },
      choose: () => {},
      transpose: () => {},
    },
    midiOut: {
      watch: (see) => {
        see([])
        return () => {}
      },
      choose: (id) => chosenOutputs.push(id),
    },
    computerKeys: { reach: () => {}, letters: () => new Map() },
    screenKeys: { press: () => {}, release: () => {} },
    player: {
      listen: (hear) => {
        playerHearers.add(hear)
        return () => playerHearers.delete(hear)
      },
      play: () => new Promise((end) => (endPlaying = end)),
      stop: () => endPlaying(),
    },
    sound: {
      unlock: () => Promise.resolve(),
      watch: (see) => {
        soundWatchers.add(see)
        return () => soundWatchers.delete(see)
      },
      setOn: () => {},
      setVolume: (voice, volume) => volumes.set(voice, volume),
      startMetronome: (settings) => {
        sounded.push(`metronome ${settings.tempo}${inWords(settings)}`)
        return Promise.resolve({ firstBeat: later(2000) })
      },
      changeTempo: (to) => {
        sounded.push(`tempo ${to}`)
        return { firstBeat: later(500) }
      },
      changePattern: (pattern) => sounded.push(`pattern${inWords(pattern)}`),
      stopMetronome: () => sounded.push('stop'),
      watchBeats: (see) => {
        beatWatchers.add(see)
        return () => beatWatchers.delete(see)
      },
      hearChunk: (_, at) => {
        sounded.push(`hear ${at}`)
        return Promise.resolve()
      },
      hearTake: ({ events }) => {
        sounded.push(`take of ${events.length}`)
        return Promise.resolve()
      },
      quiet: () => {},
      signal: (signal) => {
        sounded.push(`signal ${signal}`)
        return () => sounded.push('hush')
      },
    },
    storage: storagePort(storage),
    folder: { ...noFolder, ...folder },
    students: () => Promise.resolve(studentsPort(students)),
    readPiece: (bytes, fileName, parts) => Promise.resolve(readWithHands(bytes, fileName, parts)),
    assess: (score, tempo, span) => Promise.resolve(assessDifficulty(score, { tempo, span })),
    proposeFingering: (notes, settings) => Promise.resolve(fingerHand(notes, settings)),
    compareFingerings: (notes, settings, versions) =>
      Promise.resolve(compareFingerings(notes, settings, versions)),
    layOut: (score, goal, words, span) => Promise.resolve(layOut(score, goal, words, span)),
    samples: () => Promise.resolve(samples),
    kept: { watch: (see) => see({ kind: 'notKept' }), takeNewer: () => {} },
    saveFile: (name, parts) => saved.set(name, parts.join('')),
    now: () => ms(now),
    wallClock: () => epoch + now + setBy,
    newId: () => `id-${startAt}-${ids++}`,
    everyMoment: (run) => {
      moments.add(run)
      return () => moments.delete(run)
    },
    address: {
      read: () => hash,
      write: goTo,
      watch: (see) => {
        hashWatchers.add(see)
        return () => hashWatchers.delete(see)
      },
    },
  }
  return {
    ports,
    storage,
    sounded,
    volumes,
    chosenOutputs,
    saved,
    pass,
    sleep,
    setClock: (byMs) => {
      setBy += byMs
    },
    goTo,
    address: () => hash,
    setMidi: (state) => midiWatchers.forEach((see) => see(state)),
    setSound: (state) => soundWatchers.forEach((see) => see(state)),
    strike: (struck) => strikeFor(hearers, struck),
    touch: (touched) => {
      for (const hear of hearers) {
        hear({ kind: 'down', key: key(touched), velocity: 64, at: ms(now) })
        hear({ kind: 'up', key: key(touched), at: ms(now) })
      }
    },
    tread: (pedal) => {
      for (const hear of hearers) hear({ kind: 'pedal', pedal, value: 127, at: ms(now) })
      pass(90)
      for (const hear of hearers) hear({ kind: 'pedal', pedal, value: 0, at: ms(now) })
    },
    click: (at) => beatWatchers.forEach((see) => see({ at: ms(at) })),
    simulate: (struck) => strikeFor(playerHearers, struck),
  }
}

/** A browser in which no folder was chosen. */
const noFolder: FolderPort = {
  watch: (see) => {
    see({ kind: 'none' })
    return () => undefined
  },
  choose: () => Promise.resolve(),
  allow: () => Promise.resolve(),
  write: () => Promise.resolve(),
  expect: () => Promise.resolve(),
  stop: () => Promise.resolve(),
}

/** Lets everything that waits for a promise run. */
export const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5))

export const anySuggestion = {
  fromBar: 1,
  toBar: 1,
  hand: 'right',
  goalTempo: tempo(120),
} as const
