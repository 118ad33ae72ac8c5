/**
 * The program behind the screens: stores that hold state, call the step functions of the core and
 * run what they say through ports (ports.ts).
 *
 * screen: what the address names (route.ts). library: the pieces. instrument: everything that plays.
 * plans: what to practise. today: this day's plan, item after item. practice: the drill under way. session:
 * this sitting, written into the journal. learning: keys and pedals that mean a command.
 *
 * Example: `const app = createApp(ports); await app.open()`; a view reads `app.practice.store` and
 * calls `app.practice.raise()`.
 */
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Answer } from '@/exercises/findByNotes'
import { proposeChunks } from '@/exercises/propose'
import type { Chunk } from '@/music/chunk'
import type { HandChoice, Score } from '@/music/music'
import { placeOf } from '@/music/place'
import type { ChunkId, Key, Tempo } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import { reviewEvents } from '@/review/review'
import { createBringing, type Bringing } from './bringing'
import { readChunkStates } from './chunkRecord'
import type { HandCorrections } from './handCorrections'
import type { FingeredPiece, Fingerings } from './fingerings'
import { createCaution, type Caution } from './caution'
import { createHardSpots, type HardSpots } from './hardSpots'
import { createInstrument, type Instrument } from './instrument'
import { createLessons, type Lessons } from './lessons'
import { createLibrary, type Library, type OpenPiece } from './library'
import type { DrillCommand } from './commandKeys'
import { listenForCommands } from './listenForCommands'
import { createLearning, type Learning } from './learning'
import type { KeptState, Ports, ScreenKeysPort, Stop } from './ports'
import type { SoundState } from './soundPorts'
import { createOpenedPieces } from './openedPieces'
import { createNotebook, type Notebook } from './notebook'
import { createPieceRecords } from './pieceRecord'
import { createPlans, type Plans } from './plans'
import { createPractice, type Practice } from './practice'
import { searchByPlaying } from './placeSearch'
import type { Recorder } from './recorder'
import { createRecords, type Records } from './records'
import type { BuildUpPlan, PracticeRoute, Route } from './route'
import { createScreens, type Screen } from './screens'
import { createSession, type Session } from './session'
import { decodeSettings, defaultSettings, type Settings } from './settings'
import { createSettingsDesk } from './settingsDesk'
import { createTapTest, type TapTest } from './tapTest'
import { createToday, type Today } from './today'

/** A drill as the person chose it on the piece's page. */
export interface Choice {
  readonly piece: OpenPiece
  readonly chunk: Chunk
  readonly goalTempo: Tempo
  readonly simulated: boolean
}

export interface App extends Bringing {
  readonly screen: StoreApi<Screen>
  readonly library: Library
  readonly instrument: Instrument
  readonly practice: Practice
  /** What the person writes of pieces, and decides of them. */
  readonly notebook: Notebook
  readonly session: Session
  /** The whole record: its review, and its way out and in. */
  readonly records: Records
  /** Pages for the teacher, and the records of students. */
  readonly lessons: Lessons
  readonly tapTest: TapTest
  /** Binds commands to keys and pedals. */
  readonly learning: Learning
  /** Tells each command that is given from the instrument, outside the keys of a passage. */
  readonly listenForCommands: (keys: readonly Key[], run: (command: DrillCommand) => void) => Stop
  readonly settings: StoreApi<Settings>
  readonly sound: StoreApi<SoundState>
  readonly screenKeys: ScreenKeysPort
  /** What is printed on the computer's keys that play, for a strip without a MIDI keyboard; else nothing. */
  readonly letters: () => ReadonlyMap<Key, string>
  /** Whether the program itself is kept for use without a network. */
  readonly kept: StoreApi<KeptState>
  readonly takeNewer: () => void
  /** Whose work is shipped with the program, and under what licence. */
  readonly licences: Ports['licences']
  readonly open: () => Promise<void>
  readonly go: (route: Route) => void
  /** From the tap test to where it was asked for. */
  readonly goBack: () => void
  /** The address that was shown before this one. */
  readonly previous: () => string
  /** For a fragment that is played in; loaded when it is wanted. */
  readonly openRecorder: () => Promise<Recorder>
  /** The figures of a session's events. */
  readonly review: typeof reviewEvents
  /** Chunks to drill in a stretch of the score. */
  readonly propose: typeof proposeChunks
  /** What the person says of hands that the file does not tell. */
  readonly hands: Pick<HandCorrections, 'add' | 'undo'>
  /** The person's own digits, in versions. */
  readonly fingerings: Omit<Fingerings, 'apply' | 'carry'>
  readonly caution: Caution
  /** Where the piece is hard, and what the person says of that. */
  readonly hardSpots: HardSpots
  /** What to practise: a piece over weeks, and this day. */
  readonly plans: Plans
  /** Today's plan under way. */
  readonly today: Today
  /** Whether the record tells of anything. */
  readonly hasPractised: () => Promise<boolean>
  /** Listens to the person, and tells each place of the piece that their notes name. */
  readonly searchByPlaying: (
    score: Score,
    hand: HandChoice,
    found: (answer: Answer) => void,
  ) => () => void
  /** What events tell of each chunk. */
  readonly chunkStates: (piece: OpenPiece) => Promise<ReadonlyMap<ChunkId, ChunkState>>
  readonly practise: (choice: Choice) => void
  /** Lays out the exercises from small groups to the whole passage. */
  readonly buildUp: (piece: OpenPiece, plan: BuildUpPlan, goalTempo: Tempo) => void
  /** From a chunk that is too big, to the first exercise of its build-up. */
  readonly buildUpHere: () => void
  /** Begins an exercise; call it in a press of the person, so that sound may wake. */
  readonly begin: (route: PracticeRoute) => void
  /** The goal tempo that was chosen for the piece in this sitting. */
  readonly goalTempo: (score: Score) => Tempo | undefined
  /** On to the next exercise, or back to the one before. */
  readonly neighbour: (step: 1 | -1) => void
  readonly endSession: () => void
  readonly changeSettings: (part: Partial<Settings>) => void
}

