import { beginCoach, stepCoach, type Coach, type CoachSettings } from '@/coach/coach'
import type { Endurance } from '@/coach/endurance'
import { drillId, type DrillId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import { coachEventsOf, latestDrill } from '@/journal/replay'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import { chunkAt, type Place } from '@/music/place'
import { signatureAt } from '@/music/spelling'
import { tempoAt } from '@/music/tempoMap'
import type { Tempo } from '@/music/units'
import { recordOfChunk } from './editions'
import type { OpenPiece } from './library'
import type { Ports } from './ports'
import { neighbourOf } from './neighbour'
import { barsOf, type Practising } from './practising'
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
  readonly settings: Settings
  /** The goal tempo chosen for each piece in this sitting. */
  readonly goals: Map<Score['id'], Tempo>
  /** How long this sitting has lasted without a rest, where another drill went before. */
  readonly endurance: Endurance | undefined
}

/** The coach's tempo ladder. */
const ladder = { kind: 'classic' } as const

/**
 * Goes on where the chunk was left: in the same sitting with its streak, in a later one at its last
 * rung. `undefined` when the place names no notes of the piece.
 */
export const takeUp = async (
  desk: Desk,
  piece: OpenPiece,
  place: Place,
): Promise<TakenUp | undefined> => {
  const chunk = chunkAt(piece.score, place)
  const bars = chunk && barsOf(piece.score, chunk)
  if (!chunk || !bars) return undefined
  const { ports, session, settings } = desk
  const known = await recordOfChunk(ports.storage, piece, chunk.id)
  const events = known.ok ? known.value : []
  const last = latestDrill(events, chunk.id)
  const goalTempo = goalOf(desk, piece, chunk, last?.goalTempo)
  const next = neighbourOf({ score: piece.score, chunk }, 1)
  const practising = (drill: DrillId): Practising => ({
    drill,
    score: piece.score,
    chunk,
    time: bars.first.time,
    bars,
    signature: signatureAt(piece.score.keys, chunk.start),
    goalTempo,
    ...(next ? { next } : {}),
  })
  const { streakGoal, standard } = settings
  const goesOn =
    last &&
    last.session === session.current() &&
    last.goalTempo === goalTempo &&
    last.streakGoal === streakGoal
  if (goesOn) {
    const coachSettings = { streakGoal, goalTempo, ladder, startTempo: last.startTempo }
    const clockStart = ports.wallClock() - ports.now()
    const coach = replayCoach(coachSettings, events, last.drill, clockStart)
    return {
      practising: practising(last.drill),
      coach: desk.endurance ? { ...coach, endurance: desk.endurance } : coach,
    }
  }
  const startTempo = lastRung(events)
  const coach = beginCoach(
    { streakGoal, goalTempo, ladder, ...(startTempo ? { startTempo } : {}) },
    desk.endurance,
  )
  const begun = practising(drillId(ports.newId()))
  void session.drillBegun(begun, { streakGoal, standard, startTempo: coach.rung })
  return { practising: begun, coach }
}

const goalOf = (
  { goals }: Desk,
  { score, suggestion }: OpenPiece,
  chunk: Chunk,
  last: Tempo | undefined,
): Tempo => {
  const goal =
    goals.get(score.id) ?? last ?? suggestion?.goalTempo ?? tempoAt(score.tempos, chunk.start)
  goals.set(score.id, goal)
  return goal
}

const replayCoach = (
  settings: CoachSettings,
  events: readonly JournalEvent[],
  drill: DrillId,
  clockStart: number,
): Coach =>
  coachEventsOf(events, drill, clockStart).reduce(
    (coach, event) => stepCoach(coach, event)[0],
    beginCoach(settings),
  )

/** The rung at which the chunk was practised last. */
const lastRung = (events: readonly JournalEvent[]): Tempo | undefined => {
  const moved = events.findLast(
    (event) => event.kind === 'repetition' || event.kind === 'rungChanged',
  )
  if (moved?.kind === 'repetition') return moved.rung
  return moved?.kind === 'rungChanged' ? moved.to : undefined
}
