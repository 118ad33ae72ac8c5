import { createStore, type StoreApi } from 'zustand/vanilla'
import { daysAfter } from '@/journal/day'
import { studentId, type StudentId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import type { ImportPreview } from '@/journal/previewImport'
import { ok, type Result } from '@/music/result'
import { standingSince, type PieceSince } from '@/review/standings'
import type { ChosenFile } from './library'
import type { Imported, Ports, StudentListing } from './ports'
import { previewOf, readRecord } from './readRecord'
import type { Shelf } from './reviewedRecord'
import { createReviews, type Reviews } from './reviews'
import {
  cleanName,
  keep,
  keptIn,
  knownBy,
  nameFrom,
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

/** A file on its way to a student. */
export type IncomingState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string; readonly done: number }
  | {
      readonly kind: 'preview'
      readonly fileName: string
      readonly preview: ImportPreview
      /** Whose older record holds sessions of the file. */
      readonly of?: StudentId
      /** A name to begin with, from that of the file. */
      readonly name: string
    }
  | {
      readonly kind: 'importing'
      readonly fileName: string
      readonly done: number
      readonly of: number
    }
  | { readonly kind: 'done'; readonly student: Student; readonly outcome: Imported }
  /** `message` says what, why and what to do. */
  | { readonly kind: 'failed'; readonly fileName: string; readonly message: string }

/** A new student by a name, or one that is here. */
export type Whose = { readonly name: string } | { readonly student: StudentId }

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
  readonly incoming: StoreApi<IncomingState>
  readonly load: () => Promise<void>
  /** Reads a file and tells what is in it and whose it may be; nothing is changed. */
  readonly look: (file: ChosenFile) => Promise<void>
  /** Takes in what was looked at. */
  readonly take: (whose: Whose) => Promise<void>
  readonly forget: () => void
  readonly rename: (id: StudentId, name: string) => Promise<void>
  /** With the record; the file that was sent stays where it is. */
  readonly remove: (id: StudentId) => Promise<void>
  /** One student's record, to be reviewed; `undefined` where there is none by that name. */
  readonly open: (id: StudentId) => Promise<Result<OpenRecord | undefined, string>>
  readonly rows: (students: readonly Student[], since: Since) => readonly StudioRow[]
}

/** A text larger than this cannot be had in one piece in every browser. */
const largestRecord = 400_000_000

export const createStudents = async (
  ports: Pick<Ports, 'students' | 'storage' | 'wallClock' | 'newId'>,
  shelf: Shelf,
): Promise<Students> => {
  const port = await ports.students()
  const { dayOf } = ports.storage
  const store = createStore<StudentsState>(() => ({ loading: true, students: [] }))
  const incoming = createStore<IncomingState>(() => ({ kind: 'none' }))
  let listings = new Map<StudentId, StudentListing>()
  let looked: readonly JournalEvent[] = []
  /** Counts the files, so that a slow one does not overtake the next. */
  let files = 0

  const show = (state: IncomingState): void => incoming.setState(() => state, true)
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

  const readFile = async (file: ChosenFile, isCurrent: () => boolean): Promise<void> => {
    const fail = (message: string): void =>
      show({ kind: 'failed', fileName: file.name, message: `${message} Nothing was changed.` })
    if (file.size > largestRecord)
      return fail('This file is larger than 400 MB and cannot be read here in one piece.')
    const read = await readRecord(await file.read(), (done) => {
      if (isCurrent()) show({ kind: 'reading', fileName: file.name, done })
      return isCurrent()
    })
    if (!isCurrent()) return
    if (!read.ok) return fail(read.reason)
    looked = read.value.events
    const of = knownBy([...listings.values()], looked)
    show({
      kind: 'preview',
      fileName: file.name,
      preview: previewOf(read.value, new Set(), dayOf),
      ...(of === undefined ? {} : { of }),
      name: nameFrom(file.name, listings.size + 1),
    })
  }

  const takeIn = async (
    listing: StudentListing,
    events: readonly JournalEvent[],
  ): Promise<Result<Imported, string>> => {
    // The name first: a record that comes in half is then seen, and the same file brings the rest.
    const named = await put(listing)
    if (!named.ok) return named
    const journal = await port.journal(listing.id)
    if (!journal.ok) return journal
    const { fileName } = listing
    const outcome = await journal.value.importAll(events, (done) =>
      show({ kind: 'importing', fileName, done, of: events.length }),
    )
    if (!outcome.ok) return outcome
    const counted = await count(listing)
    return counted.ok ? outcome : counted
  }

  return {
    store,
    incoming,
    load: async () => {
      if (!(await list()).ok) return
      for (const listing of listings.values()) {
        if (keptIn(listing, port.dayRule)) continue
        const counted = await count(listing)
        if (!counted.ok) relist(counted.reason)
      }
    },
    look: async (file) => {
      const mine = ++files
      looked = []
      show({ kind: 'reading', fileName: file.name, done: 0 })
      await readFile(file, () => mine === files)
    },
    take: async (whose) => {
      const now = incoming.getState()
      if (now.kind !== 'preview') return
      const events = looked
      looked = []
      const { fileName } = now
      show({ kind: 'importing', fileName, done: 0, of: events.length })
      const known = 'student' in whose ? listings.get(whose.student) : undefined
      const listing: StudentListing = {
        id: known?.id ?? studentId(ports.newId()),
        name: known?.name ?? cleanName('name' in whose ? whose.name : '', now.name),
        fileName,
        takenAtEpochMs: ports.wallClock(),
        sessions: [...new Set([...(known?.sessions ?? []), ...sessionsOf(events)])],
        // Counted once all is in: nothing is told of a record that came in half.
        kept: undefined,
      }
      const outcome = await takeIn(listing, events)
      const student = listings.get(listing.id)
      if (outcome.ok && student)
        return show({
          kind: 'done',
          student: studentOf(student, port.dayRule),
          outcome: outcome.value,
        })
      show({
        kind: 'failed',
        fileName,
        message: `${outcome.ok ? 'The student was removed meanwhile.' : outcome.reason} What had come in stays; take the same file again for the rest.`,
      })
    },
    forget: () => {
      files++
      looked = []
      show({ kind: 'none' })
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
