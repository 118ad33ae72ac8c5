import type { ChunkDay } from '@/journal/sums'
import type { Score } from '@/music/music'
import { pieceId, type ChunkId, type PieceId } from '@/music/units'
import type { Carried } from '@/review/carryOver'
import { statesOf, type ChunkState } from '@/review/chunkStates'
import type { StoragePort } from './ports'

type Edition = { readonly score: Score; readonly carried?: readonly Carried[] }

/** How far each chunk of a piece has come, over all days and older editions. What cannot be read counts as untouched. */
export const readChunkStates = async (
  storage: Pick<StoragePort, 'chunkDays'>,
  { score, carried = [] }: Edition,
): Promise<ReadonlyMap<ChunkId, ChunkState>> => {
  const pieces = new Set([score.id, ...carried.map(({ from }) => pieceOf(from))])
  const read = await Promise.all([...pieces].map((piece) => storage.chunkDays(piece)))
  const to = new Map(carried.map((each) => [each.from, each.to]))
  const rows = read.flatMap((days) => (days.ok ? days.value : []))
  return statesOf(
    rows.flatMap((row): ChunkDay[] => {
      const chunk = to.get(row.chunk)
      if (chunk !== undefined) return [{ ...row, piece: score.id, chunk }]
      return row.piece === score.id ? [row] : []
    }),
  )
}

/** A chunk's name begins with that of its piece. */
const pieceOf = (chunk: ChunkId): PieceId => pieceId(chunk.slice(0, chunk.indexOf(':')))
