import type { PieceId } from '@/music/units'
import type { Day, DayOf } from './day'
import { explainJournalProblem } from './decode'
import type { EventId } from './ids'
import type { JournalEvent } from './journal'
import type { ReadJournal } from './lines'
import { mergeJournals } from './merge'

/** What a file would bring, before it is brought. */
export interface ImportPreview {
  /** Events in the file, each id once. */
  readonly events: number
  /** Of those, events that are here already. */
  readonly known: number
  readonly fresh: Brought
  /** Lines that cannot be read, counted from 1, and why. */
  readonly unread: readonly { readonly line: number; readonly why: string }[]
}

/** The events that are new here. */
export interface Brought {
  readonly events: number
  readonly repetitions: number
  /** Written in the notebook. */
  readonly entries: number
  readonly sessions: number
  readonly pieces: readonly { readonly piece: PieceId; readonly title?: string }[]
  readonly days: number
  readonly firstDay?: Day
  readonly lastDay?: Day
}

/** Compares a file with what is here. `isKnown` tells of an event whether its id is here already. */
export const previewImport = (
  { events, unread }: Pick<ReadJournal, 'events' | 'unread'>,
  isKnown: (id: EventId) => boolean,
  dayOf: DayOf,
): ImportPreview => {
  const merged = mergeJournals(events)
  const fresh = merged.filter(({ id }) => !isKnown(id))
  return {
    events: merged.length,
    known: merged.length - fresh.length,
    fresh: describe(fresh, merged, dayOf),
    unread: unread.map(({ line, reason }) => ({ line, why: explainJournalProblem(reason) })),
  }
}

const describe = (
  fresh: readonly JournalEvent[],
  all: readonly JournalEvent[],
  dayOf: DayOf,
): Brought => {
  const titles = new Map(
    all.flatMap((e) => (e.kind === 'pieceAdded' ? [[e.piece, e.title] as const] : [])),
  )
  const pieces = new Set(fresh.flatMap((event) => ('piece' in event ? [event.piece] : [])))
  const days = [...new Set(fresh.map(({ atEpochMs }) => dayOf(atEpochMs)))]
  const [firstDay, lastDay] = [days[0], days.at(-1)]
  return {
    events: fresh.length,
    repetitions: fresh.filter(({ kind }) => kind === 'repetition').length,
    entries: fresh.filter(({ kind }) => kind === 'notebookWritten').length,
    sessions: new Set(fresh.map(({ session }) => session)).size,
    pieces: [...pieces].map((piece) => {
      const title = titles.get(piece)
      return { piece, ...(title === undefined ? {} : { title }) }
    }),
    days: days.length,
    ...(firstDay === undefined || lastDay === undefined ? {} : { firstDay, lastDay }),
  }
}
