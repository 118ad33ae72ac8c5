import type { RepetitionRecorded } from '@/journal/journal'

/** Five minutes without a verdict are a rest, not practice (as the coach counts them). */
const restMs = 5 * 60_000

/** Minutes at practice: from the first key on, without the rests. The repetitions are sorted by time. */
export const practisedMinutes = (repetitions: readonly RepetitionRecorded[]): number => {
  let total = 0
  let last: number | undefined
  for (const { atEpochMs, tookMs } of repetitions) {
    const gap = last === undefined ? Infinity : atEpochMs - last
    total += gap < restMs ? gap : tookMs
    last = atEpochMs
  }
  return total / 60_000
}
