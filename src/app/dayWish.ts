import type { PieceId } from '@/music/units'

/** What the person wants of a day; the pieces that are practised most where they chose none. */
export interface DayWish {
  readonly minutes: number
  readonly pieces?: readonly PieceId[]
}

/** Less than five minutes is no plan, more than four hours no day. */
export const minuteBounds = { least: 5, most: 240 } as const

/** Half an hour, until the person says otherwise (common practice, no source). */
export const usualMinutes = 30
