import type { SystemBars } from '@/engraving/systems'
import type { Chunk } from '@/music/chunk'
import type { Score } from '@/music/music'
import type { ChunkId } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import type { ChunkMark } from './MusicLine'

/** For each line what is pencilled over it: the chunks that stand in it, whole or in part. */
export const markChunks = (
  { bars }: Score,
  plan: readonly SystemBars[],
  chunks: readonly Chunk[],
  states: ReadonlyMap<ChunkId, ChunkState>,
): ReadonlyMap<number, readonly ChunkMark[]> => {
  const lineAt = (tick: number): number => {
    const bar = bars.findLastIndex(({ start }) => start <= tick)
    return plan.findIndex(({ fromBar, toBar }) => fromBar <= bar && bar <= toBar)
  }
  const marks = new Map<number, ChunkMark[]>()
  for (const [i, chunk] of chunks.entries()) {
    const last = chunk.onsets.at(-1)
    const [from, to] = [chunk.onsets[0]?.notes[0].ids[0], last?.notes[0].ids[0]]
    if (!last || from === undefined || to === undefined) continue
    const [firstLine, lastLine] = [lineAt(chunk.start), lineAt(chunk.start + last.start)]
    for (let line = firstLine; line <= lastLine && line >= 0; line++) {
      const mark: ChunkMark = {
        from,
        to,
        begins: line === firstLine,
        ends: line === lastLine,
        state: states.get(chunk.id) ?? 'untouched',
        row: i % 2 === 0 ? 0 : 1,
      }
      marks.set(line, [...(marks.get(line) ?? []), mark])
    }
  }
  return marks
}
