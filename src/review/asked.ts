import type { Day } from '@/journal/day'
import type { FlawPlace } from '@/journal/flawCounts'
import type { ChunkDay, DayTotal, PieceDay, Sum } from '@/journal/sums'
import type { RecordedFlawKind, RecordedOverrule, RecordedVerdict } from '@/journal/words'
import type { ChunkId, Key, NoteId, PieceId, Tempo } from '@/music/units'
import type { ChunkStanding, ChunkState, ColdCheck } from './chunkStates'
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
  /** Clean or flawed: what a clean share is made of. */
  readonly ended?: true
  /** At this tempo. */
  readonly rung?: Tempo
  /** With one flaw of this kind, at this note alone or over a stretch from it, of these two keys. */
  readonly flaw?: RecordedFlawKind
  readonly note?: NoteId
  /** The flaw stands over the stretch from the note as far as this one. */
  readonly until?: NoteId
  /** With a flaw in this bar of the score, counted from 0. */
  readonly bar?: number
  readonly written?: Key
  readonly played?: Key
  /** Cold, on a later day, of what had been secure or kept. */
  readonly cold?: true
  /** Of each chunk that stands so, the one that made it so (repetitions.ts). */
  readonly state?: ChunkState
  /** Those of the longest streak; where several are as long, of one on the last day that has one. */
  readonly streak?: true
  /** After which the person decided otherwise in this way. */
  readonly overruled?: RecordedOverrule
}

/** What is known besides: where in the score a flaw is, the cold checks, where each chunk stands. */
export interface Known {
  readonly locate: Locate
  readonly barOf: BarOf
  readonly checks: readonly ColdCheck[]
  readonly standings: readonly ChunkStanding[]
}

export interface AskedSums {
  readonly totals: readonly DayTotal[]
  readonly pieces: readonly PieceDay[]
  /** Of the piece, or of all pieces; may be left out unless `needsChunks`. */
  readonly chunks: readonly ChunkDay[]
}

/** Only the sums of chunks can tell on which days it was. */
export const needsChunks = (asked: Asked): boolean =>
  (['piece', 'chunk', 'rung', 'note', 'bar', 'written', 'played', 'cold', 'state'] as const).some(
    (name) => asked[name] !== undefined,
  )

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

/** Whether a flaw of a chunk stands at the note, or over the stretch from it, and in the bar asked for. */
export const isAt = (
  { note, until, bar }: Asked,
  chunk: ChunkId,
  flaw: Parameters<Locate>[1],
  { locate, barOf }: Known,
): boolean => {
  if (note === undefined && bar === undefined) return true
  const at = locate(chunk, flaw)
  if (at === undefined || !has(bar, barOf(at.note))) return false
  // A stretch that begins at the note is another place than the note.
  return note === undefined || (note === at.note && until === at.until)
}

const rowsOf = (
  asked: Asked,
  { totals, pieces, chunks }: AskedSums,
  known: Known,
): readonly ({ readonly day: Day } & Pick<Sum, 'longestStreak'>)[] => {
  const { piece, verdict, ended, flaw, overruled } = asked
  if (overruled !== undefined)
    return (piece === undefined ? totals : pieces.filter((row) => row.piece === piece)).filter(
      (row) => (row.overruled[overruled] ?? 0) > 0,
    )
  const rows = needsChunks(asked) ? chunks.filter((row) => rowHas(asked, row, known)) : totals
  return rows
    .filter(isPlayed)
    .filter(({ tally }) => verdict === undefined || tally[verdict] > 0)
    .filter(({ tally }) => !ended || tally.clean + tally.flawed > 0)
    .filter(({ flaws }) => flaw === undefined || (flaws[flaw] ?? 0) > 0)
}

const rowHas = (asked: Asked, row: ChunkDay, known: Known): boolean => {
  const { rung, cold, state } = asked
  return (
    has(asked.piece, row.piece) &&
    has(asked.chunk, row.chunk) &&
    (rung === undefined || row.rungs.some((each) => each.rung === rung)) &&
    (!asksPlace(asked) || row.places.some((place) => mayHold(asked, row.chunk, place, known))) &&
    (!cold || known.checks.some((check) => isOfDay(check, row))) &&
    (state === undefined ||
      known.standings.some((each) => each.state === state && isOfDay(each, row)))
  )
}

const asksPlace = ({ note, bar, written }: Asked): boolean =>
  [note, bar, written].some((each) => each !== undefined)

/** What else is asked for must be of the same flaw; which keys were struck, not every kind tells. */
const mayHold = (asked: Asked, chunk: ChunkId, place: FlawPlace, known: Known): boolean =>
  has(kindAsked(asked), place.kind) &&
  has(asked.written, place.written) &&
  (asked.played === undefined || (place.played?.some(({ key }) => key === asked.played) ?? true)) &&
  isAt(asked, chunk, place, known)

/** Only another key in place of the written one counts as played for it. */
export const kindAsked = ({ flaw, written }: Asked): RecordedFlawKind | undefined =>
  flaw ?? (written === undefined ? undefined : 'wrong')

type OfDay = Pick<ChunkStanding, 'piece' | 'chunk' | 'day'>

const isOfDay = (a: OfDay, b: OfDay): boolean =>
  a.piece === b.piece && a.chunk === b.chunk && a.day === b.day
