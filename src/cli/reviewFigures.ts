import type { DaySums } from '@/journal/sums'
import { reviewChunksOfAll } from '@/review/coldFigures'
import { allPage, piecePage } from '@/review/pages'

/** All time, and of each piece what its page says. */
export type ReviewFigures = ReturnType<typeof figuresOf>

export const figuresOf = (sums: readonly DaySums[]) => {
  const rows = sums.flatMap(({ pieces }) => pieces)
  const chunks = sums.flatMap((day) => day.chunks)
  const all = allPage(
    sums.map(({ total }) => total),
    rows,
  )
  return {
    ...all,
    ofChunks: reviewChunksOfAll(chunks),
    pieces: all.pieces.map((piece) => ({
      ...piece,
      ...piecePage(
        chunks.filter((row) => row.piece === piece.piece),
        rows.filter((row) => row.piece === piece.piece),
      ),
    })),
  }
}
