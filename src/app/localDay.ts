import { dayAt, type Day } from '@/journal/day'

/** The day of a moment where this machine is. */
export const localDay = (epochMs: number): Day =>
  dayAt(epochMs, -new Date(epochMs).getTimezoneOffset())
