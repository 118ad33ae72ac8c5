import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Day } from '@/journal/day'
import type { EventId } from '@/journal/ids'
import type { JournalEvent, NotebookWritten, RecordedPlace } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import { decisionsOf, notebookOf } from '@/journal/notebook'
import { notebookSubjects, type NotebookSubject, type PieceDecision } from '@/journal/words'
import { longestText } from '@/journal/written'
import type { Score } from '@/music/music'
import type { PieceId } from '@/music/units'
import type { TriedProblem } from '@/review/problems'
import type { Library } from './library'
import type { PieceRecords } from './pieceRecord'
import type { StoragePort } from './ports'
import type { Session } from './session'

/** What an entry can be about, and how long it can be, in letters. */
export const subjects = notebookSubjects
export const longestEntry = longestText

/** An entry that is being written, or changed. */
export interface Draft {
  readonly place?: RecordedPlace | undefined
  readonly subject: NotebookSubject
  readonly helped?: boolean | undefined
  readonly text: string
  /** The entry as it stood, where it is changed. */
  readonly replaces?: EventId | undefined
}

export interface NotebookState {
  /** As they stand now, the newest first. */
  readonly entries: readonly NotebookWritten[]
  /** What the person decided of a piece, where anything. */
  readonly decisions: ReadonlyMap<PieceId, PieceDecision>
  /** How many entries stayed with the edition before, where a piece was replaced in this sitting. */
  readonly stayed: ReadonlyMap<PieceId, number>
  /** Why it cannot be read, in a sentence. */
  readonly problem?: string | undefined
}

/** What the person writes of pieces and places, and decides of them; every change is an event of the journal. */
export interface Notebook {
  readonly store: StoreApi<NotebookState>
  /** Reads it anew; what is on the page stays meanwhile. */
  readonly load: () => Promise<void>
  readonly write: (piece: PieceId, draft: Draft) => Promise<void>
  readonly erase: (entry: NotebookWritten) => Promise<void>
  readonly decide: (piece: PieceId, decision: PieceDecision) => Promise<void>
  /** Problems of a piece against which something was tried, the latest first. */
  readonly tried: (piece: PieceId) => Promise<readonly TriedProblem[]>
  /** What holds for another edition of a piece goes over to it. */
  readonly carry: (old: Score, better: Score) => Promise<void>
  /** Titles in the record, of pieces that are not here any more too. */
  readonly titles: () => Promise<ReadonlyMap<PieceId, string>>
  readonly dayOf: (entry: NotebookWritten) => Day
  /** What was begun and not saved yet, by the piece, or the entry that is changed: nothing typed is lost with the page. */
  readonly drafts: Map<PieceId | EventId, Draft>
}

type Reading = Pick<StoragePort, 'written' | 'sums' | 'dayOf'>

export const createNotebook = (
  storage: Reading,
  session: Pick<Session, 'wrote'>,
  records: PieceRecords,
  library: Pick<Library, 'open'>,
): Notebook => {
  const store = createStore<NotebookState>(() => ({
    entries: [],
    decisions: new Map(),
    stayed: new Map(),
  }))
  let known: readonly JournalEvent[] = []

  /** What is written while it is read must not be lost from the page: a union, as everywhere. */
  const show = (events: readonly JournalEvent[]): void => {
    known = mergeJournals(known, events)
    const entries = notebookOf(known).toReversed()
    store.setState({ entries, decisions: decisionsOf(known), problem: undefined })
  }
  const record: Session['wrote'] = async (written) => {
    const event = await session.wrote(written)
    show([event])
    return event
  }
  const load = async (): Promise<void> => {
    const read = await storage.written()
    if (read.ok) show(read.value)
    else store.setState({ problem: read.reason })
  }
  const write = async (piece: PieceId, draft: Draft): Promise<void> => {
    const { place, subject, helped, text, replaces } = draft
    await record({
      kind: 'notebookWritten',
      piece,
      ...(place ? { place } : {}),
      subject,
      ...(subject === 'tried' && helped !== undefined ? { helped } : {}),
      text: text.trim(),
      ...(replaces === undefined ? {} : { replaces }),
    })
  }
  const decide = async (piece: PieceId, decision: PieceDecision): Promise<void> => {
    await record({ kind: 'pieceDecided', piece, decision })
  }

  return {
    store,
    load,
    write,
    decide,
    erase: async ({ id, piece }) => {
      await record({ kind: 'notebookErased', piece, replaces: id })
    },
    tried: async (id) => {
      const piece = await library.open(id)
      if (!piece) return []
      const [{ events }, { triedProblems }] = await Promise.all([
        records.of(piece),
        import('@/review/problems'),
      ])
      return triedProblems(events).toReversed()
    },
    carry: async (old, better) => {
      if (old.id === better.id) return
      await load()
      const { entries, decisions } = store.getState()
      const { carriedEntry } = await import('./carryEntry')
      let stayed = 0
      for (const entry of entries.filter(({ piece }) => piece === old.id).toReversed()) {
        const carried = carriedEntry(entry, old, better)
        if (carried) await write(better.id, carried)
        else stayed++
      }
      store.setState((state) => ({ stayed: new Map(state.stayed).set(better.id, stayed) }))
      const decision = decisions.get(old.id)
      if (decision) await decide(better.id, decision)
    },
    titles: async () => {
      const sums = await storage.sums()
      return new Map(
        (sums.ok ? sums.value.pieces : []).flatMap(({ piece, title }) =>
          title === undefined ? [] : [[piece, title] as const],
        ),
      )
    },
    dayOf: ({ atEpochMs }) => storage.dayOf(atEpochMs),
    drafts: new Map(),
  }
}
