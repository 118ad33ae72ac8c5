import { beginCoach, stepCoach, type Coach, type CoachSettings } from '@/coach/coach'
import type { Endurance } from '@/coach/endurance'
import { drillId, type DrillId } from '@/journal/ids'
import type { DrillBegun, JournalEvent } from '@/journal/journal'
import { coachEventsOf, latestDrill } from '@/journal/replay'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import { signatureAt } from '@/music/spelling'
import { tempoAt } from '@/music/tempoMap'
import type { Tempo } from '@/music/units'
import { recordOfChunk } from './editions'
import type { OpenPiece } from './library'
import { ofItem, type ExerciseToTake } from './itemToTake'
import { neighbourOf } from './neighbour'
import { passageGoal, type PieceRecords } from './pieceRecord'
import type { Ports } from './ports'
import { barsOf, keysOf, type ItemOnDesk, type Practising, type Sheet } from './practising'
import type { PracticeRoute } from './route'
import type { Session } from './session'
import type { Settings } from './settings'

/** A drill to be begun, or to be gone on with. */
export interface TakenUp {
  readonly practising: Practising
  readonly coach: Coach
}

interface Desk {
  readonly ports: Ports
  readonly session: Session
  readonly records: PieceRecords
  readonly settings: Settings
  /** The goal tempo chosen for each piece in this sitting. */
  readonly goals: Map<Score['id'], Tempo>
  /** How long this sitting has lasted without a rest, where another drill went before. */
  readonly endurance: Endurance | undefined
  /** It is played as an item of today's plan. */
  readonly item: ItemOnDesk | undefined
}

/** The coach's tempo ladder. */
const ladder = { kind: 'classic' } as const

/**
 * Goes on where the chunk was left: in the same sitting with its streak, in a later one at its last
 * rung. `undefined` when the place names no notes of the piece, or its form makes no sense there.
 */
export const takeUp = async (
  desk: Desk,
  piece: OpenPiece,
  route: PracticeRoute,
): Promise<TakenUp | undefined> => {
  const { score } = piece
  const written = chunkAt(score, route.place)
  const bars = written && barsOf(score, written)
  const sheet = written && (await sheetOf(score, written, route))
  if (!written || !bars || !sheet) return undefined
  const known = await recordOfChunk(desk.ports.storage, piece, sheet.chunk.id)
  const events = known.ok ? known.value : []
  const goalTempo = await goalOf(desk, piece, route, written, latestDrill(events, sheet.chunk.id))
  const exercise = ofItem(
    desk.item,
    sheet.chunk,
    await exerciseOf(desk, piece, route, { sheet, written, goalTempo }),
  )
  const practising = (drill: DrillId): Practising => ({
    ...sheet,
    drill,
    piece: score,
    written,
    form: route.form ?? 'asWritten',
    time: bars.first.time,
    bars,
    signature: signatureAt(score.keys, written.start),
    goalTempo,
    keys: keysOf(written),
    reach: goalTempo,
    ...exercise.practising,
  })
  const start = startOf(desk, events, { goalTempo, chunk: sheet.chunk }, exercise)
  const begun = practising(drillId(desk.ports.newId()))
  const last = goesOnWith(desk, events, begun, start.streakGoal)
  if (last) return goOnWith(desk, practising(last.drill), last, events)
  const coach = beginCoach({ ...start, goalTempo: begun.reach, ladder }, desk.endurance)
  void desk.session.drillBegun(begun, {
    streakGoal: start.streakGoal,
    standard: desk.settings.standard,
    startTempo: coach.rung,
    ...(coach.trial ? { trial: true } : {}),
  })
  return { practising: begun, coach }
}

/** Forms and build-ups come when they are wanted. */
const loadBuildUps = () => import('./buildUps')

const sheetOf = async (
  score: Score,
  written: Chunk,
  { form }: PracticeRoute,
): Promise<Sheet | undefined> =>
  form === undefined || form === 'asWritten'
    ? { score, chunk: written }
    : (await loadBuildUps()).variantOf(score, written, form)

/** What an exercise of a build-up asks, and what comes next; by itself a chunk leads to the next one of the piece. */
const exerciseOf = async (
  desk: Desk,
  piece: OpenPiece,
  { plan }: PracticeRoute,
  {
    sheet,
    written,
    goalTempo,
  }: { readonly sheet: Sheet; readonly written: Chunk; readonly goalTempo: Tempo },
): Promise<ExerciseToTake> => {
  const { score } = piece
  const alone = {
    place: undefined,
    practising: { next: neighbourOf({ piece: score, written }, 1) },
  }
  if (!plan) return alone
  const buildUps = await loadBuildUps()
  const place = buildUps.placeInBuildUp({ score, plan, reach: desk.settings.span }, sheet.chunk.id)
  if (!place) return alone
  const { events } = await desk.records.of(piece)
  const { begin, reach } = place.exercise
  return {
    place,
    begin: buildUps.markAt(goalTempo, begin),
    practising: {
      place,
      keys: place.keys,
      reach: buildUps.markAt(goalTempo, reach),
      next: buildUps.afterExercise(
        { score, plan, goalTempo, reach: desk.settings.span, events },
        place,
      ),
    },
  }
}

