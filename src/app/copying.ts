import type { StoreApi } from 'zustand/vanilla'
import { recordsText } from '@/text/records'
import type { CopiesState, Copying, SavedCopy } from './copies'
import type { Ports } from './ports'

/** A session of so many repetitions is worth being kept for good. */
const worthKeeping = 10
/** So many repetitions since the last copy, some five hours of work, or a month with some. Our own choice. */
const manySince = 500
const someSince = 50
const dayMs = 86_400_000
const longSinceMs = 30 * dayMs
/** Whoever has just been told is left in peace for so long. */
const peaceMs = 7 * dayMs

interface Kept {
  readonly saved?: SavedCopy | undefined
  readonly remindedAtEpochMs?: number | undefined
}

/** What is done for the copies; loaded when it is wanted. */
export const createCopying = (
  { storage, folder, wallClock, saveFile }: Ports,
  store: StoreApi<CopiesState>,
): Copying => {
  /** How many events of the session went into the folder. */
  let written = 0

  const read = async (): Promise<Kept> => decodeKept(await storage.copies())
  const count = async (): Promise<number | undefined> => {
    const sums = await storage.sums()
    if (!sums.ok) return undefined
    return sums.value.totals.reduce(
      (sum, { tally }) => sum + tally.clean + tally.flawed + tally.brokenOff,
      0,
    )
  }
  const look = async (): Promise<Kept> => {
    const [kept, all] = await Promise.all([read(), count()])
    const { saved } = kept
    const since = all === undefined ? undefined : Math.max(0, all - (saved?.repetitions ?? 0))
    store.setState({ saved, since })
    return kept
  }
  /** What cannot be read can perhaps not be saved; what is in memory alone can. */
  const saveUnsaved = (reason: string, day: string): void => {
    const text = storage.unsavedText()
    if (text === '') return store.setState({ problem: reason })
    saveFile(`passagework-unsaved-${day}.jsonl`, [text])
    store.setState({ problem: recordsText.save.unsavedAlone(reason) })
  }
  const remind = async ({ remindedAtEpochMs = 0 }: Kept): Promise<void> => {
    const now = wallClock()
    const { saved, since = 0, folder } = store.getState()
    if (folder.kind === 'ready' || folder.kind === 'writing') return
    const long = saved !== undefined && now - saved.atEpochMs > longSinceMs
    const due = since >= manySince || (long && since >= someSince)
    if (!due || now - remindedAtEpochMs < peaceMs) return
    store.setState({ reminder: true })
    await storage.saveCopies({ saved, remindedAtEpochMs: now } satisfies Kept)
  }

  return {
    save: async () => {
      const day = new Date(wallClock()).toISOString().slice(0, 10)
      const text = await storage.exportText()
      if (!text.ok) return saveUnsaved(text.reason, day)
      saveFile(`passagework-${day}.jsonl`, text.value)
      store.setState({ problem: undefined, reminder: false })
      const repetitions = await count()
      if (repetitions === undefined) return
      const saved = { atEpochMs: wallClock(), repetitions }
      store.setState({ saved, since: 0 })
      await storage.saveCopies({ ...(await read()), saved } satisfies Kept)
    },
    lookAtCopies: async () => {
      await look()
      store.setState({ keeping: await storage.keeping() })
    },
    askToKeep: async () => store.setState({ keeping: await storage.askToPersist() }),
    sessionEnded: async (events) => {
      const played = events.filter(({ kind }) => kind === 'repetition').length
      if (played === 0) return
      // By their own times, since the clock may have been set in between.
      if (events.length !== written) await folder.expect(events)
      written = events.length
      await folder.write()
      await remind(await look())
      if (played < worthKeeping || store.getState().keeping) return
      store.setState({ keeping: await storage.askToPersist() })
    },
  }
}

/** As it was kept; what is odd counts as never. */
const decodeKept = (stored: unknown): Kept => {
  const given: Readonly<Record<string, unknown>> =
    typeof stored === 'object' && stored !== null ? { ...stored } : {}
  const { saved, remindedAtEpochMs } = given
  return {
    saved: isSavedCopy(saved) ? saved : undefined,
    remindedAtEpochMs: typeof remindedAtEpochMs === 'number' ? remindedAtEpochMs : undefined,
  }
}

const isSavedCopy = (value: unknown): value is SavedCopy =>
  typeof value === 'object' &&
  value !== null &&
  'atEpochMs' in value &&
  typeof value.atEpochMs === 'number' &&
  'repetitions' in value &&
  typeof value.repetitions === 'number'
