import { createStore, type StoreApi } from 'zustand/vanilla'
import { daysAfter } from '@/journal/day'
import { studentId, type StudentId } from '@/journal/ids'
import { ok, type Result } from '@/music/result'
import { standingSince, type PieceSince } from '@/review/standings'
import { createIncoming, type Incoming } from './incoming'
import type { Ports, StudentListing } from './ports'
import type { Shelf } from './reviewedRecord'
import { createReviews, type Reviews } from './reviews'
import {
  cleanName,
  firstsOf,
  keep,
  keptIn,
  sessionsOf,
  standingsOf,
  studentOf,
  type Student,
} from './studentRecords'

export interface StudentsState {
  readonly loading: boolean
  /** By name. */
  readonly students: readonly Student[]
  readonly problem?: string | undefined
}

/** How far back the table looks. */
export const sinceChoices = ['week', 'fourWeeks', 'all'] as const
export type Since = (typeof sinceChoices)[number]

/** One student's piece in the table. */
export interface StudioRow extends PieceSince {
  readonly student: Pick<Student, 'id' | 'name'>
}

interface OpenRecord {
  readonly student: Pick<Student, 'id' | 'name'>
  readonly reviews: Reviews
}

export interface Students {
  readonly store: StoreApi<StudentsState>
  /** Files on their way in. */
  readonly incoming: Incoming
  readonly load: () => Promise<void>
  readonly rename: (id: StudentId, name: string) => Promise<void>
  /** With the record; the file that was sent stays where it is. */
  readonly remove: (id: StudentId) => Promise<void>
  /** One student's record, to be reviewed; `undefined` where there is none by that name. */
  readonly open: (id: StudentId) => Promise<Result<OpenRecord | undefined, string>>
  readonly rows: (students: readonly Student[], since: Since) => readonly StudioRow[]
}

export const createStudents = async (
  ports: Pick<Ports, 'students' | 'storage' | 'wallClock' | 'newId'>,
  shelf: Shelf,
): Promise<Students> => {
  const port = await ports.students()
  const { dayOf } = ports.storage
  const store = createStore<StudentsState>(() => ({ loading: true, students: [] }))
  let listings = new Map<StudentId, StudentListing>()
  const relist = (problem?: string): void =>
    store.setState({
      loading: false,
      students: [...listings.values()]
        .map((listing) => studentOf(listing, port.dayRule))
        .toSorted((a, b) => a.name.localeCompare(b.name)),
      problem,
    })
  const put = async (listing: StudentListing): Promise<Result<void, string>> => {
    const stored = await port.put(listing)
    if (stored.ok) listings.set(listing.id, listing)
    relist(stored.ok ? undefined : stored.reason)
    return stored
  }
  const list = async (): Promise<Result<void, string>> => {
    const listed = await port.list()
    if (listed.ok) listings = new Map(listed.value.map((each) => [each.id, each]))
    relist(listed.ok ? undefined : listed.reason)
    return listed.ok ? ok(undefined) : listed
  }
  /** Counts what the record comes to, from its kept sums, and keeps that beside the name. */
  const count = async (listing: StudentListing): Promise<Result<StudentListing, string>> => {
    const journal = await port.journal(listing.id)
    if (!journal.ok) return journal
    const pieces = await standingsOf(journal.value)
    if (!pieces.ok) return pieces
    const counted = { ...listing, kept: keep(port.dayRule, pieces.value) }
    const stored = await put(counted)
    return stored.ok ? ok(counted) : stored
  }

  const receive: Parameters<typeof createIncoming>[0]['receive'] = async (
    whose,
    fileName,
    events,
    progress,
  ) => {
    const known = whose.student === undefined ? undefined : listings.get(whose.student)
    const listing: StudentListing = {
      id: known?.id ?? studentId(ports.newId()),
      name: known?.name ?? cleanName(whose.name, fileName),
      fileName,
      takenAtEpochMs: ports.wallClock(),
      sessions: [...new Set([...(known?.sessions ?? []), ...sessionsOf(events)])],
      // Counted once all is in: nothing is told of a record that came in half.
      kept: undefined,
    }
    // The name first: a record that comes in half is then seen, and the same file brings the rest.
    const named = await put(listing)
    if (!named.ok) return named
    const journal = await port.journal(listing.id)
    if (!journal.ok) return journal
    const outcome = await journal.value.importAll(events, progress)
    if (!outcome.ok) return outcome
    const counted = await count(listing)
    if (!counted.ok) return counted
    return ok({ student: studentOf(counted.value, port.dayRule), outcome: outcome.value })
  }

  return {
    store,
    incoming: createIncoming({
      dayOf,
      listings: () => [...listings.values()],
      isOwn: async (events) => {
        // One event of each session tells enough.
        const own = await ports.storage.known(firstsOf(events))
        return own.ok && own.value.size > 0
      },
      receive,
    }),
    load: async () => {
      if (!(await list()).ok) return
      for (const listing of listings.values()) {
        if (keptIn(listing, port.dayRule)) continue
        const counted = await count(listing)
        if (!counted.ok) relist(counted.reason)
      }
    },
    rename: async (id, name) => {
      const listing = listings.get(id)
      if (listing) await put({ ...listing, name: cleanName(name, listing.name) })
    },
    remove: async (id) => {
      const removed = await port.remove(id)
      if (removed.ok) listings.delete(id)
      relist(removed.ok ? undefined : removed.reason)
    },
    open: async (id) => {
      const listed = await list()
      if (!listed.ok) return listed
      const student = listings.get(id)
      if (!student) return ok(undefined)
      const journal = await port.journal(id)
      if (!journal.ok) return journal
      const reviews = createReviews(journal.value, shelf, ports.wallClock)
      return ok({ student: { id, name: student.name }, reviews })
    },
    rows: (students, since) => {
      const today = dayOf(ports.wallClock())
      const from = since === 'all' ? undefined : daysAfter(today, since === 'week' ? -6 : -27)
      return students.flatMap(({ id, name, pieces }) =>
        pieces.flatMap((piece): StudioRow[] => {
          const row = standingSince(piece, from)
          return row ? [{ ...row, student: { id, name } }] : []
        }),
      )
    },
  }
}
