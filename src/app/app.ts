/**
 * The program behind the screens: stores that hold state, call the step functions of the core and
 * run what they say through ports (ports.ts).
 *
 * screen: what the address names (route.ts). library: the pieces. instrument: everything that plays.
 * practice: the drill under way. session: this sitting, written into the journal. tapTest: the lag
 * against the metronome's clicks.
 *
 * Example: `const app = createApp(ports); await app.open()`; a view reads `app.practice.store` and
 * calls `app.practice.raise()`.
 */
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Coach } from '@/coach/coach'
import type { Answer } from '@/exercises/findByNotes'
import { proposeChunks } from '@/exercises/propose'
import type { JournalEvent } from '@/journal/journal'
import type { Chunk } from '@/music/chunk'
import type { HandChoice, Score } from '@/music/music'
import { placeOf } from '@/music/place'
import type { ChunkId, Key, Tempo } from '@/music/units'
import { carryEvents } from '@/review/carryOver'
import { chunkStates, type ChunkState } from '@/review/chunkStates'
import { reviewEvents } from '@/review/review'
import { createHandCorrections, type CorrectedPiece, type HandCorrections } from './handCorrections'
import { createInstrument, type Instrument } from './instrument'
import {
  createLibrary,
  type BetterEdition,
  type ChosenFile,
  type Library,
  type OpenPiece,
} from './library'
import { localDay } from './localDay'
import type { Ports, ScreenKeysPort, SoundState } from './ports'
import { neighbourOf } from './neighbour'
import { createPractice, type Practice } from './practice'
import { searchByPlaying } from './placeSearch'
import type { Practising } from './practising'
import type { Recorder } from './recorder'
import { formatRoute, parseRoute, type Route } from './route'
import { createSession, type Session } from './session'
import { decodeSettings, defaultSettings, type Settings } from './settings'
import { takeUp } from './takeUp'
import { createTapTest, type TapTest } from './tapTest'

/** What stands on the page. */
export type Screen =
  | { readonly kind: 'opening' }
  | { readonly kind: 'pieces' }
  | { readonly kind: 'piece'; readonly piece: CorrectedPiece }
  | { readonly kind: 'practice'; readonly practising: Practising }
  | { readonly kind: 'summary' }
  | { readonly kind: 'tapTest' }
  | { readonly kind: 'write' }
  | { readonly kind: 'record' }
  /** The address names a piece or a place that is not here. */
  | { readonly kind: 'lost' }

/** A drill as the person chose it on the piece's page. */
export interface Choice {
  readonly piece: OpenPiece
  readonly chunk: Chunk
  readonly goalTempo: Tempo
  readonly simulated: boolean
}

export interface App {
  readonly screen: StoreApi<Screen>
  readonly library: Library
  readonly instrument: Instrument
  readonly practice: Practice
  readonly session: Session
  readonly tapTest: TapTest
  readonly settings: StoreApi<Settings>
  readonly sound: StoreApi<SoundState>
  readonly screenKeys: ScreenKeysPort
  /** What is printed on the computer's keys that play, for a strip without a MIDI keyboard; else nothing. */
  readonly letters: () => ReadonlyMap<Key, string>
  /** Whose work is shipped with the program, and under what licence. */
  readonly credits: string
  readonly open: () => Promise<void>
  readonly go: (route: Route) => void
  /** From the tap test to where it was asked for. */
  readonly goBack: () => void
  readonly addFile: (file: ChosenFile) => Promise<void>
  /** Takes other parts of the piece's file, and opens what they make. */
  readonly takeParts: (piece: OpenPiece, parts: readonly number[]) => Promise<void>
  /** Puts a better edition in the place of a piece, and opens it. */
  readonly replaceEdition: (edition: BetterEdition) => Promise<void>
  /** For a fragment that is played in; loaded when it is wanted. */
  readonly openRecorder: () => Promise<Recorder>
  /** The figures of a session's events. */
  readonly review: typeof reviewEvents
  /** Chunks to drill in a stretch of the score. */
  readonly propose: typeof proposeChunks
  /** What the person says of hands that the file does not tell. */
  readonly hands: Pick<HandCorrections, 'add' | 'undo'>
  /** Listens to the person, and tells each place of the piece that their notes name. */
  readonly searchByPlaying: (
    score: Score,
    hand: HandChoice,
    found: (answer: Answer) => void,
  ) => () => void
  /** What events tell of each chunk. */
  readonly chunkStates: (events: readonly JournalEvent[]) => ReadonlyMap<ChunkId, ChunkState>
  readonly practise: (choice: Choice) => void
  /** The goal tempo that was chosen for the piece in this sitting. */
  readonly goalTempo: (score: Score) => Tempo | undefined
  /** On to the next chunk of the piece, or back to the one before. */
  readonly neighbour: (step: 1 | -1) => void
  readonly endSession: () => void
  readonly changeSettings: (part: Partial<Settings>) => void
}

