import { daysBetween, type Day } from '@/journal/day'
import type { ChunkDay } from '@/journal/sums'
import type { Tempo } from '@/music/units'
import { coldChecksOf, type ColdCheck } from '@/review/chunkStates'

/**
 * Days until the next cold check: after it was secure 1, after each clean check the next, back to 1
 * on failure. The first night matters for movements (Simmons 2012); longer intervals are taken over
 * from what is known of verbal memory (Cepeda et al. 2006).
 */
export const checkIntervals = [1, 2, 4, 7, 14, 28] as const

/** When a place is due to be played cold. */
export interface Check {
  /** The day on which it was last secure, or checked. */
  readonly since: Day
  /** So many days after that. */
  readonly interval: number
  /** The tempo at which it is to be confirmed. */
  readonly rung: Tempo
}

/** How many days a check is overdue on a day: 0 when it is due that day, negative before. */
export const daysOverdue = ({ since, interval }: Check, day: Day): number =>
  daysBetween(since, day) - interval

/**
 * The next check of one chunk from its days, in order; `undefined` for what was never secure, or failed
 * before it was ever kept: that is practised again first. Broken off, it is due again the next day.
 */
export const nextCheck = (days: readonly ChunkDay[]): Check | undefined => {
  const checks = new Map(coldChecksOf(days).map((check) => [check.day, check]))
  let step = 0
  let isKept = false
  let found: Check | undefined
  for (const { day, secureAt } of days) {
    const check = checks.get(day)
    if (check) {
      step = stepAfter(step, check)
      isKept = check.after === 'kept'
      const interval = check.verdict === 'clean' ? intervalAt(step) : intervalAt(0)
      found = check.after === 'practised' ? undefined : { since: day, interval, rung: check.rung }
    }
    // Secure again it begins anew; a streak adds nothing to what is kept.
    if (secureAt !== undefined && !isKept) {
      step = 0
      found = { since: day, interval: intervalAt(0), rung: secureAt }
    }
  }
  return found
}

const stepAfter = (step: number, { verdict }: ColdCheck): number => {
  switch (verdict) {
    case 'clean':
      return step + 1
    case 'flawed':
      return 0
    case 'brokenOff':
      return step
  }
}

const intervalAt = (step: number): number =>
  checkIntervals[Math.min(step, checkIntervals.length - 1)] ?? 28
