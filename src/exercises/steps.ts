import type { Span } from './cutSpans'

export const thoroughnesses = ['thorough', 'brisk'] as const
/** Thorough meets each transition in three exercises at least, brisk in two. */
export type Thoroughness = (typeof thoroughnesses)[number]

export const exerciseKinds = ['group', 'bridge', 'pair', 'section', 'whole'] as const
/**
 * group: a few neighbouring onsets. bridge: the onsets around the join of two groups. pair: two
 * groups. section: four groups, eight, and so on. whole: the passage.
 */
export type ExerciseKind = (typeof exerciseKinds)[number]

/** Some onsets of a lane as an exercise. Steps of the same rank are practised side by side. */
export interface Step extends Span {
  readonly what: ExerciseKind
  /** Grows with the size of the exercises. */
  readonly rank: number
}

/** How often each transition between neighbouring onsets is met, where there are so many groups that hold it. */
export const leastMeetings = { thorough: 3, brisk: 2 } as const

/** Groups have their size as rank, 2 to 5. */
const ranks = { group: 5, bridge: 6, pair: 7, sections: 8, whole: 1000 } as const
/** Onsets to either side of a join that its bridge takes in: three would make a pair of it. */
const bridgeReach = 2
const sizesOfSlidingGroups = [3, 4] as const

/**
 * The steps from small groups to the whole of `count` onsets, which are cut into `groups`. None
 * twice. Thorough: groups of three and four that slide through each group and overlap, the groups
 * themselves, bridges, pairs that overlap, sections. Brisk: the groups, bridges, sections.
 */
export const stepsOf = (
  count: number,
  groups: readonly Span[],
  thoroughness: Thoroughness,
): readonly Step[] => {
  const whole: Step = { first: 0, last: count - 1, what: 'whole', rank: ranks.whole }
  if (count < 2) return count === 1 ? [whole] : []
  const steps = withoutTwins([
    whole,
    ...(thoroughness === 'thorough' ? sizesOfSlidingGroups.flatMap((n) => slide(groups, n)) : []),
    ...groups.map(group),
    ...bridges(groups),
    ...(thoroughness === 'thorough' ? unite(groups, 2, 1, 'pair', ranks.pair) : []),
    ...sections(groups),
  ])
  return fill(steps, count, leastMeetings[thoroughness]).map((step) => ranked(step, thoroughness))
}

/**
 * The steps of one hand that is to come together with the other. What is no larger than a group is
 * one, so that each hand has met each transition before both do. Brisk leaves sections to both hands.
 */
export const stepsOfOneHand = (
  count: number,
  groups: readonly Span[],
  thoroughness: Thoroughness,
): readonly Step[] =>
  stepsOf(count, groups, thoroughness)
    .map((step) =>
      step.what === 'whole' && count <= ranks.group ? ranked(group(step), thoroughness) : step,
    )
    .filter(({ what }) => thoroughness === 'thorough' || what !== 'section')

/** Brisk takes groups of all sizes side by side. */
const ranked = (step: Step, thoroughness: Thoroughness): Step =>
  step.what === 'group' && thoroughness === 'brisk' ? { ...step, rank: ranks.group } : step

const group = ({ first, last }: Span): Step => ({
  first,
  last,
  what: 'group',
  rank: last - first + 1,
})

/** Groups of `size` onsets through each group; the next begins where one ends, the last ends with the group. */
const slide = (groups: readonly Span[], size: number): Step[] =>
  groups.flatMap(({ first, last }) =>
    begins(last - first + 1, size, size - 1).map((begin) =>
      group({ first: first + begin, last: first + begin + size - 1 }),
    ),
  )

/** 0, stride, 2 * stride, ... and the last that fits: (6, 4, 3) -> 0, 2. None where there is no room. */
const begins = (count: number, size: number, stride: number): number[] => {
  if (count < size) return []
  const found: number[] = []
  for (let begin = 0; begin < count - size; begin += stride) found.push(begin)
  return [...found, count - size]
}

const bridges = (groups: readonly Span[]): Step[] =>
  groups.slice(0, -1).map(({ last }) => ({
    first: last - bridgeReach,
    last: last + bridgeReach,
    what: 'bridge',
    rank: ranks.bridge,
  }))

/** So many neighbouring groups as one, each begun so many groups after the last. */
const unite = (
  groups: readonly Span[],
  size: number,
  stride: number,
  what: ExerciseKind,
  rank: number,
): Step[] =>
  begins(groups.length, size, stride).flatMap((begin) => {
    const [first, last] = [groups[begin], groups[begin + size - 1]]
    return first && last ? [{ first: first.first, last: last.last, what, rank }] : []
  })

/** Four groups, eight, sixteen, as long as the whole is twice as long: more would be the whole but for a few notes. */
const sections = (groups: readonly Span[]): Step[] => {
  const found: Step[] = []
  for (let size = 4; 2 * size <= groups.length; size *= 2)
    found.push(...unite(groups, size, size, 'section', ranks.sections + size))
  return found
}

/** Of the same onsets the first stays; what is found as the whole, too, is the whole. */
const withoutTwins = (steps: readonly Step[]): readonly Step[] => [
  ...new Map(steps.toReversed().map((step) => [`${step.first}-${step.last}`, step])).values(),
]

/** Transition i leads from onset i to the next. */
const meets = ({ first, last }: Span, transition: number): boolean =>
  first <= transition && last > transition

/**
 * Adds the groups that short passages lack: while a transition is met too seldom, the group, of three
 * first, of two last, that meets most of those. Three onsets have no third group.
 */
const fill = (steps: readonly Step[], count: number, least: number): readonly Step[] => {
  const all = [...steps]
  const lacking = (): number[] =>
    Array.from({ length: count - 1 }, (_, i) => i).filter(
      (i) => all.filter((step) => meets(step, i)).length < least,
    )
  const spare = [3, 4, 5, 2].flatMap((size) =>
    begins(count, size, 1).map((first) => group({ first, last: first + size - 1 })),
  )
  for (let seldom = lacking(); seldom.length > 0; seldom = lacking()) {
    const useful = spare
      .filter((each) => !all.some(({ first, last }) => first === each.first && last === each.last))
      .map((each) => ({ each, worth: seldom.filter((i) => meets(each, i)).length }))
      .filter(({ worth }) => worth > 0)
    const size = useful[0] && useful[0].each.rank
    const best = useful
      .filter(({ each }) => each.rank === size)
      .toSorted((a, b) => b.worth - a.worth)[0]
    if (!best) break
    all.push(best.each)
  }
  return all
}