export const createApp = (ports: Ports): App => {
  const settings = createStore<Settings>(() => defaultSettings)
  const sound = createStore<SoundState>(() => ({ kind: 'asleep' }))
  ports.sound.watch((state) => sound.setState(state, true))
  const kept = createStore<KeptState>(() => ({ kind: 'notKept' }))
  ports.kept.watch((state) => kept.setState(state, true))
  const library = createLibrary(ports)
  const instrument = createInstrument(ports)
  const session = createSession(ports)
  const practice = createPractice({
    ports,
    instrument,
    session,
    settings,
    onward: {
      next: () => screens.onward(),
      anew: () => {
        session.close()
        screens.renew()
      },
      turn: (step) => void screens.neighbour(step),
      spend: (number, ms) => today.spend(number, ms),
      itemOver: (number) => today.over(number),
    },
  })
  const tapTest = createTapTest(ports, instrument)
  const showPiece = (piece: FingeredPiece): void =>
    screens.store.setState({ kind: 'piece', piece }, true)
  const screen = (): Screen => screens.store.getState()
  const opened = createOpenedPieces({ ports, library, session, screen, show: showPiece })
  const { hands, fingerings } = opened
  const onArrive = (): void => {
    tapTest.reset()
    learning.cancel()
  }
  const records = createPieceRecords(ports.storage, session)
  const reach = () => settings.getState().span
  const hardSpots = createHardSpots(ports, reach)
  const notebook = createNotebook(ports.storage, session, records, library)
  const plans = createPlans({
    ports,
    library,
    hands: opened,
    hardSpots,
    notebook,
    reach,
    goal: (piece) => screens.goals.get(piece),
  })
  const goLater = (route: Route): void => screens.go(route)
  const today = createToday({
    ports,
    today: plans.today,
    hands: opened,
    records,
    settings,
    go: goLater,
  })
  const screens = createScreens({
    ports,
    library,
    openPiece: opened.open,
    session,
    records,
    practice,
    today,
    settings,
    onArrive,
  })
  const { go } = screens
  const begin = (route: PracticeRoute): void => {
    void ports.sound.unlock()
    go(route)
  }

  const settingsDesk = createSettingsDesk({ ports, settings, practice, screens })
  const learning = createLearning(instrument, {
    bindings: () => settings.getState().commands,
    allowDamper: () => settings.getState().damperCommands,
    change: (commands) => settingsDesk.change({ commands }),
  })

  return {
    screen: screens.store,
    library,
    instrument,
    ...createBringing({
      library,
      session,
      hands,
      fingerings,
      notebook,
      hardSpots,
      goTo: (piece) => go({ kind: 'piece', piece }),
      show: showPiece,
    }),
    practice,
    notebook,
    session,
    records: createRecords(ports, { ...library, open: opened.open }, session, opened.refresh),
    lessons: createLessons(ports, { ...library, open: opened.open }),
    tapTest,
    learning,
    listenForCommands: (keys, run) =>
      listenForCommands(instrument, () => settings.getState().commands, keys, run),
    settings,
    sound,
    changeSettings: settingsDesk.change,
    go,
    goBack: screens.goBack,
    previous: screens.previous,
    hasPractised: screens.hasPractised,
    neighbour: (step) => void screens.neighbour(step),
    screenKeys: ports.screenKeys,
    letters: ports.computerKeys.letters,
    kept,
    takeNewer: ports.kept.takeNewer,
    licences: ports.licences,
    open: async () => {
      settings.setState(decodeSettings(await ports.storage.loadSettings()), true)
      settingsDesk.apply(settings.getState())
      void ports.midi.connect()
      await session.open()
      await library.load()
      await screens.openFirst()
      void screens.prepare()
    },
    openRecorder: async () =>
      (await import('./recorder')).createRecorder(
        ports,
        instrument,
        () => settings.getState().lagMs,
      ),
    review: reviewEvents,
    propose: proposeChunks,
    hands,
    fingerings,
    caution: createCaution(ports, settings),
    hardSpots,
    plans,
    today,
    searchByPlaying: (score, hand, found) => searchByPlaying(instrument, score, hand, found),
    chunkStates: (piece) => readChunkStates(ports.storage, piece),
    goalTempo: (score) => screens.goals.get(score.id),
    practise: ({ piece, chunk, goalTempo, simulated }) => {
      screens.goals.set(piece.score.id, goalTempo)
      const route: PracticeRoute = {
        kind: 'practice',
        piece: piece.score.id,
        place: placeOf(chunk),
      }
      screens.simulateAt(simulated ? route : undefined)
      begin(route)
    },
    buildUp: ({ score }, plan, goalTempo) => {
      screens.goals.set(score.id, goalTempo)
      go({ kind: 'buildUp', piece: score.id, plan })
    },
    buildUpHere: () => void screens.buildUpHere(),
    begin,
    endSession: () => {
      practice.leave()
      go({ kind: 'summary' })
    },
  }
}
