import { groupBy } from '@/journal/groupBy'
import type { JournalEvent } from '@/journal/journal'
import { sumDays } from '@/journal/sumDays'
import type { ChunkDay, DayTotal, PieceDay } from '@/journal/sums'
import { notebookOf } from '@/journal/notebook'
import type { Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import type { Carried } from '@/review/carryOver'
import { coldChecksOf } from '@/review/chunkStates'
import { countChecks, reviewChunksOfAll, type ChunksOfAll } from '@/review/coldFigures'
import { placeFlaws, type BarFlaws } from '@/review/flawBars'
import { piecePage, type PiecePage } from '@/review/pages'
import { reviewPiece, type PieceReview } from '@/review/pieceReview'
import { readChunkDays } from './chunkRecord'
import type { StoragePort } from './ports'
import { openListed, type Shelf } from './reviewedRecord'

/** One piece; without its score where its file is not on this machine. */
export interface OnePieceReview extends PiecePage {
  readonly score?: Score
  /** Where in the score the flaws are, the bar with most first. */
  readonly bars: readonly BarFlaws[]
  /** What is written of the piece, the newest first. */
  readonly notebook: ReturnType<typeof notebookOf>
}

interface Sums {
  readonly totals: readonly DayTotal[]
  readonly pieces: readonly PieceDay[]
}

export const readPieceReview = async (
  storage: Pick<StoragePort, 'chunkDays' | 'written'>,
  { pieces }: Sums,
  id: PieceId,
  score: Score | undefined,
  carried: readonly Carried[],
): Promise<Result<OnePieceReview, string>> => {
  const rows = await readChunkDays(storage, id, carried)
  if (!rows.ok) return rows
  const written = await storage.written()
  if (!written.ok) return written
  const page = piecePage(
    rows.value,
    pieces.filter(({ piece }) => piece === id),
  )
  const notebook = notebookOf(written.value).filter(({ piece }) => piece === id)
  return ok({
    ...page,
    ...(score ? { score, title: score.title } : {}),
    bars: score ? placeFlaws(score, page) : [],
    notebook: notebook.toReversed(),
  })
}

/** One piece as it went in the sitting under way. */
export interface SittingPiece extends PieceReview {
  readonly piece: PieceId
  readonly score?: Score
  readonly bars: readonly BarFlaws[]
}

/** Its figures are of these events alone; whether a cold repetition was a check, the days before tell. */
export const readSitting = async (
  record: Pick<StoragePort, 'chunkDays' | 'dayOf'>,
  shelf: Shelf,
  events: readonly JournalEvent[],
): Promise<Result<readonly SittingPiece[], string>> => {
  const played = events.filter((event) => event.kind === 'repetition')
  const rows = sumDays(events, record.dayOf).flatMap(({ chunks }) => chunks)
  const pieces: SittingPiece[] = []
  for (const [piece, of] of groupBy(played, (event) => event.piece)) {
    const open = await openListed(shelf, piece)
    const days = await readChunkDays(record, piece, open?.carried ?? [])
    if (!days.ok) return days
    const times = new Set(of.map(({ atEpochMs }) => atEpochMs))
    const coldChecks = coldChecksOf(days.value).filter(({ atEpochMs }) => times.has(atEpochMs))
    const review = reviewPiece(rows.filter((row) => row.piece === piece))
    pieces.push({
      piece,
      ...review,
      coldChecks,
      cold: countChecks(coldChecks),
      ...(open ? { score: open.score } : {}),
      bars: open ? placeFlaws(open.score, review) : [],
    })
  }
  return ok(pieces)
}

/** Piece by piece, so that a record of years passes through in parts. */
export const readAllChunkDays = async (
  record: Pick<StoragePort, 'chunkDays'>,
  pieces: Sums['pieces'],
): Promise<Result<readonly ChunkDay[], string>> => {
  const chunks: ChunkDay[] = []
  for (const piece of new Set(pieces.map((row) => row.piece))) {
    const rows = await record.chunkDays(piece)
    if (!rows.ok) return rows
    for (const row of rows.value) chunks.push(row)
  }
  return ok(chunks)
}

export const readChunksOfAll = async (
  record: Pick<StoragePort, 'sums' | 'chunkDays'>,
): Promise<Result<ChunksOfAll, string>> => {
  const sums = await record.sums()
  const rows = sums.ok ? await readAllChunkDays(record, sums.value.pieces) : sums
  return rows.ok ? ok(reviewChunksOfAll(rows.value)) : rows
}
