import type { RepetitionRecorded } from './journal'

/** Five minutes without a verdict are a rest, not practice (as the coach counts them). */
const restMs = 5 * 60_000

/**
 * How long each repetition of a sitting took, with the pause before it: milliseconds since the verdict
 * before, or, after a rest, from its own first key. The repetitions are sorted by time; the sum is the
 * time at practice, from the first key on, without the rests.
 */
export const practisedMs = (
  repetitions: readonly Pick<RepetitionRecorded, 'atEpochMs' | 'tookMs'>[],
): readonly number[] =>
  repetitions.map(({ atEpochMs, tookMs }, i) => {
    const before = repetitions[i - 1]
    const gap = before ? atEpochMs - before.atEpochMs : Infinity
    return gap < restMs ? gap : tookMs
  })
