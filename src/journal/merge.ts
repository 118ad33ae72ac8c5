import { canonical } from './canonical'
import type { JournalEvent } from './journal'

/**
 * The union of journals by event id, in the order of time, then id: in whatever order and however
 * often they are merged, the result is the same. Should two different events bear one id (they never
 * should), the one whose text sorts first is taken, so that even then the order does not matter.
 */
export const mergeJournals = (
  ...journals: readonly (readonly JournalEvent[])[]
): readonly JournalEvent[] => {
  const byId = new Map<string, JournalEvent>()
  for (const event of journals.flat()) {
    const twin = byId.get(event.id)
    if (!twin || isBefore(canonical(event), canonical(twin))) byId.set(event.id, event)
  }
  return [...byId.values()].toSorted(compareEvents)
}

type Placed = Pick<JournalEvent, 'id' | 'kind' | 'atEpochMs'>

/** By the wall clock; at the same moment what brings about the other first; then by id. */
export const compareEvents = (a: Placed, b: Placed): number =>
  a.atEpochMs - b.atEpochMs ||
  rank[a.kind] - rank[b.kind] ||
  (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)

/** One repetition can overrule a pause, be stored, name a problem, change the rung and make the chunk secure at once. */
const rank: Readonly<Record<JournalEvent['kind'], number>> = {
  sessionBegun: 0,
  pieceAdded: 1,
  remedyBegun: 2,
  drillBegun: 3,
  overruled: 4,
  repetition: 5,
  problemNamed: 6,
  trialEnded: 7,
  rungChanged: 8,
  exerciseDone: 9,
  secure: 10,
  problemOutcome: 11,
  remedyEnded: 12,
  notebookWritten: 13,
  notebookErased: 14,
  pieceDecided: 15,
  fingeringWritten: 16,
  fingeringErased: 17,
  fingeringChosen: 18,
}

/** Whether two records have the same content. */
export const sameEvent = (a: unknown, b: JournalEvent): boolean => canonical(a) === canonical(b)

const isBefore = (a: string, b: string): boolean => a < b
