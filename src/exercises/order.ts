import type { HandChoice } from '@/music/music'
import type { Tick } from '@/music/units'

export const directions = ['forward', 'fromTheEnd'] as const
export type Direction = (typeof directions)[number]

/** What the order is made of. */
interface Placed {
  readonly hand: HandChoice
  readonly from: Tick
  readonly to: Tick
  readonly rank: number
}

/**
 * Stage by stage, in the order of the score or from the end; both hands come as soon as each hand has
 * been through all groups of the stage that share a step with theirs.
 */
export const inOrder = <T extends Placed>(
  drafts: readonly T[],
  direction: Direction,
): readonly T[] => {
  const ranks = [...new Set(drafts.map(({ rank }) => rank))].toSorted((a, b) => a - b)
  return ranks.flatMap((rank) =>
    orderStage(
      drafts.filter((each) => each.rank === rank),
      direction,
    ),
  )
}

const orderStage = <T extends Placed>(drafts: readonly T[], direction: Direction): readonly T[] => {
  const along = (a: Placed, b: Placed): number =>
    direction === 'forward' ? a.from - b.from || a.to - b.to : b.to - a.to || b.from - a.from
  const isTogether = drafts.some(({ hand }) => hand !== 'both')
  if (!isTogether) return drafts.toSorted(along)
  const alone = drafts
    .filter(({ hand }) => hand !== 'both')
    .toSorted((a, b) => along(a, b) || rightFirst(a) - rightFirst(b))
  const both = drafts.filter(({ hand }) => hand === 'both').toSorted(along)
  const due = both.map((each) => ({
    each,
    after: alone.findLastIndex((one) => sharesStep(one, each) || along(one, each) <= 0),
  }))
  return [
    ...due.filter(({ after }) => after < 0).map(({ each }) => each),
    ...alone.flatMap((one, i) => [
      one,
      ...due.filter(({ after }) => after === i).map(({ each }) => each),
    ]),
  ]
}

const rightFirst = ({ hand }: Placed): number => (hand === 'right' ? 0 : 1)

const sharesStep = (one: Placed, other: Placed): boolean =>
  one.from < other.to && other.from < one.to
