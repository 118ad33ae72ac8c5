import { formatRoute, type Route } from '@/app/route'
import type { HandChoice } from '@/music/music'
import type { PlacePlan } from '@/plan/plan'
import { isSettled } from './planWords'

/** To the build-up of a place, or of one hand of it; a join, and what is secure, is played as a whole. */
export const hrefOf = (
  { piece, kind, state, place: { from, to, hand: own } }: PlacePlan,
  hand: HandChoice = own,
): string => {
  const place = { from, to, hand }
  const isWhole = kind === 'join' || isSettled({ state })
  const route: Route = isWhole
    ? { kind: 'practice', piece, place }
    : {
        kind: 'buildUp',
        piece,
        plan: { passage: place, thoroughness: 'brisk', direction: 'forward' },
      }
  return formatRoute(route)
}
