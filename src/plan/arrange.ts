import { turnItem, type Chosen, type DayItem, type PlanItem } from './items'

/** A turn at a place that goes (Carter & Grahn 2016: turns of three minutes). */
const turnMinutes = 3
/** One that cannot be played clean yet is stayed with, up to six minutes: five to seven at one place are enough. */
const blockMinutes = 6

/**
 * The turns of today in rotation: each place in its order, then each again. One that cannot be played
 * clean yet has fewer and longer ones.
 */
export const rotate = (chosen: readonly Chosen[], lowered: boolean): readonly PlanItem[] => {
  const turns = chosen.map((each) => {
    const count = each.place.playable
      ? Math.max(1, Math.round(each.minutes / turnMinutes))
      : Math.ceil(each.minutes / blockMinutes)
    const item = turnItem(each, each.minutes / count, lowered)
    return Array.from({ length: count }, () => item)
  })
  const rounds = Math.max(0, ...turns.map(({ length }) => length))
  return Array.from({ length: rounds }, (_, i) => turns.flatMap((of) => of[i] ?? [])).flat()
}

/** A break of five minutes after about twenty-five (guides to musicians' health). */
const restMinutes = 5
const mostWithoutRest = 27.5
/** Half an hour is played through. */
const noRestUpTo = 30

/** How many rests so many minutes hold, so that no stretch is longer than about twenty-five. */
export const restsIn = (minutes: number): number =>
  minutes <= noRestUpTo
    ? 0
    : Math.ceil((minutes - mostWithoutRest) / (mostWithoutRest + restMinutes))

/** What is left of so many minutes for practice. */
export const practiceIn = (minutes: number): number => minutes - restsIn(minutes) * restMinutes

/** The items with rests between them, as even as the items allow. */
export const withRests = (items: readonly PlanItem[], rests: number): readonly DayItem[] => {
  const total = items.reduce((sum, { minutes }) => sum + minutes, 0)
  const ends = items.slice(0, -1).map((_, i) => sumTo(items, i))
  const after = new Set(
    Array.from({ length: rests }, (_, k) => nearest(ends, ((k + 1) * total) / (rests + 1))),
  )
  return items.flatMap((item, i): DayItem[] => (after.has(i) ? [item, rest] : [item]))
}

const rest: DayItem = {
  kind: 'rest',
  minutes: restMinutes,
  reason: { kind: 'rest' },
}

const sumTo = (items: readonly PlanItem[], last: number): number =>
  items.slice(0, last + 1).reduce((sum, { minutes }) => sum + minutes, 0)

const nearest = (values: readonly number[], to: number): number => {
  let best = -1
  for (const [i, value] of values.entries())
    if (best < 0 || Math.abs(value - to) < Math.abs((values[best] ?? 0) - to)) best = i
  return best
}
