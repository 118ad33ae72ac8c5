import type { PieceDecision } from '@/journal/words'
import { checkIntervals, type Check } from './due'
import type { PlanPlace } from './layOut'

/**
 * Whether a piece is at work; or done, and only played cold now and then, so that it is not lost; or laid
 * aside, and not planned at all.
 */
export type Standing = 'atWork' | 'inRotation' | 'laidAside'

interface Checked extends Pick<PlanPlace, 'kind'> {
  readonly state: string
  readonly check?: Check
}

const longestInterval = Math.max(...checkIntervals)

/** The person's word; without one a piece is done when every place has come to the longest interval. */
export const standingOf = (
  places: readonly Checked[],
  decision: PieceDecision | undefined,
): Standing => {
  switch (decision) {
    case 'laidAside':
      return 'laidAside'
    case 'finished':
      return 'inRotation'
    case 'takenUp':
    case undefined:
      return places.length > 0 && places.every(isAtItsLongest) ? 'inRotation' : 'atWork'
  }
}

const isAtItsLongest = ({ state, check }: Checked): boolean =>
  state === 'kept' && check?.interval === longestInterval

/**
 * When a place of a piece in rotation is due: a passage at the longest interval, since spots and joins
 * lie in passages; what slipped as the day rule has it. Of a piece without passages, every place.
 */
export const checkInRotation = (place: Checked, all: readonly Checked[]): Check | undefined => {
  const { check, kind, state } = place
  if (!check || state === 'slipped') return check
  if (kind !== 'passage' && all.some((each) => each.kind === 'passage')) return undefined
  return { ...check, interval: longestInterval }
}
