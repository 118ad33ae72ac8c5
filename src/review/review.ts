/**
 * What the journal says of the practice: of a session, a piece, or any other choice of events.
 *
 * tally: how many repetitions were clean, flawed, broken off. clean share: clean / (clean + flawed);
 * broken off ones are counted apart. Everything is counted from the events given, nothing is kept.
 *
 * Example: 6 clean, 2 flawed, 1 broken off -> 9 repetitions, clean share 0.75.
 */
import { countPlaces, substitutionsIn, type Substitution } from '@/journal/flawCounts'
import { groupBy, type Some } from '@/journal/groupBy'
import type { JournalEvent, RecordedPlace, RepetitionRecorded } from '@/journal/journal'
import { compareEvents } from '@/journal/merge'
import { practisedMs } from '@/journal/practised'
import { countVerdicts, longestStreak } from '@/journal/sumDays'
import type { Tally } from '@/journal/sums'
import type { TimeSignature } from '@/music/music'
import type { ChunkId, PieceId, Tempo } from '@/music/units'
import { countFlaws, type FlawCount } from './flaws'
import { estimateShare, type Estimate } from './proportion'

/** One chunk in the events given. */
export interface ChunkReview {
  readonly chunk: ChunkId
  readonly piece: PieceId
  /** The title under which the piece was added, where the events tell it. */
  readonly title?: string
  readonly place?: RecordedPlace
  readonly goalTempo?: Tempo
  /** The time signature where the chunk begins, for tempi in its beat. */
  readonly time?: TimeSignature
  readonly tally: Tally
  readonly longestStreak: number
  /** The rung at the first repetition and the one reached at the end. */
  readonly fromRung: Tempo
  readonly toRung: Tempo
  /** The streak goal was met at the goal tempo. */
  readonly secure: boolean
}

export interface Review {
  readonly tally: Tally
  /** `undefined` while nothing was clean or flawed. */
  readonly cleanShare: number | undefined
  /** The same with its interval. */
  readonly share: Estimate | undefined
  readonly longestStreak: number
  readonly repetitions: number
  readonly minutes: number
  /** In the order in which they were practised. */
  readonly chunks: readonly ChunkReview[]
  /** The most frequent first. */
  readonly flaws: readonly FlawCount[]
  /** Which key was played for which, the most frequent first. */
  readonly substitutions: readonly Substitution[]
}

/** The figures of the events given, in whatever order they come. */
export const reviewEvents = (events: readonly JournalEvent[]): Review => {
  const sorted = events.toSorted(compareEvents)
  const repetitions = sorted.filter((e) => e.kind === 'repetition')
  const tally = countVerdicts(repetitions)
  const chunks = [...groupBy(repetitions, ({ chunk }) => chunk).values()].map((of) =>
    reviewChunk(sorted, of),
  )
  return {
    tally,
    cleanShare: cleanShare(tally),
    share: estimateShare(tally.clean, tally.clean + tally.flawed),
    longestStreak: Math.max(0, ...chunks.map((chunk) => chunk.longestStreak)),
    repetitions: repetitions.length,
    minutes: practisedMs(repetitions).reduce((total, each) => total + each, 0) / 60_000,
    chunks,
    flaws: countFlaws(repetitions),
    substitutions: substitutionsIn(countPlaces(repetitions)),
  }
}

/** clean / (clean + flawed); `undefined` when there is neither. */
export const cleanShare = ({ clean, flawed }: Tally): number | undefined =>
  clean + flawed === 0 ? undefined : clean / (clean + flawed)

const reviewChunk = (
  sorted: readonly JournalEvent[],
  repetitions: Some<RepetitionRecorded>,
): ChunkReview => {
  const [{ chunk, piece, rung: fromRung }] = repetitions
  const of = sorted.filter((event) => 'chunk' in event && event.chunk === chunk)
  const begun = of.findLast((event) => event.kind === 'drillBegun')
  const added = sorted.findLast((event) => event.kind === 'pieceAdded' && event.piece === piece)
  return {
    chunk,
    piece,
    ...(added?.kind === 'pieceAdded' ? { title: added.title } : {}),
    ...(begun ? { place: begun.place, goalTempo: begun.goalTempo, time: begun.time } : {}),
    tally: countVerdicts(repetitions),
    longestStreak: longestStreak(repetitions),
    fromRung,
    toRung: of.reduce(rungAfter, fromRung),
    secure: of.some((event) => event.kind === 'secure'),
  }
}

const rungAfter = (rung: Tempo, event: JournalEvent): Tempo =>
  event.kind === 'rungChanged' ? event.to : event.kind === 'repetition' ? event.rung : rung
