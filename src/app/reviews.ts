import type { Day } from '@/journal/day'
import type { JournalEvent } from '@/journal/journal'
import { ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { Carried } from '@/review/carryOver'
import type { ChunksOfAll } from '@/review/coldFigures'
import type { AllPage } from '@/review/pages'
import type { Listed } from '@/review/repetitions'
import type { RepetitionList } from './repetitionList'
import { openListed, type ReviewedRecord, type Shelf } from './reviewedRecord'
import type { OnePieceReview, SittingPiece } from './reviewing'
import type { Seen } from './seenRepetition'
import type { PageAbout, TeacherPage } from './teaching'

/** What a record says: one's own, or a student's that stands beside it. */
export interface Reviews {
  /** This day of practice. */
  readonly today: () => Day
  readonly all: () => Promise<Result<AllPage, string>>
  /** What only the chunks of all pieces tell; it takes longer than the rest. */
  readonly chunksOfAll: () => Promise<Result<ChunksOfAll, string>>
  readonly piece: (id: PieceId) => Promise<Result<OnePieceReview, string>>
  /** A sitting by its events, piece by piece. */
  readonly sittingOf: (
    events: readonly JournalEvent[],
  ) => Promise<Result<readonly SittingPiece[], string>>
  /** The repetitions behind a figure. */
  readonly repetitions: (asked: Asked) => Promise<Result<RepetitionList, string>>
  /** One of them, to be seen and heard; what its drill was is told where the list knows it. */
  readonly see: (listed: Pick<Listed, 'repetition' | 'drill'>) => Promise<Seen>
  readonly teacherPage: (about: PageAbout) => Promise<Result<TeacherPage, string>>
}

/** `sitting`: the events of the sitting under way, where the record has one. */
export const createReviews = (
  record: ReviewedRecord,
  library: Shelf,
  wallClock: () => number,
  sitting: () => readonly JournalEvent[] = () => [],
): Reviews => ({
  today: () => record.dayOf(wallClock()),
  all: async () => {
    const sums = await record.sums()
    if (!sums.ok) return sums
    const { allPage } = await import('@/review/pages')
    return ok(allPage(sums.value.totals, sums.value.pieces))
  },
  chunksOfAll: async () => (await import('./reviewing')).readChunksOfAll(record),
  piece: async (id) => {
    const open = await openListed(library, id)
    const carried: readonly Carried[] = open?.carried ?? []
    const [sums, { readPieceReview }] = await Promise.all([record.sums(), import('./reviewing')])
    return sums.ok ? readPieceReview(record, sums.value, id, open?.score, carried) : sums
  },
  sittingOf: async (events) => (await import('./reviewing')).readSitting(record, library, events),
  repetitions: async (asked) =>
    (await import('./repetitionList')).openRepetitions(record, library, asked, sitting),
  see: async ({ repetition, drill }) => {
    const [open, { seeRepetition }] = await Promise.all([
      openListed(library, repetition.piece),
      import('./seenRepetition'),
    ])
    return seeRepetition(repetition, open?.score, drill)
  },
  teacherPage: async (about) =>
    (await import('./teaching')).readTeacherPage(record, library, about),
})