/** Where the coach begins: at the last rung, at the tempo that the exercise names, or by a trial. */
const startOf = (
  { settings, session }: Desk,
  events: readonly JournalEvent[],
  { goalTempo, chunk }: { readonly goalTempo: Tempo; readonly chunk: Chunk },
  { place, begin, start, practising }: ExerciseToTake,
): Pick<CoachSettings, 'startTempo' | 'trial'> & { readonly streakGoal: number } => {
  const reach = practising.reach ?? goalTempo
  const last = lastRung(events, reach)
  // In one sitting it goes on where it was; on another day today's plan says where.
  const isToday = latestDrill(events, chunk.id)?.session === session.current()
  const begun = last === undefined ? undefined : isToday ? last : (start ?? last)
  const startTempo = practising.item && practising.reach === start ? start : (begun ?? begin)
  const canClimb = begin === undefined || begin < reach
  const streakGoal = place
    ? Math.min(place.exercise.streakGoal, settings.streakGoal)
    : settings.streakGoal
  return {
    // The whole passage asks for as many as the person wants.
    streakGoal: place && reach === goalTempo ? settings.streakGoal : streakGoal,
    ...(startTempo === undefined ? {} : { startTempo }),
    ...(settings.trial && last === undefined && canClimb && startTempo !== reach
      ? { trial: true }
      : {}),
  }
}

/** The drill that was begun last, where it is the same in all that was chosen. */
const goesOnWith = (
  { session }: Desk,
  events: readonly JournalEvent[],
  { chunk, goalTempo, reach }: Practising,
  streakGoal: number,
): DrillBegun | undefined => {
  const last = latestDrill(events, chunk.id)
  return last &&
    last.session === session.current() &&
    last.goalTempo === goalTempo &&
    (last.reach ?? last.goalTempo) === reach &&
    last.streakGoal === streakGoal
    ? last
    : undefined
}

const goOnWith = (
  { ports, endurance }: Desk,
  practising: Practising,
  last: DrillBegun,
  events: readonly JournalEvent[],
): TakenUp => {
  const { streakGoal, startTempo, trial } = last
  const settings: CoachSettings = {
    streakGoal,
    goalTempo: practising.reach,
    ladder,
    startTempo,
    ...(trial ? { trial } : {}),
  }
  const clockStart = ports.wallClock() - ports.now()
  const coach = coachEventsOf(events, last.drill, clockStart).reduce(
    (now, event) => stepCoach(now, event)[0],
    beginCoach(settings),
  )
  return { practising, coach: endurance ? { ...coach, endurance } : coach }
}

/** The goal as it was chosen: in this sitting, for the passage, for this chunk; else what is suggested, or the tempo of the score. */
const goalOf = async (
  { goals, records, item }: Desk,
  piece: OpenPiece,
  { plan }: PracticeRoute,
  written: Chunk,
  last: DrillBegun | undefined,
): Promise<Tempo> => {
  const { score, suggestion } = piece
  const goal =
    item?.goalTempo ??
    goals.get(score.id) ??
    (plan ? passageGoal((await records.of(piece)).events, plan) : undefined) ??
    last?.goalTempo ??
    suggestion?.goalTempo ??
    tempoAt(score.tempos, written.start)
  goals.set(score.id, goal)
  return goal
}

/** A remedy and a small group are played below the goal: their rungs say nothing of a drill that goes higher. */
const sameReach = 0.98

/** The rung at which the chunk was practised last, in drills that went as high as this. */
const lastRung = (events: readonly JournalEvent[], reach: Tempo): Tempo | undefined => {
  const lower = new Set(
    events.flatMap((event) =>
      event.kind === 'drillBegun' && (event.reach ?? event.goalTempo) < reach * sameReach
        ? [event.drill]
        : [],
    ),
  )
  const moved = events.findLast(
    (event) =>
      (event.kind === 'repetition' || event.kind === 'rungChanged') && !lower.has(event.drill),
  )
  if (moved?.kind === 'repetition') return moved.rung
  return moved?.kind === 'rungChanged' ? moved.to : undefined
}
