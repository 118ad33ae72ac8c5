import type { EventId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import { mergeJournals } from '@/journal/merge'
import type { Database } from './connection'
import type { DayRule } from './days'
import { addEvents, whichAreThere } from './events'
import { packOldDays } from './packing'
import type { Imported } from './storage'

/** Events in one change: large enough to be quick, small enough that practice is hardly held up. */
const batchSize = 500

/** Batches after which what is over is packed, so that the tail stays short. */
const packEvery = 4

/**
 * Adds events in the order of time. What was added stays when it is interrupted; once more from the
 * beginning adds the rest.
 */
export const importEvents = async (
  database: Database,
  days: DayRule,
  blockSize: number,
  events: readonly JournalEvent[],
  progress: (done: number) => void,
): Promise<Imported> => {
  const sorted = mergeJournals(events)
  let imported: Imported = { added: 0, known: 0, taken: [] }
  for (let begin = 0; begin < sorted.length; begin += batchSize) {
    const batch = await addEvents(database, sorted.slice(begin, begin + batchSize))
    imported = {
      added: imported.added + batch.added,
      known: imported.known + batch.known,
      taken: [...imported.taken, ...batch.taken],
    }
    progress(Math.min(begin + batchSize, sorted.length))
    if ((begin / batchSize) % packEvery === packEvery - 1)
      await packOldDays(database, days, blockSize)
  }
  await packOldDays(database, days, blockSize)
  return imported
}

/** The ids of those events that are here already. */
export const knownIds = async (
  database: Database,
  events: readonly JournalEvent[],
): Promise<readonly EventId[]> => {
  const sorted = mergeJournals(events)
  const known: EventId[] = []
  for (let begin = 0; begin < sorted.length; begin += batchSize)
    known.push(...(await whichAreThere(database, sorted.slice(begin, begin + batchSize))))
  return known
}
