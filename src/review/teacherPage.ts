import { groupBy } from '@/journal/groupBy'
import type { Day } from '@/journal/day'
import type { ChunkDay, PieceDay } from '@/journal/sums'
import type { Score } from '@/music/music'
import type { ChunkId } from '@/music/units'
import { coldChecksOf, statesOf, type ChunkState } from './chunkStates'
import { countStates } from './coldFigures'
import { placeFlaws, type BarFlaws } from './flawBars'
import type { FlawCount } from './flaws'
import { isPlayed, joinOverruled, type OverruleCount } from './joinSums'
import { reviewPiece, type ChunkFigures, type PieceReview } from './pieceReview'

/** Days from the first to the last, both included. */
export interface Span {
  readonly from: Day
  readonly to: Day
}

export const isWithin =
  ({ from, to }: Span) =>
  ({ day }: { readonly day: Day }): boolean =>
    from <= day && day <= to

/** One piece on a page for the teacher: what was practised in a span of days, and how far that had come at its end. */
export interface PieceOnPage extends PieceReview {
  /** On how many days of the span. */
  readonly days: number
  readonly changes: Changes
  readonly overruled: readonly OverruleCount[]
}

/** The chunks that became so in these days: met at the goal tempo and not yet confirmed, confirmed cold, failed cold. */
export type Changes = Readonly<Record<Exclude<ChunkState, 'practised'>, readonly ChunkId[]>>

/** `rows` and `days` are those of the piece, before and after the span too. */
export const pieceOnPage = (
  rows: readonly ChunkDay[],
  days: readonly PieceDay[],
  span: Span,
): PieceOnPage => ({
  ...reviewWithin(rows, span),
  days: new Set(rows.filter(isPlayed).filter(isWithin(span)).map(dayOf)).size,
  changes: changesWithin(rows, span),
  overruled: joinOverruled(days.filter(isWithin(span))),
})

const dayOf = ({ day }: ChunkDay): Day => day

/** The figures of the span, the states at its end: what a chunk is follows from all days before. */
export const reviewWithin = (rows: readonly ChunkDay[], span: Span): PieceReview => {
  const states = statesOf(rows.filter(({ day }) => day <= span.to))
  const review = reviewPiece(rows.filter(isWithin(span)).filter(isPlayed))
  const chunks = review.chunks.map((chunk) => ({
    ...chunk,
    state: states.get(chunk.chunk) ?? chunk.state,
  }))
  return { ...review, chunks, states: countStates(chunks.map(({ state }) => state)) }
}

const changesWithin = (rows: readonly ChunkDay[], span: Span): Changes => {
  const checks = coldChecksOf(rows.filter(({ day }) => day <= span.to)).filter(isWithin(span))
  const checked = (after: ChunkState): readonly ChunkId[] =>
    unique(checks.filter((each) => each.after === after && each.verdict !== 'brokenOff'))
  const kept = checked('kept')
  const met = rows.filter(isWithin(span)).filter(({ secureAt }) => secureAt !== undefined)
  return {
    secure: unique(met).filter((chunk) => !kept.includes(chunk)),
    kept,
    slipped: checked('slipped'),
  }
}

const unique = (of: readonly { readonly chunk: ChunkId }[]): readonly ChunkId[] => [
  ...new Set(of.map(({ chunk }) => chunk)),
]

/** A bar with flaws, and how far the chunk has come in whose drills most of them were. */
export interface HardBar extends BarFlaws {
  readonly state: ChunkState
}

/** What needs a teacher's eye first: bars that are not yet secure, then by the number of flaws. */
export const hardBars = (score: Score, review: PieceReview): readonly HardBar[] => {
  const states = new Map(review.chunks.map(({ chunk, state }) => [chunk, state]))
  return placeFlaws(score, review)
    .map((bar): HardBar => ({ ...bar, state: states.get(bar.chunk) ?? 'practised' }))
    .toSorted((a, b) => need(a.state) - need(b.state) || b.times - a.times)
}

/** A chunk with its flaws, where no score is at hand to show their bars. */
export interface HardChunk {
  readonly chunk: ChunkFigures
  readonly times: number
  /** The most frequent first. */
  readonly flaws: readonly FlawCount[]
}

/** The same by chunk, in words. */
export const hardChunks = ({ chunks, places }: PieceReview): readonly HardChunk[] => {
  const flaws = groupBy(places, ({ chunk }) => chunk)
  return chunks
    .flatMap((chunk): HardChunk[] => {
      const of = flaws.get(chunk.chunk)
      return of ? [{ chunk, times: of.reduce((n, { times }) => n + times, 0), flaws: of }] : []
    })
    .toSorted((a, b) => need(a.chunk.state) - need(b.chunk.state) || b.times - a.times)
}

/** Chunks in the order in which a lesson asks for them: slipped, not yet secure, then the others; the least clean first. */
export const byNeed = (chunks: readonly ChunkFigures[]): readonly ChunkFigures[] =>
  chunks.toSorted(
    (a, b) => order[a.state] - order[b.state] || (a.share?.value ?? 0) - (b.share?.value ?? 0),
  )

const order: Readonly<Record<ChunkState, number>> = { slipped: 0, practised: 1, secure: 2, kept: 3 }

const need = (state: ChunkState): number => (order[state] < order.secure ? 0 : 1)
