import type { Day } from '@/journal/day'
import type { ChunkDay, DayTotal, PieceDay, Sum } from '@/journal/sums'
import type { RecordedFlawKind, RecordedOverrule, RecordedVerdict } from '@/journal/words'
import type { ChunkId, Key, NoteId, PieceId } from '@/music/units'
import type { ColdCheck } from './chunkStates'
import type { BarOf, Locate } from './flawBars'
import { isPlayed } from './joinSums'

/** Which repetitions a figure of the review counts: all that is given must hold. */
export interface Asked {
  /** Of the sitting under way. */
  readonly session?: true
  readonly piece?: PieceId
  readonly chunk?: ChunkId
  /** Days, both included. */
  readonly from?: Day
  readonly to?: Day
  readonly verdict?: RecordedVerdict
  /** With one flaw of this kind, at this note, of these two keys. */
  readonly flaw?: RecordedFlawKind
  readonly note?: NoteId
  /** With a flaw in this bar of the score, counted from 0. */
  readonly bar?: number
  readonly written?: Key
  readonly played?: Key
  /** Cold, on a later day, of what had been secure or kept. */
  readonly cold?: true
  /** Those of the longest streak; where several are as long, of one on the last day that has one. */
  readonly streak?: true
  /** After which the person decided otherwise in this way. */
  readonly overruled?: RecordedOverrule
}

/** What is known besides: where in the score a flaw is, and the cold checks. */
export interface Known {
  readonly locate: Locate
  readonly barOf: BarOf
  readonly checks: readonly ColdCheck[]
}

export interface AskedSums {
  readonly totals: readonly DayTotal[]
  readonly pieces: readonly PieceDay[]
  /** Of the piece, or of all pieces; may be left out unless `needsChunks`. */
  readonly chunks: readonly ChunkDay[]
}

/** Only the sums of chunks can tell on which days it was. */
export const needsChunks = ({ piece, chunk, note, bar, written, played, cold }: Asked): boolean =>
  [piece, chunk, note, bar, written, played, cold].some((each) => each !== undefined)

/** The days on which there may be such repetitions, the last first: found without reading one. */
export const daysOf = (asked: Asked, sums: AskedSums, known: Known): readonly Day[] => {
  const rows = rowsOf(asked, sums, known).filter(({ day }) => isWithin(asked, day))
  const longest = rows.reduce((most, { longestStreak }) => Math.max(most, longestStreak), 0)
  const of = asked.streak ? rows.filter(({ longestStreak }) => longestStreak === longest) : rows
  const days = [...new Set(of.map(({ day }) => day))].toSorted((a, b) => (a < b ? 1 : -1))
  return asked.streak ? days.slice(0, 1) : days
}

export const isWithin = ({ from, to }: Asked, day: Day): boolean =>
  (from === undefined || from <= day) && (to === undefined || day <= to)

/** Whatever is wanted, or this. */
export const has = <T>(wanted: T | undefined, is: T | undefined): boolean =>
  wanted === undefined || wanted === is

/** Whether a flaw of a chunk stands at the note and in the bar asked for. */
export const isAt = (
  { note, bar }: Asked,
  chunk: ChunkId,
  flaw: Parameters<Locate>[1],
  { locate, barOf }: Known,
): boolean => {
  if (note === undefined && bar === undefined) return true
  const at = locate(chunk, flaw)
  return at !== undefined && has(note, at) && has(bar, barOf(at))
}

const rowsOf = (
  asked: Asked,
  { totals, pieces, chunks }: AskedSums,
  known: Known,
): readonly ({ readonly day: Day } & Pick<Sum, 'longestStreak'>)[] => {
  const { piece, verdict, flaw, overruled } = asked
  if (overruled !== undefined)
    return (piece === undefined ? totals : pieces.filter((row) => row.piece === piece)).filter(
      (row) => (row.overruled[overruled] ?? 0) > 0,
    )
  const rows = needsChunks(asked) ? chunks.filter((row) => rowHas(asked, row, known)) : totals
  return rows
    .filter(isPlayed)
    .filter(({ tally }) => verdict === undefined || tally[verdict] > 0)
    .filter(({ flaws }) => flaw === undefined || (flaws[flaw] ?? 0) > 0)
}

const rowHas = (asked: Asked, row: ChunkDay, known: Known): boolean => {
  const { note, bar, flaw, written, played, cold } = asked
  return (
    has(asked.piece, row.piece) &&
    has(asked.chunk, row.chunk) &&
    ((note === undefined && bar === undefined && written === undefined) ||
      row.places.some(
        (place) =>
          has(flaw, place.kind) &&
          has(written, place.written) &&
          isAt(asked, row.chunk, place, known),
      )) &&
    (flaw !== undefined ||
      written === undefined ||
      row.substitutions.some((s) => s.written === written && has(played, s.played))) &&
    (!cold ||
      known.checks.some((c) => c.day === row.day && c.chunk === row.chunk && c.piece === row.piece))
  )
}
