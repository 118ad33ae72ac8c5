import { createStore, type StoreApi } from 'zustand/vanilla'
import type { DayOf } from '@/journal/day'
import type { StudentId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import type { ImportPreview } from '@/journal/previewImport'
import type { Result } from '@/music/result'
import { recordsText } from '@/text/records'
import type { ChosenFile } from './library'
import type { Imported, StudentListing } from './ports'
import { previewOf, readRecord } from './readRecord'
import { knownBy, nameFrom, type Student } from './studentRecords'

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
      /** It has sessions of one's own record. */
      readonly isOwn: boolean
      /** A name to begin with, from that of the file. */
      readonly name: string
      /** So many files wait after this one. */
      readonly waiting: number
    }
  | {
      readonly kind: 'importing'
      readonly fileName: string
      readonly done: number
      readonly of: number
    }
  | { readonly kind: 'done'; readonly student: Student; readonly outcome: Imported }
  /** `message` says what, why and what to do. */
  | {
      readonly kind: 'failed'
      readonly fileName: string
      readonly message: string
      readonly waiting: number
    }

/** A new student by a name, or one that is here. */
export type Whose = { readonly name: string } | { readonly student: StudentId }

/** Files of students on their way in, one after another. */
export interface Incoming {
  readonly store: StoreApi<IncomingState>
  /** Reads the first file and tells what is in it and whose it may be; nothing is changed. The others wait. */
  readonly look: (files: readonly ChosenFile[]) => Promise<void>
  /** Takes in what was looked at, and looks at the next file. */
  readonly take: (whose: Whose) => Promise<void>
  /** Leaves this file, and looks at the next one. */
  readonly forget: () => void
}

/** Whoever keeps the students. */
interface Roster {
  readonly dayOf: DayOf
  readonly listings: () => readonly StudentListing[]
  /** Whether one's own record has sessions of these events; a record that cannot be read has none. */
  readonly isOwn: (events: readonly JournalEvent[]) => Promise<boolean>
  /** Adds events to the record of a student; a newer file to that of one who is here. */
  readonly receive: (
    whose: { readonly name: string; readonly student?: StudentId },
    fileName: string,
    events: readonly JournalEvent[],
    progress: (done: number) => void,
  ) => Promise<Result<{ readonly student: Student; readonly outcome: Imported }, string>>
}

export const createIncoming = (roster: Roster): Incoming => {
  const store = createStore<IncomingState>(() => ({ kind: 'none' }))
  let waiting: readonly ChosenFile[] = []
  let looked: readonly JournalEvent[] = []
  /** Counts the files, so that a slow one does not overtake the next. */
  let files = 0

  const show = (state: IncomingState): void => store.setState(() => state, true)
  const fail = (fileName: string, message: string): void =>
    show({ kind: 'failed', fileName, message, waiting: waiting.length })

  const read = async (file: ChosenFile): Promise<void> => {
    const mine = ++files
    const isCurrent = (): boolean => mine === files
    looked = []
    show({ kind: 'reading', fileName: file.name, done: 0 })
    const record = await readRecord(file, (done) => {
      if (isCurrent()) show({ kind: 'reading', fileName: file.name, done })
      return isCurrent()
    })
    if (!isCurrent()) return
    if (!record.ok) return fail(file.name, problems().nothingChanged(record.reason))
    looked = record.value.events
    const isOwn = await roster.isOwn(looked)
    if (!isCurrent()) return
    const listings = roster.listings()
    const of = knownBy(listings, looked)
    show({
      kind: 'preview',
      fileName: file.name,
      preview: previewOf(record.value, new Set(), roster.dayOf),
      ...(of === undefined ? {} : { of }),
      isOwn,
      name: nameFrom(file.name, listings.length + 1),
      waiting: waiting.length,
    })
  }
  const next = async (): Promise<void> => {
    const [file, ...others] = waiting
    waiting = others
    if (file) await read(file)
  }

  return {
    store,
    look: async (chosen) => {
      waiting = [...waiting, ...chosen]
      if (store.getState().kind !== 'importing') await next()
    },
    take: async (whose) => {
      const now = store.getState()
      if (now.kind !== 'preview') return
      const events = looked
      looked = []
      const { fileName } = now
      show({ kind: 'importing', fileName, done: 0, of: events.length })
      const named = 'name' in whose && whose.name.trim() !== '' ? whose.name : now.name
      const received = await roster.receive(
        { name: named, ...('student' in whose ? { student: whose.student } : {}) },
        fileName,
        events,
        (done) => show({ kind: 'importing', fileName, done, of: events.length }),
      )
      if (!received.ok) return fail(fileName, problems().half(received.reason))
      show({ kind: 'done', ...received.value })
      await next()
    },
    forget: () => {
      files++
      looked = []
      show({ kind: 'none' })
      void next()
    },
  }
}

const problems = () => recordsText.incoming.problems
