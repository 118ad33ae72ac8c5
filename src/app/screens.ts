import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Coach } from '@/coach/coach'
import type { Score } from '@/music/music'
import { placeOf } from '@/music/place'
import { tempoAt } from '@/music/tempoMap'
import { tick, type PieceId, type Tempo } from '@/music/units'
import type { FingeredPiece } from './fingerings'
import type { Library } from './library'
import { neighbourOf } from './neighbour'
import type { Ports } from './ports'
import type { Practice } from './practice'
import type { BuildUpStanding } from './buildUps'
import { passageGoal, type PieceRecords } from './pieceRecord'
import type { Practising, Upcoming } from './practising'
import {
  formatRoute,
  parseRoute,
  type BuildUpPlan,
  type RepetitionsRoute,
  type Route,
} from './route'
import type { Session } from './session'
import type { Settings } from './settings'
import type { Today } from './today'

/** What stands on the page. */
export type Screen =
  | { readonly kind: 'opening' }
  | { readonly kind: 'pieces' }
  | { readonly kind: 'piece'; readonly piece: FingeredPiece }
  | { readonly kind: 'practice'; readonly practising: Practising }
  | { readonly kind: 'buildUp'; readonly piece: FingeredPiece; readonly standing: BuildUpStanding }
  | Extract<Route, { kind: 'plan' | 'today' }>
  | { readonly kind: 'summary' }
  | { readonly kind: 'tapTest' }
  | Extract<Route, { kind: 'review' | 'teacher' | 'students' }>
  | RepetitionsRoute
  | { readonly kind: 'journal' }
  | { readonly kind: 'licences' }
  | { readonly kind: 'notebook' }
  | { readonly kind: 'write' }
  | { readonly kind: 'record' }
  /** The address names a piece or a place that is not here. */
  | { readonly kind: 'lost' }

/** The address, and the screen that it names. */
export interface Screens {
  readonly store: StoreApi<Screen>
  readonly go: (route: Route) => void
  /** From the tap test or a list of repetitions to where it was asked for. */
  readonly goBack: () => void
  /** The address that was shown before this one. */
  readonly previous: () => string
  /** The present address once more, with other settings. */
  readonly renew: () => void
  /** Shows the address that the page was opened with; on the first run the first piece. */
  readonly openFirst: () => Promise<void>
  /** Fetches what later screens need, so that none waits or fails when the network is gone. */
  readonly prepare: () => Promise<void>
  /** The person turns to the next exercise, or back to the one before. */
  readonly neighbour: (step: 1 | -1) => Promise<void>
  /** To the first exercise that is left in a build-up of what is drilled. */
  readonly buildUpHere: () => Promise<void>
  /** The exercise is done: to the one that follows. */
  readonly onward: () => void
  /** Whether the record tells of anything. */
  readonly hasPractised: () => Promise<boolean>
  /** The goal tempo chosen for each piece in this sitting. */
  readonly goals: Map<Score['id'], Tempo>
  /** The drill of this address begins with the simulated player. */
  readonly simulateAt: (route: Route | undefined) => void
}

interface House {
  readonly ports: Ports
  readonly library: Library
  /** With the person's word on its hands and fingers. */
  readonly openPiece: (id: PieceId) => Promise<FingeredPiece | undefined>
  readonly session: Session
  readonly records: PieceRecords
  readonly practice: Practice
  readonly today: Pick<Today, 'itemAt' | 'over' | 'skip' | 'later'>
  readonly settings: StoreApi<Settings>
  readonly onArrive: () => void
}

/** Forms and build-ups come when they are wanted. */
const loadBuildUps = () => import('./buildUps')

type Arrival = { readonly screen: Screen; readonly coach?: Coach }

