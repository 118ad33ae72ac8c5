import type { HandChoice, Score } from '@/music/music'
import type { Tick } from '@/music/units'
import { borderCost } from './border'
import { cutSpans, type Span } from './cutSpans'
import { notesIn, onsetsOf } from './onsets'

/** What one hand, or both together, have to play in a passage. */
export interface Lane {
  readonly hand: HandChoice
  /** The starts of its onsets. */
  readonly onsets: readonly Tick[]
  /** The smallest groups that end on a beat where they can; each shares an onset with the next. */
  readonly groups: readonly Span[]
}

/** Where the fingering moves the hand: the onsets that begin a new position. */
export interface PositionChanges {
  readonly right?: readonly Tick[]
  readonly left?: readonly Tick[]
}

/**
 * Three onsets are the least that has an inner transition; five are a beat of sixteenths, or half a
 * bar of eighths, with the note that it leads to, and as much as is held in view at once.
 */
const groupSizes = { least: 3, most: 5, ideal: 5 } as const
/** Dearer than any detour: a border falls where the hand moves, if a group still has three onsets. */
const positionWorth = 1000

export const laneOf = (
  score: Score,
  { from, to }: { readonly from: Tick; readonly to: Tick },
  hand: HandChoice,
  changes: PositionChanges,
): Lane => {
  const onsets = onsetsOf(notesIn(score, from, to, hand))
  const moves = new Set(
    hand === 'both' ? [...(changes.right ?? []), ...(changes.left ?? [])] : changes[hand],
  )
  const costs = onsets.map(
    (onset) => borderCost(onset, score) - (moves.has(onset.start) ? positionWorth : 0),
  )
  return {
    hand,
    onsets: onsets.map(({ start }) => start),
    groups: cutSpans(costs, groupSizes),
  }
}
