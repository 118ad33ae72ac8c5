import type { FingeringText } from '@/text/fingering'
import type { Told } from '@/text/told'
import type { Rule } from './rules'
import type { Weighed } from './weighing'

/** In one thing, more or less of it. */
type Differing = Told<FingeringText['differences']>
/** How a fingering differs from another; nothing: both cost the same. `tellDifference` (text/fingering.ts) says it. */
export type Difference = readonly Differing[]

/** What a pianist says of a rule or a few of them. */
interface Aspect {
  readonly kind: Differing['kind']
  readonly measure: (weighed: Weighed) => number
}

const sumRules =
  (...rules: readonly Rule[]) =>
  ({ costs }: Weighed): number =>
    rules.reduce((sum, rule) => sum + (costs[rule] ?? 0), 0)

const aspects: readonly Aspect[] = [
  {
    kind: 'thumb',
    measure: ({ onsets }) => onsets.filter(({ thumbPassing }) => thumbPassing > 0).length,
  },
  { kind: 'stretch', measure: sumRules('stretch', 'largeSpan', 'beyond') },
  { kind: 'move', measure: sumRules('positionCount', 'positionSize', 'move') },
  { kind: 'weak', measure: sumRules('weakFinger', 'threeFourFive', 'threeToFour', 'fourOnBlack') },
  { kind: 'black', measure: sumRules('thumbOnBlack', 'fiveOnBlack') },
  { kind: 'change', measure: sumRules('change') },
  { kind: 'close', measure: sumRules('smallSpan') },
]

/** Less is not worth a word. */
const leastDifference = 0.5
/** No more than this is taken in at a glance. */
const mostDifferences = 3

/** What there is less of first: 'crosses the thumb less, stretches more'. */
export const differenceOf = (weighed: Weighed, than: Weighed): Difference => {
  const all = aspects
    .map(({ kind, measure }) => ({ kind, by: measure(weighed) - measure(than) }))
    .filter(({ by }) => Math.abs(by) >= leastDifference)
    .toSorted((a, b) => Math.abs(b.by) - Math.abs(a.by))
    .slice(0, mostDifferences)
    .map(({ kind, by }): Differing => ({ kind, more: by > 0 }))
  return [...all.filter(({ more }) => !more), ...all.filter(({ more }) => more)]
}
