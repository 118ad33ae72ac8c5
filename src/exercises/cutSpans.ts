/** Some neighbouring onsets, by their indices; both ends belong to it. */
export interface Span {
  readonly first: number
  readonly last: number
}

/** How many onsets a span may have, at least, at most and best. */
export interface SpanSizes {
  readonly least: number
  readonly most: number
  readonly ideal: number
}

/**
 * The cheapest way to cut onsets into spans that share an onset at each border: dynamic programming
 * over the borders, forward. `borderCosts` has one number for each onset; a size costs its squared
 * distance from the ideal. Fewer onsets than the least size are one span.
 */
export const cutSpans = (
  borderCosts: readonly number[],
  { least, most, ideal }: SpanSizes,
): readonly Span[] => {
  const end = borderCosts.length - 1
  if (end < 0) return []
  if (borderCosts.length <= least) return [{ first: 0, last: end }]
  const best: { readonly cost: number; readonly from: number }[] = [{ cost: 0, from: 0 }]
  for (let last = 1; last <= end; last++) {
    let choice = { cost: Infinity, from: 0 }
    for (let size = least; size <= Math.min(most, last + 1); size++) {
      const from = last - size + 1
      const border = last === end ? 0 : (borderCosts[last] ?? 0)
      const cost = (best[from]?.cost ?? Infinity) + (size - ideal) ** 2 + border
      if (cost < choice.cost) choice = { cost, from }
    }
    best.push(choice)
  }
  return walkBack(best, end)
}

const walkBack = (best: readonly { readonly from: number }[], end: number): readonly Span[] => {
  const found: Span[] = []
  for (let last = end; last > 0; last = best[last]?.from ?? 0)
    found.push({ first: best[last]?.from ?? 0, last })
  return found.toReversed()
}
