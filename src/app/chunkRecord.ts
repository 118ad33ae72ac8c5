import type { ChunkDay } from '@/journal/sums'
import type { Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
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
  const days = await readChunkDays(storage, score.id, carried)
  return statesOf(days.ok ? days.value : [])
}

/** What each day of each chunk came to, those of older editions as if they had been of this one. */
export const readChunkDays = async (
  storage: Pick<StoragePort, 'chunkDays'>,
  id: PieceId,
  carried: readonly Carried[],
): Promise<Result<readonly ChunkDay[], string>> => {
  const pieces = new Set([id, ...carried.map(({ from }) => pieceOf(from))])
  const read = await Promise.all([...pieces].map((piece) => storage.chunkDays(piece)))
  const to = new Map(carried.map((each) => [each.from, each.to]))
  const rows: ChunkDay[] = []
  for (const days of read) {
    if (!days.ok) return days
    for (const row of days.value) {
      const chunk = to.get(row.chunk)
      if (chunk !== undefined) rows.push({ ...row, piece: id, chunk })
      else if (row.piece === id) rows.push(row)
    }
  }
  return ok(rows)
}

/** A chunk's name begins with that of its piece. */
const pieceOf = (chunk: ChunkId): PieceId => pieceId(chunk.slice(0, chunk.indexOf(':')))
