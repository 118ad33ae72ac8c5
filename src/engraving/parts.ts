/**
 * Written time is counted in parts of a quarter. 3360 = 2^5 · 3 · 5 · 7, so that 128th notes,
 * triplets of 64ths, quintuplets and septuplets all fall on whole parts.
 */
export const quarter = 3360

/** Ticks of the score in parts; a whole number only where the score is exact. */
export const toParts = (ticks: number, ticksPerQuarter: number): number =>
  (ticks * quarter) / ticksPerQuarter
