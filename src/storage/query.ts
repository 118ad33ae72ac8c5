import type { JournalEvent } from '@/journal/journal'
import { isWritten } from '@/journal/written'
import type { EventQuery } from './storage'

/** Whether an event belongs to what was asked for. */
export const isIn =
  (query: EventQuery) =>
  (event: JournalEvent): boolean => {
    switch (query.kind) {
      case 'all':
      case 'latest':
        return true
      case 'session':
        return event.session === query.session
      case 'piece':
        return 'piece' in event && event.piece === query.piece
      case 'chunk':
        return 'chunk' in event && event.chunk === query.chunk
      case 'time':
        return query.from <= event.atEpochMs && event.atEpochMs < query.to
      case 'written':
        return isWritten(event)
    }
  }

/** The newest so many of sorted events, where the query limits them. */
export const newest = (
  events: readonly JournalEvent[],
  query: EventQuery,
): readonly JournalEvent[] => (query.kind === 'latest' ? lastOf(events, query.count) : events)

/** `slice(-0)` would be all. */
const lastOf = <T>(items: readonly T[], count: number): readonly T[] =>
  count <= 0 ? [] : items.slice(-count)
