import { createStore, type StoreApi } from 'zustand/vanilla'
import type { JournalEvent } from '@/journal/journal'
import type { FolderPort, FolderState, Keeping } from './copyPorts'
import type { Ports } from './ports'

/** How well the record is kept: by the browser, as files that were saved, in a folder of the person's own. */
export interface CopiesState {
  /** What keeps the record from being saved, in one or two sentences. */
  readonly problem?: string | undefined
  readonly keeping?: Keeping
  /** The whole record as a file, the last time. */
  readonly saved?: SavedCopy | undefined
  /** Repetitions since then; `undefined` until it was counted. */
  readonly since?: number | undefined
  /** It is time for a copy: said once, at the end of a session. */
  readonly reminder: boolean
  readonly folder: FolderState
}

export interface SavedCopy {
  readonly atEpochMs: number
  /** How many the record held. */
  readonly repetitions: number
}

export interface Copies extends Copying {
  readonly copies: StoreApi<CopiesState>
  /** Where the second copy goes. */
  readonly folder: Pick<FolderPort, 'choose' | 'allow' | 'write' | 'stop'>
}

/** What is done for them; loaded when it is wanted. */
export interface Copying {
  /** Gives the whole record, of all sessions, to the person as one file. */
  readonly save: () => Promise<void>
  /** Reads how the record is kept, for the page that shows it. */
  readonly lookAtCopies: () => Promise<void>
  /** Asks the browser to keep the record for good. */
  readonly askToKeep: () => Promise<void>
  /** The person looks at what the session was worth: the moment to see to the copies. */
  readonly sessionEnded: (events: readonly JournalEvent[]) => Promise<void>
}

export const createCopies = (ports: Ports): Copies => {
  const store = createStore<CopiesState>(() => ({ reminder: false, folder: { kind: 'none' } }))
  ports.folder.watch((folder) => store.setState({ folder }))
  let loading: Promise<Copying> | undefined
  const copying = () =>
    (loading ??= import('./copying').then((loaded) => loaded.createCopying(ports, store)))
  return {
    copies: store,
    folder: ports.folder,
    save: async () => (await copying()).save(),
    lookAtCopies: async () => (await copying()).lookAtCopies(),
    askToKeep: async () => (await copying()).askToKeep(),
    sessionEnded: async (events) => (await copying()).sessionEnded(events),
  }
}
