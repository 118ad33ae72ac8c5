import { dayAt, daysAfter, daysBetween, type Day, type DayOf } from './day'

/** From its first moment to the first of the next day; milliseconds since 1970 UTC. */
export interface DaySpan {
  readonly from: number
  readonly to: number
}

/** When a day of practice begins and ends, whatever zone its rule goes by: found by halving. */
export const spanOf = (day: Day, dayOf: DayOf): DaySpan => ({
  from: firstMomentOf(day, dayOf),
  to: firstMomentOf(daysAfter(day, 1), dayOf),
})

const hourMs = 3_600_000
/** Clocks stand at most 14 hours before UTC and 12 behind, and a day begins at four. */
const farthestMs = 18 * hourMs
const dayZero = dayAt(12 * hourMs, 0)

const firstMomentOf = (day: Day, dayOf: DayOf): number => {
  const midnight = daysBetween(dayZero, day) * 24 * hourMs
  let before = midnight - farthestMs
  let from = midnight + farthestMs
  while (from - before > 1) {
    const middle = Math.floor((before + from) / 2)
    if (dayOf(middle) < day) before = middle
    else from = middle
  }
  return from
}
