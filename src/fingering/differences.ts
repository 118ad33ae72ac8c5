import type { Rule } from './rules'
import type { Weighed } from './weighing'

/** What a pianist says of a rule or a few of them, and the least difference worth a word. */
interface Aspect {
  readonly words: string
  readonly measure: (weighed: Weighed) => number
}

const sumRules =
  (...rules: readonly Rule[]) =>
  ({ costs }: Weighed): number =>
    rules.reduce((sum, rule) => sum + (costs[rule] ?? 0), 0)

const aspects: readonly Aspect[] = [
  {
    words: 'crosses the thumb',
    measure: ({ onsets }) => onsets.filter(({ thumbPassing }) => thumbPassing > 0).length,
  },
  { words: 'stretches', measure: sumRules('stretch', 'largeSpan', 'beyond') },
  { words: 'moves the hand', measure: sumRules('positionCount', 'positionSize', 'move') },
  {
    words: 'uses the weak fingers',
    measure: sumRules('weakFinger', 'threeFourFive', 'threeToFour', 'fourOnBlack'),
  },
  {
    words: 'puts thumb and little finger on black keys',
    measure: sumRules('thumbOnBlack', 'fiveOnBlack'),
  },
  { words: 'changes fingers', measure: sumRules('change') },
  { words: 'draws the fingers together', measure: sumRules('smallSpan') },
]

/** No more than this is taken in at a glance. */
const mostWords = 3

/** How a fingering differs from another: 'crosses the thumb less, stretches more'. */
export const describeDifference = (weighed: Weighed, than: Weighed): string => {
  const differences = aspects
    .map(({ words, measure }) => ({ words, by: measure(weighed) - measure(than) }))
    .filter(({ by }) => Math.abs(by) >= 0.5)
    .toSorted((a, b) => Math.abs(b.by) - Math.abs(a.by))
    .slice(0, mostWords)
  const said = (more: boolean): string[] =>
    differences
      .filter(({ by }) => by > 0 === more)
      .map(({ words }) => `${words} ${more ? 'more' : 'less'}`)
  const all = [...said(false), ...said(true)]
  return all.length > 0 ? all.join(', ') : 'costs the hand the same'
}
