import type { JournalEvent } from '@/journal/journal'
import type { ChunkId } from '@/music/units'

/** What events tell of a chunk: the streak goal was met at the goal tempo, or it was played at all. */
export type ChunkState = 'secure' | 'practised'

/** The state of each chunk that was played; one that is missing is untouched. Broken off counts as played. */
export const chunkStates = (events: readonly JournalEvent[]): ReadonlyMap<ChunkId, ChunkState> => {
  const states = new Map<ChunkId, ChunkState>()
  for (const event of events) {
    if (event.kind === 'secure') states.set(event.chunk, 'secure')
    if (event.kind === 'repetition' && !states.has(event.chunk))
      states.set(event.chunk, 'practised')
  }
  return states
}
