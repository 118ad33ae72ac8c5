import type { JournalEvent } from '@/journal/journal'
import type { Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import { sameNotes } from '@/music/sameNotes'
import type { ChunkId, PieceId } from '@/music/units'

/** A chunk of an older edition whose record counts for one of a better edition. */
export interface Carried {
  readonly from: ChunkId
  readonly to: ChunkId
}

/** How far the record of a piece holds for a better edition of it. */
export interface CarryOver {
  /** How many chunks have been practised. */
  readonly practised: number
  /** Those of them that ask for the same keys at the same places in the better edition. */
  readonly carried: readonly Carried[]
}

/** Compares two editions chunk by chunk, of those that the events say were practised. */
export const compareEditions = (
  events: readonly JournalEvent[],
  old: Score,
  better: Score,
): CarryOver => {
  const played = new Set(events.flatMap((e) => (e.kind === 'repetition' ? [e.chunk] : [])))
  const places = new Map(
    events.flatMap((e) =>
      e.kind === 'drillBegun' && played.has(e.chunk) ? [[e.chunk, e.place] as const] : [],
    ),
  )
  return {
    practised: played.size,
    carried: [...places].flatMap(([from, place]) => {
      const was = chunkAt(old, place)
      const is = chunkAt(better, place)
      return was && is && sameNotes(was, is) ? [{ from, to: is.id }] : []
    }),
  }
}

/** The events, those of carried chunks as if they had been of the better edition. */
export const carryEvents = (
  events: readonly JournalEvent[],
  carried: readonly Carried[],
  piece: PieceId,
): readonly JournalEvent[] =>
  events.map((event) => {
    if (!('chunk' in event)) return event
    const to = carried.find(({ from }) => from === event.chunk)?.to
    return to === undefined ? event : { ...event, piece, chunk: to }
  })
