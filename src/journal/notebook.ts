import type { PieceId } from '@/music/units'
import type { JournalEvent, NotebookWritten } from './journal'
import type { PieceDecision } from './words'
import { isWritten, standing } from './written'

/** The entries of the notebook as they stand now, the oldest first. */
export const notebookOf = (events: readonly JournalEvent[]): readonly NotebookWritten[] =>
  standing(events.filter(isWritten)).filter((event) => event.kind === 'notebookWritten')

/** The newest decision on each piece that has one. */
export const decisionsOf = (events: readonly JournalEvent[]): ReadonlyMap<PieceId, PieceDecision> =>
  new Map(
    standing(events.filter(isWritten)).flatMap((event) =>
      event.kind === 'pieceDecided' ? [[event.piece, event.decision] as const] : [],
    ),
  )