export const createScreens = (house: House): Screens => {
  const { ports, library, openPiece, session, records, practice, settings } = house
  const store = createStore<Screen>(() => ({ kind: 'opening' }))
  const goals = new Map<Score['id'], Tempo>()
  let simulatedAt: string | undefined
  /** The latest address that was not the tap test's. */
  let before = formatRoute({ kind: 'pieces' })
  let [previous, shown] = ['', '']
  /** Counts the moves, so that a slow one does not overtake the next. */
  let moves = 0

  const go = (route: Route): void => ports.address.write(formatRoute(route))

  const arrive = async (hash: string): Promise<void> => {
    const move = ++moves
    const route = parseRoute(hash)
    const next = await arrivalAt(route)
    if (move !== moves) return
    house.onArrive()
    previous = shown
    shown = hash
    if (route.kind !== 'tapTest' && route.kind !== 'repetitions') before = hash
    if (next.screen.kind !== 'practice') practice.end()
    else if (next.coach) practice.begin(next.screen.practising, next.coach)
    store.setState(() => next.screen, true)
    if (hash !== simulatedAt) return
    simulatedAt = undefined
    void practice.toggleSimulated()
  }
  const arrivalAt = async (route: Route): Promise<Arrival> => {
    switch (route.kind) {
      case 'pieces':
      case 'summary':
      case 'tapTest':
      case 'plan':
      case 'today':
      case 'review':
      case 'teacher':
      case 'students':
      case 'repetitions':
      case 'journal':
      case 'licences':
      case 'notebook':
      case 'write':
      case 'record':
        return { screen: route }
      case 'piece': {
        const piece = await openPiece(route.piece)
        return { screen: piece ? { kind: 'piece', piece } : { kind: 'lost' } }
      }
      case 'buildUp': {
        const piece = await openPiece(route.piece)
        const standing = piece && (await standingOf(piece, route.plan))
        return { screen: standing ? { kind: 'buildUp', piece, standing } : { kind: 'lost' } }
      }
      case 'practice': {
        const piece = await openPiece(route.piece)
        const endurance = practice.store.getState()?.coach.endurance
        const item = route.item === undefined ? undefined : await house.today.itemAt(route)
        const now = settings.getState()
        const desk = { ports, session, records, goals, settings: now, endurance, item }
        const [{ takeUp }] = await Promise.all([import('./takeUp'), practice.prepare()])
        const drill = piece && (await takeUp(desk, piece, route))
        return drill
          ? { screen: { kind: 'practice', practising: drill.practising }, coach: drill.coach }
          : { screen: { kind: 'lost' } }
      }
    }
  }

  const standingOf = async (
    piece: FingeredPiece,
    plan: BuildUpPlan,
  ): Promise<BuildUpStanding | undefined> => {
    const { standingIn } = await loadBuildUps()
    const { span: reach } = settings.getState()
    const { events, pace, isOwnPace } = await records.of(piece)
    const { score, suggestion } = piece
    const goalTempo =
      goals.get(score.id) ??
      passageGoal(events, plan) ??
      suggestion?.goalTempo ??
      tempoAt(score.tempos, tick(0))
    return standingIn({ score, plan, goalTempo, reach, events }, { ...pace, goalTempo }, isOwnPace)
  }

  const beside = async (practising: Practising, step: 1 | -1): Promise<Upcoming | undefined> => {
    const { place, piece, goalTempo } = practising
    if (!place) return neighbourOf(practising, step)
    const { besideExercise } = await loadBuildUps()
    const { span: reach } = settings.getState()
    const { events } = await records.of({ score: piece })
    return besideExercise({ score: piece, plan: place.plan, goalTempo, reach, events }, place, step)
  }

  /** In today's plan the next is the next item; the one that is on can be played later. Never out of a breath. */
  const besideItem = (number: number, step: 1 | -1): void => {
    const { breath } = practice.store.getState() ?? {}
    if (step === -1) return breath ? practice.again() : house.today.later(number)
    if (breath?.ofItem) return house.today.over(number)
    practice.skip()
    house.today.skip(number)
  }

  const hasPractised = async (): Promise<boolean> => {
    const latest = await ports.storage.latestSession()
    return !latest.ok || latest.value.events.length > 0 || latest.value.unread !== undefined
  }

  return {
    store,
    goals,
    go,
    hasPractised,
    goBack: () => ports.address.write(before),
    previous: () => previous,
    renew: () => void arrive(ports.address.read()),
    openFirst: async () => {
      ports.address.watch((hash) => {
        library.forgetProblem()
        void arrive(hash)
      })
      const [first] = library.store.getState().listed
      const isFirstRun = session.store.getState().events.length === 0 && !(await hasPractised())
      // The person may have gone elsewhere meanwhile, to the pieces too: then the address says so.
      const hash = ports.address.read()
      if (hash === '' && isFirstRun && first) go({ kind: 'piece', piece: first.id })
      else await arrive(hash)
    },
    prepare: async () => {
      await Promise.all([
        practice.prepare(),
        import('./takeUp'),
        loadBuildUps(),
        import('./planning'),
        import('./dayDesk'),
      ])
      await import('./diagnosing')
    },
    neighbour: async (step) => {
      const now = store.getState()
      if (now.kind !== 'practice') return
      if (now.practising.item) return besideItem(now.practising.item.number, step)
      const next = await beside(now.practising, step)
      if (!next) return
      practice.skip()
      go(next.route)
    },
    buildUpHere: async () => {
      const now = store.getState()
      if (now.kind !== 'practice') return
      const { piece, written } = now.practising
      const opened = await openPiece(piece.id)
      const plan = {
        passage: placeOf(written),
        thoroughness: 'brisk',
        direction: 'forward',
      } as const
      const { routeOf } = await loadBuildUps()
      const first = opened && (await standingOf(opened, plan))?.progress.next
      if (first) go(routeOf(piece.id, plan, first))
    },
    onward: () => {
      const now = store.getState()
      if (now.kind === 'practice' && now.practising.next) go(now.practising.next.route)
    },
    simulateAt: (route) => {
      simulatedAt = route && formatRoute(route)
    },
  }
}
