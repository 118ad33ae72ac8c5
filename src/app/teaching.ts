import { daysAfter, weekOf, type Day } from '@/journal/day'
import type { ChunkDay, PieceDay } from '@/journal/sums'
import type { Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import {
  isPlayed,
  joinOverruled,
  joinSums,
  type Figures,
  type OverruleCount,
} from '@/review/joinSums'
import type { PieceReview } from '@/review/pieceReview'
import {
  hardBars,
  hardChunks,
  isWithin,
  pieceOnPage,
  reviewWithin,
  type HardBar,
  type HardChunk,
  type PieceOnPage,
  type Span,
} from '@/review/teacherPage'
import { readChunkDays } from './chunkRecord'
import { openListed, type ReviewedRecord, type Shelf } from './reviewedRecord'

/** What the page is about: a piece over all its time, or all that was practised in the week of a day. */
export type PageAbout = { readonly piece: PieceId } | { readonly week: Day }

export interface TeacherPage {
  /** Of a piece from its first to its last day of practice; absent while there is none. */
  readonly span?: Span
  /** Of all that is on the page. */
  readonly figures: Figures
  readonly days: number
  readonly overruled: readonly OverruleCount[]
  /** The most practised first. */
  readonly pieces: readonly TaughtPiece[]
}

export interface TaughtPiece extends PieceOnPage {
  readonly piece: PieceId
  readonly title?: string
  /** Absent where its file is not on this machine. */
  readonly score?: Score
  readonly hard: HardPlaces
}

/** Where it is hard, in the span or in its last weeks. */
export interface HardPlaces {
  readonly review: PieceReview
  readonly span: Span
  /** Where the score is at hand. */
  readonly bars: readonly HardBar[]
  /** Where it is not. */
  readonly chunks: readonly HardChunk[]
}

/** What was hard months ago is no matter for the next lesson: four weeks. */
const hardDays = 28

export const readTeacherPage = async (
  record: ReviewedRecord,
  library: Shelf,
  about: PageAbout,
): Promise<Result<TeacherPage, string>> => {
  const sums = await record.sums()
  if (!sums.ok) return sums
  return 'piece' in about
    ? pageOfPiece(record, library, sums.value, about.piece)
    : pageOfWeek(record, library, sums.value, about.week)
}

type Sums = Extract<Awaited<ReturnType<ReviewedRecord['sums']>>, { ok: true }>['value']

const nothing: TeacherPage = { figures: joinSums([]), days: 0, overruled: [], pieces: [] }

const pageOfPiece = async (
  record: ReviewedRecord,
  library: Shelf,
  { pieces }: Sums,
  id: PieceId,
): Promise<Result<TeacherPage, string>> => {
  const read = await readPiece(record, library, pieces, id)
  if (!read.ok) return read
  const { rows } = read.value
  const played = rows
    .filter(isPlayed)
    .map(({ day }) => day)
    .toSorted()
  const [from, to] = [played[0], played.at(-1)]
  if (from === undefined || to === undefined) return ok(nothing)
  const span = { from, to }
  const piece = taught(read.value, span)
  return ok({ span, figures: piece, days: piece.days, overruled: piece.overruled, pieces: [piece] })
}

const pageOfWeek = async (
  record: ReviewedRecord,
  library: Shelf,
  { totals, pieces }: Sums,
  week: Day,
): Promise<Result<TeacherPage, string>> => {
  const from = weekOf(week)
  const span = { from, to: daysAfter(from, 6) }
  const inWeek = totals.filter(isWithin(span))
  const shown = pieces.filter(isPlayed).filter(isWithin(span))
  const all: TaughtPiece[] = []
  for (const id of new Set(shown.map(({ piece }) => piece))) {
    const read = await readPiece(record, library, pieces, id)
    if (!read.ok) return read
    all.push(taught(read.value, span))
  }
  return ok({
    span,
    figures: joinSums(inWeek),
    days: inWeek.filter(isPlayed).length,
    overruled: joinOverruled(inWeek),
    pieces: all.toSorted((a, b) => b.minutes - a.minutes),
  })
}

/** A piece with all days of its practice. */
interface ReadPiece {
  readonly id: PieceId
  readonly days: readonly PieceDay[]
  readonly rows: readonly ChunkDay[]
  readonly score?: Score
}

const readPiece = async (
  record: ReviewedRecord,
  library: Shelf,
  pieces: readonly PieceDay[],
  id: PieceId,
): Promise<Result<ReadPiece, string>> => {
  const open = await openListed(library, id)
  const rows = await readChunkDays(record, id, open?.carried ?? [])
  if (!rows.ok) return rows
  const days = pieces.filter(({ piece }) => piece === id)
  return ok({ id, days, rows: rows.value, ...(open ? { score: open.score } : {}) })
}

const taught = ({ id, days, rows, score }: ReadPiece, span: Span): TaughtPiece => {
  const title = score?.title ?? days.findLast((row) => row.title !== undefined)?.title
  const lately = daysAfter(span.to, 1 - hardDays)
  const hardSpan = lately > span.from ? { from: lately, to: span.to } : span
  const review = reviewWithin(rows, hardSpan)
  return {
    ...pieceOnPage(rows, days, span),
    piece: id,
    ...(title === undefined ? {} : { title }),
    ...(score ? { score } : {}),
    hard: {
      review,
      span: hardSpan,
      bars: score ? hardBars(score, review) : [],
      chunks: score ? [] : hardChunks(review),
    },
  }
}
