import type { Finger } from '@/music/music'
import { mostKeys, type Digits, type Grip } from './grips'
import type { Touch } from './rules'

/** A grip with a finger on each of its keys, in their order. */
export type Hold = readonly Touch[]

/** The grip taken with these digits. */
export const holdOf = ({ keys }: Grip, digits: Digits): Hold =>
  keys.map(({ place, black }, i) => ({ place, black, finger: digits[i] ?? 5 }))

/** Every way to finger a grip, fixed digits kept; from the thumb's side to the little finger's where that is possible. */
export const candidatesOf = (grip: Grip): readonly Digits[] => {
  const ways = ascending(grip.keys.length)
  if (!grip.keys.some(({ fixed }) => fixed !== undefined)) return ways
  const kept = ways.filter((digits) => keepsFixed(grip, digits))
  if (kept.length > 0) return kept
  // The given digits cross, as where a thumb is held and a finger goes over it.
  const crossed = orders(grip.keys.length).filter((digits) => keepsFixed(grip, digits))
  return crossed.length > 0 ? crossed : [asGiven(grip)]
}

const keepsFixed = ({ keys }: Grip, digits: Digits): boolean =>
  keys.every(({ fixed }, i) => fixed === undefined || digits[i] === fixed)

const fingers: readonly Finger[] = [1, 2, 3, 4, 5]

const choose = (count: number, from: readonly Finger[]): readonly Digits[] =>
  count === 0
    ? [[]]
    : from.flatMap((finger, i) =>
        choose(count - 1, from.slice(i + 1)).map((rest) => [finger, ...rest]),
      )

const arrange = (count: number, from: readonly Finger[]): readonly Digits[] =>
  count === 0
    ? [[]]
    : from.flatMap((finger) =>
        arrange(
          count - 1,
          from.filter((other) => other !== finger),
        ).map((rest) => [finger, ...rest]),
      )

const allAscending = [0, 1, 2, 3, 4, 5].map((count) => choose(count, fingers))
const allOrders = [0, 1, 2, 3, 4, 5].map((count) => arrange(count, fingers))

/** With more keys than fingers the thumb takes all that are left over. */
const ascending = (count: number): readonly Digits[] =>
  allAscending[count] ?? [withThumbs(count - mostKeys)]

const orders = (count: number): readonly Digits[] => allOrders[count] ?? []

const withThumbs = (more: number): Digits => [
  ...Array.from({ length: more }, (): Finger => 1),
  ...fingers,
]

/** One finger on two keys, or the like: the given digits as they are, the others in their usual order. */
const asGiven = ({ keys }: Grip): Digits =>
  keys.map(({ fixed }, i) => fixed ?? fingers[Math.min(i, mostKeys - 1)] ?? 5)
