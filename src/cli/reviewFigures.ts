import type { DaySums } from '@/journal/sums'
import { reviewAllTime } from '@/review/allTime'
import { reviewPiece } from '@/review/pieceReview'

/** All time, and of each piece its chunks. */
export type ReviewFigures = ReturnType<typeof figuresOf>

export const figuresOf = (sums: readonly DaySums[]) => {
  const allTime = reviewAllTime(
    sums.map(({ total }) => total),
    sums.flatMap(({ pieces }) => pieces),
  )
  const chunks = sums.flatMap((day) => day.chunks)
  return {
    ...allTime,
    pieces: allTime.pieces.map((piece) => ({
      ...piece,
      ...reviewPiece(chunks.filter((row) => row.piece === piece.piece)),
    })),
  }
}
