import type { Day } from '@/journal/day'
import type { Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import type { Carried } from '@/review/carryOver'
import { openListed, type ReviewedRecord, type Shelf } from './reviewedRecord'
import type { AllReview, OnePieceReview } from './reviewing'
import type { PageAbout, TeacherPage } from './teaching'

/** What a record says: one's own, or a student's that stands beside it. */
export interface Reviews {
  /** This day of practice. */
  readonly today: () => Day
  readonly all: () => Promise<Result<AllReview, string>>
  readonly piece: (id: PieceId) => Promise<Result<OnePieceReview, string>>
  readonly teacherPage: (about: PageAbout) => Promise<Result<TeacherPage, string>>
}

export const createReviews = (
  record: ReviewedRecord,
  library: Shelf,
  wallClock: () => number,
): Reviews => ({
  today: () => record.dayOf(wallClock()),
  all: async () => {
    const sums = await record.sums()
    if (!sums.ok) return sums
    return { ok: true, value: (await import('./reviewing')).reviewAll(sums.value) }
  },
  piece: async (id) => {
    const open = await openListed(library, id)
    const carried: readonly Carried[] = open?.carried ?? []
    const [sums, { readPieceReview }] = await Promise.all([record.sums(), import('./reviewing')])
    return sums.ok ? readPieceReview(record, sums.value, id, open?.score, carried) : sums
  },
  teacherPage: async (about) =>
    (await import('./teaching')).readTeacherPage(record, library, about),
})
