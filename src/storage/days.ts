import { dayAt, type DayOf } from '@/journal/day'

/** How moments are assigned to days. Sums that were counted by another rule are counted anew. */
export interface DayRule {
  readonly name: string
  readonly dayOf: DayOf
}

/** The days of the time zone that this machine is in. */
export const localDays = (): DayRule => ({
  name: Intl.DateTimeFormat().resolvedOptions().timeZone,
  dayOf: (epochMs) => dayAt(epochMs, -new Date(epochMs).getTimezoneOffset()),
})
