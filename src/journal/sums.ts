/**
 * What a day of practice comes to. Sums are kept beside the events (storage), so that a review of years
 * opens without reading a repetition; kept or counted anew, they are the same.
 *
 * A day's sums follow from the events of that day alone (day.ts): of the whole day, of each piece, of
 * each chunk. Months and years are joined of days by whoever asks.
 *
 * Example: five repetitions of one chunk, ccfcc -> tally 4 clean, 1 flawed; longest streak 2; one rung.
 */
import type { TimeSignature } from '@/music/music'
import type { ChunkId, PieceId, Tempo } from '@/music/units'
import type { Day } from './day'
import type { FlawPlace } from './flawCounts'
import type { RecordedPlace } from './journal'
import type { RecordedFlawKind, RecordedForm, RecordedOverrule, RecordedVerdict } from './words'

export type Tally = Readonly<Record<RecordedVerdict, number>>

export interface Sum {
  readonly tally: Tally
  /** Milliseconds at practice, without the rests. */
  readonly ms: number
  /** Clean repetitions in a row, of one chunk. */
  readonly longestStreak: number
  /** How many flaws of each kind that came at all; forgiven ones are not counted. */
  readonly flaws: Readonly<Partial<Record<RecordedFlawKind, number>>>
}

/** What was played at one tempo. */
export interface RungSum {
  readonly rung: Tempo
  readonly tally: Tally
  readonly ms: number
}

/** The first repetition of a chunk on a day. */
export interface ColdRepetition {
  readonly atEpochMs: number
  readonly rung: Tempo
  /** The goal tempo of its drill, where the day tells it. */
  readonly goalTempo?: Tempo
  readonly verdict: RecordedVerdict
}

/** The drill of a chunk that was begun last on a day. */
export interface DrillSum {
  readonly place: RecordedPlace
  readonly form: RecordedForm
  readonly time: TimeSignature
  readonly goalTempo: Tempo
}

export interface ChunkDay extends Sum {
  readonly day: Day
  readonly piece: PieceId
  readonly chunk: ChunkId
  /** Absent when the chunk was begun and not played. */
  readonly cold?: ColdRepetition
  /** Slow ones first. */
  readonly rungs: readonly RungSum[]
  /** The rung of the last repetition. */
  readonly lastRung?: Tempo
  /** The rung at which the streak goal was met at the goal tempo. */
  readonly secureAt?: Tempo
  /** The highest rung at which the streak goal was met in full: secure, or done as an exercise on the way. */
  readonly doneAt?: Tempo
  readonly begun?: DrillSum
  readonly places: readonly FlawPlace[]
}

/** What the person decided otherwise than the coach, and how often. */
export interface Overruled {
  readonly overruled: Readonly<Partial<Record<RecordedOverrule, number>>>
}

export interface PieceDay extends Sum, Overruled {
  readonly day: Day
  readonly piece: PieceId
  /** The title under which the piece was added on this day. */
  readonly title?: string
}

export interface DayTotal extends Sum, Overruled {
  readonly day: Day
}

export interface DaySums {
  readonly total: DayTotal
  readonly pieces: readonly PieceDay[]
  readonly chunks: readonly ChunkDay[]
}
