import type { Mark } from './flaw'
import type { Ground } from './ground'
import type { Finding } from './finding'
import { nameMarks, type NamedMark } from './naming'
import type { Reading, Step } from './reading'
import * as limit from './thresholds'

/** The marks that the page shows now, the latest last. */
export type Shown = readonly NamedMark[]

/** So many of the latest shown marks are remembered; older ones no longer change. */
const memory = 32

/** What changes on the page when `now` is believed after `before` was. */
export const showMarks = (
  ground: Ground,
  shown: Shown,
  before: Reading | undefined,
  now: Reading,
  readings: readonly Reading[],
  first: number,
): readonly [Shown, readonly Finding[]] => {
  const from = Math.max(0, Math.min(now.top, changedFrom(before, now)) - limit.openOnsets + 1)
  const steps = stepsBackTo(now, from)
  const latest = now.step?.strike
  const named = nameMarks({
    ground,
    first,
    steps,
    from,
    to: now.top,
    isDue: (onset) => isSurelyOver(now, onset, latest?.at ?? 0),
  })
  const doubtful = named.some(isFalse) ? doubtfulStrikes(now, readings) : new Set<number>()
  const sure = named.filter((n) => {
    const index = 'played' in n.mark ? n.mark.played?.index : undefined
    return !isFalse(n) || index === undefined || !doubtful.has(first + index)
  })
  const oldest = (steps[0]?.strike.number ?? first) - first
  return difference(shown, sure, from, oldest)
}

/** The lowest onset whose marks may differ between two readings. */
const changedFrom = (before: Reading | undefined, now: Reading): number => {
  let a = before?.step
  let b = now.step
  let lowest = now.top
  while (a !== b && (a || b)) {
    const number = Math.max(a?.strike.number ?? -1, b?.strike.number ?? -1)
    if (a && a.strike.number === number) {
      lowest = Math.min(lowest, a.onset < 0 ? lowest : a.onset)
      a = a.before
    }
    if (b && b.strike.number === number) {
      lowest = Math.min(lowest, b.onset < 0 ? lowest : b.onset)
      b = b.before
    }
  }
  return lowest
}

/** The steps that can touch onsets from `from` on, back to where the player last went back. */
const stepsBackTo = (reading: Reading, from: number): Step[] => {
  const steps: Step[] = []
  for (let step = reading.step; step && step.top >= from; step = step.before) {
    steps.push(step)
    if (step.back) break
  }
  return steps.reverse()
}

/** A lacking note is shown only when it can no longer come in time. */
const isSurelyOver = (now: Reading, onset: number, at: number): boolean => {
  const back = now.top - onset
  if (back <= 0 || onset < now.low) return false
  if (back >= limit.openOnsets) return true
  const next = now.open[back - 1]?.at ?? now.open[0]?.at
  return next !== undefined && at - next > limit.stragglerLeast
}

/** Strikes that some reading nearly as good takes for right: they are not shown as false. */
const doubtfulStrikes = (now: Reading, readings: readonly Reading[]): ReadonlySet<number> => {
  const doubtful = new Set<number>()
  for (const reading of readings) {
    if (reading === now || reading.cost > now.cost + limit.benefitOfDoubt) continue
    let step = reading.step
    for (let i = 0; step && i < doubtReach; i++) {
      if (step.act === 'note' && !step.late) doubtful.add(step.strike.number)
      step = step.before
    }
  }
  return doubtful
}

/** Doubt is over after this many further keys. */
const doubtReach = 12

const isFalse = ({ mark }: NamedMark): boolean => mark.kind !== 'right' && mark.kind !== 'missing'

const difference = (
  shown: Shown,
  named: readonly NamedMark[],
  from: number,
  oldest: number,
): readonly [Shown, readonly Finding[]] => {
  const fresh = named.filter(({ slot, mark }) => {
    const old = shown.find((s) => s.slot === slot)
    return !old || !isSameMark(old.mark, mark)
  })
  const gone = shown.filter(
    ({ slot, mark }) => isCovered(mark, from, oldest) && !named.some((n) => n.slot === slot),
  )
  if (fresh.length === 0 && gone.length === 0) return [shown, []]
  const isStale = (slot: string): boolean =>
    gone.some((g) => g.slot === slot) || fresh.some((f) => f.slot === slot)
  const next = [...shown.filter((s) => !isStale(s.slot)), ...fresh].slice(-memory)
  const unmarks = gone.map(({ slot }) => ({ kind: 'unmark' as const, slot }))
  return [next, [...unmarks, ...fresh.map((f) => ({ kind: 'mark' as const, ...f }))]]
}

/** The mark belongs to what was named anew, so that its absence there means that it is gone. */
const isCovered = (mark: Mark, from: number, oldest: number): boolean => {
  const played = 'played' in mark ? mark.played : undefined
  return mark.onset >= from && (!played || played.index >= oldest)
}

const isSameMark = (a: Mark, b: Mark): boolean =>
  a.kind === b.kind && a.onset === b.onset && a.expected?.key === b.expected?.key
