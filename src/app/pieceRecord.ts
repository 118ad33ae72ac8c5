import { usualPace, type Pace } from '@/exercises/estimate'
import type { JournalEvent, RepetitionRecorded } from '@/journal/journal'
import type { Score } from '@/music/music'
import type { PieceId, Tempo } from '@/music/units'
import { carryEvents, type Carried } from '@/review/carryOver'
import type { StoragePort } from './ports'
import type { BuildUpPlan } from './route'
import type { Session } from './session'

/** What the record says of a piece as a whole; takes are left out. */
export interface PieceRecord {
  /** Drills that were begun, what was done and secure, problems and remedies, in the order of time. */
  readonly events: readonly JournalEvent[]
  readonly pace: Omit<Pace, 'goalTempo'>
  /** The pace is the person's, and not merely a usual one. */
  readonly isOwnPace: boolean
}

/** Reads the record of a piece once in a sitting, and goes on with what is written meanwhile. */
export interface PieceRecords {
  readonly of: (piece: Edition) => Promise<PieceRecord>
}

type Edition = { readonly score: Score; readonly carried?: readonly Carried[] }

interface Read {
  readonly kept: readonly JournalEvent[]
  readonly lately: readonly RepetitionRecorded[]
  readonly ids: ReadonlySet<string>
}

/** Repetitions that tell the pace: those of some days, not of last year. */
const lately = 200

export const createPieceRecords = (
  storage: Pick<StoragePort, 'ofPiece' | 'ofChunk'>,
  session: Session,
): PieceRecords => {
  const known = new Map<PieceId, Promise<Read>>()

  const readOf = async ({ score, carried = [] }: Edition): Promise<Read> => {
    const all = await Promise.all([
      storage.ofPiece(score.id),
      ...carried.map(({ from }) => storage.ofChunk(from)),
    ])
    // What could not be read now is asked for again the next time.
    if (all.some(({ ok }) => !ok)) known.delete(score.id)
    const found = all.flatMap((each) => (each.ok ? each.value : []))
    const events = carryEvents(found, carried, score.id).toSorted(
      (a, b) => a.atEpochMs - b.atEpochMs,
    )
    return {
      kept: events.filter(isKept),
      lately: events.filter((event) => event.kind === 'repetition').slice(-lately),
      ids: new Set(events.map(({ id }) => id)),
    }
  }
  return {
    of: async (piece) => {
      const { id } = piece.score
      const reading = known.get(id) ?? readOf(piece)
      known.set(id, reading)
      const read = await reading
      const since = session.store
        .getState()
        .events.filter((event) => 'piece' in event && event.piece === id && !read.ids.has(event.id))
      const repetitions = since.filter((event) => event.kind === 'repetition')
      const pace = paceOf([...read.lately, ...repetitions].slice(-lately))
      return {
        events: [...read.kept, ...since.filter(isKept)],
        pace,
        isOwnPace: pace !== usualPace,
      }
    },
  }
}

const keptKinds: readonly JournalEvent['kind'][] = [
  'drillBegun',
  'exerciseDone',
  'secure',
  'problemNamed',
  'remedyBegun',
  'remedyEnded',
  'problemOutcome',
]

const isKept = ({ kind }: JournalEvent): boolean => keptKinds.includes(kind)

/** Fewer say little: what is usual counts until then. */
const leastRepetitions = 20
/** A longer pause between two repetitions was a rest or a talk, seconds. */
const longestPause = 15
/** The estimate needs shares at which a streak comes at all. */
const leastShare = 0.4

/** How the person works, from repetitions in the order of time. */
export const paceOf = (repetitions: readonly RepetitionRecorded[]): Omit<Pace, 'goalTempo'> => {
  const ended = repetitions.filter(({ verdict }) => verdict !== 'brokenOff')
  if (ended.length < leastRepetitions) return usualPace
  const clean = ended.filter(({ verdict }) => verdict === 'clean').length
  const pauses = repetitions
    .flatMap((event, i) => {
      const before = repetitions[i - 1]
      if (!before || before.drill !== event.drill) return []
      return [(event.atEpochMs - event.tookMs - before.atEpochMs) / 1000]
    })
    .filter((seconds) => seconds >= 0 && seconds <= longestPause)
    .toSorted((a, b) => a - b)
  return {
    cleanShare: Math.max(leastShare, clean / ended.length),
    pauseSeconds: pauses[Math.floor(pauses.length / 2)] ?? usualPace.pauseSeconds,
  }
}

/** The goal tempo with which the build-up was practised last. */
export const passageGoal = (
  events: readonly JournalEvent[],
  { passage }: BuildUpPlan,
): Tempo | undefined => {
  const last = events.findLast(
    (event) =>
      event.kind === 'drillBegun' &&
      event.passage?.from === passage.from &&
      event.passage.to === passage.to &&
      event.passage.hand === passage.hand,
  )
  return last?.kind === 'drillBegun' ? last.goalTempo : undefined
}
