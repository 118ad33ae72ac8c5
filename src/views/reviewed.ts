import { createContext, useContext } from 'react'
import type { Reviews } from '@/app/reviews'
import { formatRoute, type TeacherRoute } from '@/app/route'
import type { StudentId } from '@/journal/ids'
import type { PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import { useApp } from './context'

/** Whose record is reviewed. */
export interface Reviewed {
  readonly reviews: Reviews
  /** Absent where it is one's own. */
  readonly student?: { readonly id: StudentId; readonly name: string }
}

/** Given where the record is not one's own: it is read, never written. */
export const ReviewedContext = createContext<Reviewed | undefined>(undefined)

export const useReviewed = (): Reviewed => {
  const { records } = useApp()
  return useContext(ReviewedContext) ?? { reviews: records }
}

/** Addresses of other pages about the same record. */
export interface ReviewedRoutes {
  readonly review: (piece?: PieceId) => string
  /** The repetitions behind a figure. */
  readonly repetitions: (asked: Asked) => string
  readonly teacher: (about: Pick<TeacherRoute, 'piece' | 'week'>) => string
}

export const useReviewedRoutes = (): ReviewedRoutes => {
  const { student } = useReviewed()
  const whose = student ? { student: student.id } : {}
  return {
    review: (piece) =>
      formatRoute({ kind: 'review', ...whose, ...(piece === undefined ? {} : { piece }) }),
    repetitions: (asked) => formatRoute({ kind: 'repetitions', ...whose, asked }),
    teacher: (about) => formatRoute({ kind: 'teacher', ...whose, ...about }),
  }
}
