/**
 * The divisions that a quarter may have, and what each costs beside its misfit, in quarters: the
 * rarer in print, the better it must fit. Found by trial: with onsets 30 ms off at 120 quarters a
 * minute (0.06 quarter) triplets must still beat sixteenths, and sixteenths thirty-seconds.
 */
const ofQuarter = [
  { division: 4, cost: 0 },
  { division: 3, cost: 0.012 },
  { division: 8, cost: 0.04 },
  { division: 6, cost: 0.04 },
  { division: 5, cost: 0.05 },
  { division: 12, cost: 0.07 },
  { division: 7, cost: 0.08 },
  { division: 16, cost: 0.09 },
] as const

/** The same for an eighth, the pulse of 6/8: sixteenths, triplets of sixteenths, thirty-seconds. */
const ofEighth = [
  { division: 2, cost: 0 },
  { division: 4, cost: 0.03 },
  { division: 3, cost: 0.03 },
  { division: 6, cost: 0.07 },
  { division: 8, cost: 0.09 },
] as const

/** A file written by a program misses the grid by rounding alone: 1/96 of a quarter is 5 ticks of 480. */
const exact = 1 / 96

/** Two onsets farther apart than this (40 ms at 120) are not one chord and should not fall together. */
const apart = 0.08
const collision = 0.15

/** The division of a pulse of `length` quarters that fits onsets at these places (quarters from its start). */
export const bestGrid = (onsets: readonly number[], length: number): number => {
  const choices = length > 0.75 ? ofQuarter : ofEighth
  const first = choices[0].division
  if (onsets.length === 0 || Math.abs(length - (length > 0.75 ? 1 : 0.5)) > exact)
    return Math.max(1, Math.round(length * (length > 0.75 ? first : first * 2)))
  const perfect = choices.find(
    ({ division }) =>
      collisions(onsets, length / division) === 0 &&
      onsets.every((at) => misfit(at, length / division) <= tolerance(length / division)),
  )
  if (perfect) return perfect.division
  let best: { division: number; price: number } = { division: first, price: Infinity }
  for (const { division, cost } of choices) {
    const step = length / division
    const squares = onsets.reduce((sum, at) => sum + misfit(at, step) ** 2, 0)
    const price = Math.sqrt(squares / onsets.length) + cost + collision * collisions(onsets, step)
    if (price < best.price) best = { division, price }
  }
  return best.division
}

/** A fine grid lies near every place: there only a sixteenth of its step counts as exact. */
const tolerance = (step: number): number => Math.min(exact, step / 16)

const misfit = (at: number, step: number): number => Math.abs(at - Math.round(at / step) * step)

const collisions = (onsets: readonly number[], step: number): number => {
  const sorted = onsets.toSorted((a, b) => a - b)
  return sorted.filter((at, i) => {
    const before = sorted[i - 1]
    if (before === undefined || at - before <= apart) return false
    return Math.round(at / step) === Math.round(before / step)
  }).length
}
