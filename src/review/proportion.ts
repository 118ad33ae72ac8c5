/** A figure with the bounds between which it lies in 95 of 100 cases. */
export interface Estimate {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** The 97.5 % point of the normal distribution. */
export const z95 = 1.959963984540054

/**
 * A proportion with its score interval, which stays within 0 and 1 and holds for few cases too;
 * `undefined` where there are none. Example: 8 of 10 -> 0.8, from 0.49 to 0.94.
 * Source: Wilson 1927, J. Am. Stat. Assoc. 22:209-212.
 */
export const estimateShare = (hits: number, of: number): Estimate | undefined => {
  if (of <= 0) return undefined
  const p = hits / of
  const z2 = z95 * z95
  const middle = (p + z2 / (2 * of)) / (1 + z2 / of)
  const half = (z95 / (1 + z2 / of)) * Math.sqrt((p * (1 - p)) / of + z2 / (4 * of * of))
  // At 0 and 1 the bound is the share itself, but for rounding.
  return {
    value: p,
    low: Math.max(0, Math.min(p, middle - half)),
    high: Math.min(1, Math.max(p, middle + half)),
  }
}

/**
 * How much higher the second proportion is than the first, from the score intervals of both.
 * Source: Newcombe 1998, Stat. Med. 17:873-890, method 10.
 */
const estimateRise = (first: Estimate, second: Estimate): Estimate => ({
  value: second.value - first.value,
  low: second.value - first.value - Math.hypot(second.value - second.low, first.high - first.value),
  high:
    second.value - first.value + Math.hypot(second.high - second.value, first.value - first.low),
})

/** Clean and flawed repetitions. */
export interface Shares {
  readonly clean: number
  readonly flawed: number
}

/** Whether the clean share has changed: only said where the interval of the difference leaves out zero. */
export interface ShareTrend {
  readonly before: Estimate
  readonly after: Estimate
  readonly rise: Estimate
  readonly verdict: 'better' | 'worse' | 'unclear'
}

/** Compares two times; `undefined` while one of them has nothing clean or flawed. */
export const compareShares = (before: Shares, after: Shares): ShareTrend | undefined => {
  const first = estimateShare(before.clean, before.clean + before.flawed)
  const second = estimateShare(after.clean, after.clean + after.flawed)
  if (!first || !second) return undefined
  const rise = estimateRise(first, second)
  const verdict = rise.low > 0 ? 'better' : rise.high < 0 ? 'worse' : 'unclear'
  return { before: first, after: second, rise, verdict }
}
