import type { Day } from '@/journal/day'
import type { Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import type { Carried } from '@/review/carryOver'
import type { Library } from './library'
import type { StoragePort } from './ports'
import type { AllReview, OnePieceReview } from './reviewing'

/** What a record says: one's own, or a student's that stands beside it. */
export interface Reviews {
  /** This day of practice. */
  readonly today: () => Day
  readonly all: () => Promise<Result<AllReview, string>>
  readonly piece: (id: PieceId) => Promise<Result<OnePieceReview, string>>
}

/** What of the storage a review reads. */
export type ReviewedRecord = Pick<StoragePort, 'sums' | 'chunkDays' | 'dayOf'>

export const createReviews = (
  record: ReviewedRecord,
  library: Pick<Library, 'open' | 'store'>,
  wallClock: () => number,
): Reviews => ({
  today: () => record.dayOf(wallClock()),
  all: async () => {
    const sums = await record.sums()
    if (!sums.ok) return sums
    return { ok: true, value: (await import('./reviewing')).reviewAll(sums.value) }
  },
  piece: async (id) => {
    const listed = library.store.getState().listed.some((piece) => piece.id === id)
    const open = listed ? await library.open(id) : undefined
    const carried: readonly Carried[] = open?.carried ?? []
    const [sums, { readPieceReview }] = await Promise.all([record.sums(), import('./reviewing')])
    return sums.ok ? readPieceReview(record, sums.value, id, open?.score, carried) : sums
  },
})
