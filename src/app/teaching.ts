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
import type { ChunkFigures, PieceReview } from '@/review/pieceReview'
import {
  byNeed,
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

/**
 * What the page is about: a piece over all its time, or all that was practised in the week of a day;
 * without one in the latest week with practice.
 */
export type PageAbout = { readonly piece: PieceId } | { readonly week: Day | undefined }

export interface TeacherPage {
  /** A week, or from the first to the last day of a piece; absent while there is nothing at all. */
  readonly span?: Span
  /** Of all that is on the page. */
  readonly figures: Figures
  readonly days: number
  readonly overruled: readonly OverruleCount[]
  /** The most practised first. */
  readonly pieces: readonly TaughtPiece[]
  readonly choices: PageChoices
}

/** What there can be a page about. */
export interface PageChoices {
  /** The Mondays of weeks with practice, the latest first. */
  readonly weeks: readonly Day[]
  /** The last played first. */
  readonly pieces: readonly { readonly piece: PieceId; readonly title?: string }[]
}

export interface TaughtPiece extends PieceOnPage {
  readonly piece: PieceId
  readonly title?: string
  /** Absent where its file is not on this machine. */
  readonly score?: Score
  /** Its chunks, in the order in which a lesson asks for them. */
  readonly inNeed: readonly ChunkFigures[]
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
  const page =
    'piece' in about
      ? await pageOfPiece(record, library, sums.value, about.piece)
      : await pageOfWeek(record, library, sums.value, about.week)
  return page.ok ? ok({ ...page.value, choices: choicesOf(sums.value, library) }) : page
}

const choicesOf = ({ totals, pieces }: Sums, library: Shelf): PageChoices => {
  const { listed } = library.store.getState()
  const weeks = new Set(totals.filter(isPlayed).map(({ day }) => weekOf(day)))
  const ids = new Set(
    pieces
      .filter(isPlayed)
      .toReversed()
      .map(({ piece }) => piece),
  )
  return {
    weeks: [...weeks].toReversed(),
    pieces: [...ids].map((piece) => {
      const title = listed.find(({ id }) => id === piece)?.title ?? titleIn(pieces, piece)
      return { piece, ...(title === undefined ? {} : { title }) }
    }),
  }
}

const titleIn = (pieces: readonly PieceDay[], id: PieceId): string | undefined =>
  pieces.findLast(({ piece, title }) => piece === id && title !== undefined)?.title

type Sums = Extract<Awaited<ReturnType<ReviewedRecord['sums']>>, { ok: true }>['value']

type Counted = Omit<TeacherPage, 'choices'>

const nothing: Counted = { figures: joinSums([]), days: 0, overruled: [], pieces: [] }

const pageOfPiece = async (
  record: ReviewedRecord,
  library: Shelf,
  { pieces }: Sums,
  id: PieceId,
): Promise<Result<Counted, string>> => {
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
  week: Day | undefined,
): Promise<Result<Counted, string>> => {
  const day = week ?? totals.findLast(isPlayed)?.day
  if (day === undefined) return ok(nothing)
  const from = weekOf(day)
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
  const title = score?.title ?? titleIn(days, id)
  const lately = daysAfter(span.to, 1 - hardDays)
  const hardSpan = lately > span.from ? { from: lately, to: span.to } : span
  const review = reviewWithin(rows, hardSpan)
  const page = pieceOnPage(rows, days, span)
  return {
    ...page,
    inNeed: byNeed(page.chunks),
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
