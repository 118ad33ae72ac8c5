import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Command } from '@/coach/coach'
import type { Diagnosis } from '@/coach/diagnose'
import type { RemedyKind } from '@/coach/remedyKinds'
import { eventId, sessionId, type DrillId, type EventId, type SessionId } from '@/journal/ids'
import { journalVersion, type DrillBegun, type JournalEvent } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { recordPlace, recordRepetition, type Stamp } from '@/journal/record'
import type { RemedyOutcome } from '@/journal/words'
import type { Written } from '@/journal/written'
import type { Standard } from '@/judge/flaw'
import type { Repetition } from '@/judge/repetition'
import type { Take } from '@/music/keyEvent'
import type { Ms, Tempo } from '@/music/units'
import type { Drill } from './drill'
import type { Ports } from './ports'
import type { Practising } from './practising'
import { entryOf, recordCommand, recordProblem } from './recording'

export interface SessionState {
  /** The events of this session, in order. */
  readonly events: readonly JournalEvent[]
  /** What is wrong with keeping the record, in one or two sentences. */
  readonly problem?: string | undefined
}

/** One sitting at the instrument; writes its journal. Each promise resolves when the event is stored. */
export interface Session {
  readonly store: StoreApi<SessionState>
  /** The session of this sitting, if it has begun. */
  readonly current: () => SessionId | undefined
  /** Goes on with the last session where its last event is less than an hour old. */
  readonly open: () => Promise<void>
  /** Its last event is older than that: who plays now, on a page left open, sits down anew. */
  readonly isOver: () => boolean
  /** Whether a repetition was ever recorded, in this session or another; where that cannot be read, one was. */
  readonly hasPlayed: () => Promise<boolean>
  /** What follows begins a new session. */
  readonly close: () => void
  readonly pieceAdded: (piece: Practising['score'], fileName: string) => Promise<void>
  readonly drillBegun: (practising: Practising, from: DrillStart) => Promise<void>
  readonly repetition: (judged: Judged) => Promise<void>
  /** `streakGoal` is that of the drill. */
  readonly command: (practising: Practising, command: Command, streakGoal: number) => Promise<void>
  /** Gives the name of the problem in the record. */
  readonly problemNamed: (practising: Practising, diagnosis: Diagnosis) => EventId
  readonly remedyBegun: (at: RemedyAt, remedy: RemedyKind, remedyDrill: DrillId) => Promise<void>
  readonly remedyEnded: (at: RemedyAt, outcome: RemedyOutcome) => Promise<void>
  /** What the person writes or decides; gives the event when it is stored. */
  readonly wrote: (written: Unstamped) => Promise<Written>
  /** The person turned to another exercise than the next. */
  readonly choseExercise: (practising: Practising) => Promise<void>
}

/** Without what every event carries; by kind, since the kinds differ in the rest. */
type Unstamped<E = Written> = E extends Written ? Omit<E, keyof Stamp | 'v'> : never

/** A problem in the record, and the drill that stopped for it. */
export interface RemedyAt {
  readonly practising: Practising
  readonly problem: EventId
}

export interface DrillStart {
  readonly streakGoal: number
  readonly startTempo: Tempo
  /** It begins with a trial for the start tempo. */
  readonly trial?: true
  readonly standard: Standard
}

export interface Judged {
  readonly practising: Practising
  readonly repetition: Repetition
  readonly take: Take
  /** The rung and the judge's settings at which it was judged. */
  readonly inForce: Drill['inForce']
  readonly verdictAt: Ms
}

/** A longer break begins a new session. */
const sessionGapMs = 60 * 60_000

export const createSession = (ports: Ports): Session => {
  const store = createStore<SessionState>(() => ({ events: [] }))
  let session: SessionId | undefined

  const stamp = (): Stamp => ({
    id: eventId(ports.newId()),
    session: begun(),
    atEpochMs: ports.wallClock(),
  })
  const begun = (): SessionId => {
    if (session) return session
    session = sessionId(ports.newId())
    void write({ v: journalVersion, kind: 'sessionBegun', ...stamp() })
    return session
  }
  const write = async (event: JournalEvent): Promise<void> => {
    store.setState(({ events }) => ({ events: [...events, event] }))
    // What goes wrong is told by `watchProblem`; the event stays in memory meanwhile.
    await ports.storage.append(event)
  }

  ports.storage.watchProblem((problem) => store.setState({ problem }))

  // The same sitting in another tab.
  ports.storage.watchOthers((event) => {
    if (event.session !== session) return
    store.setState(({ events }) => ({ events: mergeJournals(events, [event]) }))
  })

  const isOld = (last: JournalEvent): boolean => ports.wallClock() - last.atEpochMs > sessionGapMs

  return {
    store,
    current: () => session,
    isOver: () => {
      const last = store.getState().events.at(-1)
      return last !== undefined && isOld(last)
    },
    hasPlayed: async () => {
      const sums = await ports.storage.sums()
      return !sums.ok || sums.value.totals.some(({ ms }) => ms > 0)
    },
    close: () => {
      session = undefined
      store.setState({ events: [] })
    },
    open: async () => {
      const latest = await ports.storage.latestSession()
      if (!latest.ok) return store.setState({ problem: latest.reason })
      const { events, unread } = latest.value
      if (unread !== undefined) store.setState({ problem: unread })
      const last = events.at(-1)
      if (!last || isOld(last)) return
      session = last.session
      store.setState({ events })
    },
    pieceAdded: ({ id, title }, fileName) =>
      write({ v: journalVersion, kind: 'pieceAdded', ...stamp(), piece: id, title, fileName }),
    drillBegun: (practising, { standard, ...start }) => {
      const { drill, chunk, written, form, bars, time, goalTempo, reach, place } = practising
      const event: DrillBegun = {
        v: journalVersion,
        kind: 'drillBegun',
        ...stamp(),
        drill,
        piece: chunk.piece,
        chunk: chunk.id,
        place: recordPlace(written, bars.first.number, bars.last.number),
        form,
        ...(place ? { passage: place.passage } : {}),
        ...(reach === goalTempo ? {} : { reach }),
        time,
        goalTempo,
        ...start,
        ladder: 'classic',
        standard,
      }
      return write(event)
    },
    repetition: ({ practising, repetition, take, inForce, verdictAt }) => {
      const { drill, chunk } = practising
      const context = { drill, chunk, rung: inForce.rung, ...inForce.settings, verdictAt }
      return write(recordRepetition(stamp(), context, repetition, take))
    },
    command: async (practising, command, streakGoal) => {
      const known = store.getState().events
      const events = recordCommand({ practising, streakGoal, stamp, known }, command)
      await Promise.all(events.map(write))
    },
    problemNamed: (practising, diagnosis) => {
      const event = recordProblem(practising, diagnosis, stamp())
      void write(event)
      return event.id
    },
    remedyBegun: ({ practising, problem }, remedy, remedyDrill) =>
      write({
        ...entryOf(practising, stamp()),
        kind: 'remedyBegun',
        problem,
        remedy,
        remedyDrill,
      }),
    remedyEnded: ({ practising, problem }, outcome) =>
      write({ ...entryOf(practising, stamp()), kind: 'remedyEnded', problem, outcome }),
    wrote: async (written) => {
      const event: Written = { v: journalVersion, ...stamp(), ...written }
      await write(event)
      return event
    },
    choseExercise: (practising) =>
      write({ ...entryOf(practising, stamp()), kind: 'overruled', what: 'exercise' }),
  }
}
