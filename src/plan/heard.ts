import type { Day } from '@/journal/day'
import type { ChunkDay } from '@/journal/sums'
import type { PieceLayout, PlanPlace } from './layOut'

/** What the last run-through of a piece told. */
export interface Heard {
  readonly day: Day
  /** How much went wrong at a place. */
  readonly slipsIn: (place: Pick<PlanPlace, 'from' | 'to'>) => number
}

/** `undefined` where the piece was not run through; one that is a single place is only practised. */
export const heardIn = (
  { whole, places }: Pick<PieceLayout, 'whole' | 'places'>,
  rows: readonly ChunkDay[],
): Heard | undefined => {
  if (!whole || places.some(({ id }) => id === whole.chunk)) return undefined
  const last = rows.filter(({ chunk, cold }) => chunk === whole.chunk && cold).at(-1)
  return (
    last && {
      day: last.day,
      slipsIn: ({ from, to }) =>
        last.places.reduce((sum, { onset, times }) => {
          const start = whole.starts[onset]
          return start !== undefined && start >= from && start <= to ? sum + times : sum
        }, 0),
    }
  )
}