export const createApp = (ports: Ports): App => {
  const screen = createStore<Screen>(() => ({ kind: 'opening' }))
  const settings = createStore<Settings>(() => defaultSettings)
  const sound = createStore<SoundState>(() => ({ kind: 'asleep' }))
  ports.sound.watch((state) => sound.setState(state, true))
  const library = createLibrary(ports)
  const instrument = createInstrument(ports)
  const session = createSession(ports)
  const practice = createPractice(ports, instrument, session, settings)
  const tapTest = createTapTest(ports, instrument)
  const hands = createHandCorrections(ports.storage, library, (piece) => {
    const now = screen.getState()
    if (now.kind === 'piece' && now.piece.score.id === piece.score.id)
      screen.setState({ kind: 'piece', piece }, true)
  })
  const goals = new Map<Score['id'], Tempo>()
  /** The address of a drill that begins with the simulated player. */
  let simulatedAt: string | undefined
  /** The latest address that was not the tap test's. */
  let before = formatRoute({ kind: 'pieces' })
  /** Counts the moves, so that a slow one does not overtake the next. */
  let moves = 0

  const go = (route: Route): void => ports.address.write(formatRoute(route))

  const arrive = async (hash: string): Promise<void> => {
    const move = ++moves
    const route = parseRoute(hash)
    const next = await screenOf(route)
    if (move !== moves) return
    tapTest.reset()
    if (route.kind !== 'tapTest') before = hash
    if (next.screen.kind !== 'practice') practice.end()
    else if (next.coach) practice.begin(next.screen.practising, next.coach)
    screen.setState(() => next.screen, true)
    if (hash !== simulatedAt) return
    simulatedAt = undefined
    void practice.toggleSimulated()
  }

  const screenOf = async (
    route: Route,
  ): Promise<{ readonly screen: Screen; readonly coach?: Coach }> => {
    switch (route.kind) {
      case 'pieces':
      case 'summary':
      case 'tapTest':
      case 'write':
      case 'record':
        return { screen: route }
      case 'piece': {
        const piece = await hands.open(route.piece)
        return { screen: piece ? { kind: 'piece', piece } : { kind: 'lost' } }
      }
      case 'practice': {
        const piece = await hands.open(route.piece)
        const drill =
          piece &&
          (await takeUp(
            {
              ports,
              session,
              goals,
              settings: settings.getState(),
              endurance: practice.store.getState()?.coach.endurance,
            },
            piece,
            route.place,
          ))
        return drill
          ? { screen: { kind: 'practice', ...drill }, ...drill }
          : { screen: { kind: 'lost' } }
      }
    }
  }

  const openFirst = async (): Promise<void> => {
    const hash = ports.address.read()
    const [first] = library.store.getState().listed
    const isFirstRun = session.store.getState().events.length === 0 && !(await hasPractised())
    if (parseRoute(hash).kind === 'pieces' && isFirstRun && first)
      go({ kind: 'piece', piece: first.id })
    else await arrive(hash)
  }
  const hasPractised = async (): Promise<boolean> => {
    const latest = await ports.storage.latestSession()
    return !latest.ok || latest.value.events.length > 0 || latest.value.unread > 0
  }

  const applySettings = ({ input, inputName, transpose, sound }: Settings): void => {
    ports.midi.choose(input, inputName)
    ports.midi.transpose(transpose)
    ports.sound.setOn(sound)
  }

  return {
    screen,
    library,
    instrument,
    practice,
    session,
    tapTest,
    settings,
    sound,
    screenKeys: ports.screenKeys,
    letters: ports.computerKeys.letters,
    credits: ports.credits,
    go,
    goBack: () => ports.address.write(before),
    open: async () => {
      settings.setState(decodeSettings(await ports.storage.loadSettings()), true)
      applySettings(settings.getState())
      void ports.midi.connect()
      await session.open()
      await library.load()
      ports.address.watch((hash) => {
        library.forgetProblem()
        void arrive(hash)
      })
      await openFirst()
    },
    addFile: async (file) => {
      const piece = await library.add(file)
      if (!piece) return
      await session.pieceAdded(piece.score, file.name)
      go({ kind: 'piece', piece: piece.score.id })
    },
    takeParts: async ({ score }, parts) => {
      const { piece, fileName } = (await library.takeParts(score.id, parts)) ?? {}
      if (!piece || !fileName) return
      await session.pieceAdded(piece.score, fileName)
      if (piece.score.id === score.id)
        screen.setState({ kind: 'piece', piece: await hands.apply(piece) }, true)
      else go({ kind: 'piece', piece: piece.score.id })
    },
    replaceEdition: async (edition) => {
      if (!(await library.replace(edition))) return
      await session.pieceAdded(edition.open.score, edition.piece.fileName)
      go({ kind: 'piece', piece: edition.piece.id })
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
    searchByPlaying: (score, hand, found) => searchByPlaying(instrument, score, hand, found),
    chunkStates: (events) => {
      const now = screen.getState()
      if (now.kind !== 'piece') return chunkStates(events, localDay)
      const { score, carried = [] } = now.piece
      return chunkStates(carryEvents(events, carried, score.id), localDay)
    },
    goalTempo: (score) => goals.get(score.id),
    practise: ({ piece, chunk, goalTempo, simulated }) => {
      goals.set(piece.score.id, goalTempo)
      const route: Route = { kind: 'practice', piece: piece.score.id, place: placeOf(chunk) }
      simulatedAt = simulated ? formatRoute(route) : undefined
      go(route)
    },
    neighbour: (step) => {
      const now = screen.getState()
      if (now.kind !== 'practice') return
      const next = neighbourOf(now.practising, step)
      if (next) go({ kind: 'practice', piece: now.practising.score.id, place: placeOf(next) })
    },
    endSession: () => go({ kind: 'summary' }),
    changeSettings: (part) => {
      const before = settings.getState()
      const after = decodeSettings({ ...before, ...part })
      settings.setState(after, true)
      applySettings(after)
      void ports.storage.saveSettings(after)
      const now = screen.getState()
      if (now.kind !== 'practice') return
      if (after.streakGoal !== before.streakGoal) void arrive(ports.address.read())
      else practice.settingsChanged()
    },
  }
}
