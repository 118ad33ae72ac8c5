import type { HandChoice } from '@/music/music'
import type { Tick } from '@/music/units'
import type { Beat } from './beats'
import {
  features,
  pointsIn,
  scalePoints,
  sumOfPoints,
  sumPoints,
  type Feature,
  type Points,
} from './load'
import { findStretches, type BeatStretch } from './stretches'

/** The points a second of one beat. */
export interface BeatLoad {
  readonly beat: Beat
  readonly right: Points
  readonly left: Points
  /** Of both hands, with what comes on top where they play together. */
  readonly both: Points
}

/** A stretch that stands out of the piece, of one hand or both. */
export interface Spot {
  readonly from: Tick
  /** Where its last beat ends. */
  readonly to: Tick
  readonly hand: HandChoice
  /** Its highest points a second. */
  readonly difficulty: number
  /** What makes it hard, above what one is used to from the piece; the most first. */
  readonly causes: readonly Feature[]
  /** Something in it tires or strains the hand: stretches, octaves among them, trills, repetitions. */
  readonly strains: boolean
}

/** A spot is one hand's where this much of its difficulty is. */
const mostlyOneHand = 0.7
/** A hand's own spot counts where it is this hard, measured at the hardest beats of both hands. */
const worthOneHand = 0.6
/** Of what there is throughout the piece, half is passed over: one is used to it. */
const passedOver = 0.5
/** What makes less of the difficulty is no reason. */
const leastCause = 0.1
/** No more reasons than these are kept in mind. */
const mostCauses = 4

const straining: readonly Feature[] = ['stretch', 'trill', 'repeats']

/** The hard spots of a piece, the hardest first. */
export const findSpots = (loads: readonly BeatLoad[]): readonly Spot[] => {
  const usual = {
    right: meanPoints(loads, 'right'),
    left: meanPoints(loads, 'left'),
    both: meanPoints(loads, 'both'),
  }
  const spot = (stretch: BeatStretch, hand: HandChoice): Spot =>
    spotOf(loads, stretch, hand, usual[hand])
  const both = findStretches(loads.map((load) => sumOfPoints(load.both)))
  const named = both.map((stretch) => spot(stretch, handOf(loads, stretch)))
  const least = worthOneHand * Math.min(...both.map(({ peak }) => peak))
  const single = (['right', 'left'] as const).flatMap((hand) =>
    findStretches(loads.map((load) => sumOfPoints(load[hand])))
      .filter(({ peak }) => peak >= least)
      .map((stretch) => spot(stretch, hand))
      .filter((one) => !named.some((other) => isWithin(one, other))),
  )
  return [...named, ...single].toSorted((a, b) => b.difficulty - a.difficulty || a.from - b.from)
}

const meanPoints = (loads: readonly BeatLoad[], hand: HandChoice): Points =>
  scalePoints(sumPoints(loads.map((load) => load[hand])), 1 / loads.length)

const within = (loads: readonly BeatLoad[], { from, to }: BeatStretch): readonly BeatLoad[] =>
  loads.slice(from, to + 1)

const handOf = (loads: readonly BeatLoad[], stretch: BeatStretch): HandChoice => {
  const sum = (hand: HandChoice): number => sumOfPoints(meanPoints(within(loads, stretch), hand))
  const whole = sum('both')
  if (sum('right') >= mostlyOneHand * whole) return 'right'
  return sum('left') >= mostlyOneHand * whole ? 'left' : 'both'
}

const spotOf = (
  loads: readonly BeatLoad[],
  stretch: BeatStretch,
  hand: HandChoice,
  usual: Points,
): Spot => {
  const inside = within(loads, stretch)
  const [first, last] = [inside[0], inside.at(-1)]
  if (!first || !last) throw new Error('a stretch has at least one beat')
  const causes = causesOf(meanPoints(inside, hand), usual)
  return {
    from: first.beat.start,
    to: last.beat.end,
    hand,
    difficulty: stretch.peak,
    causes: causes.slice(0, mostCauses),
    strains: causes.some((cause) => straining.includes(cause)),
  }
}

const causesOf = (here: Points, usual: Points): readonly Feature[] => {
  const excess = (feature: Feature): number =>
    pointsIn(here, feature) - passedOver * pointsIn(usual, feature)
  const whole = features.reduce((sum, feature) => sum + Math.max(0, excess(feature)), 0)
  return features
    .filter((feature) => excess(feature) > 0 && excess(feature) >= leastCause * whole)
    .toSorted((a, b) => excess(b) - excess(a))
}

/** At least half of it. */
const isWithin = (spot: Spot, other: Spot): boolean => {
  const common = Math.min(spot.to, other.to) - Math.max(spot.from, other.from)
  return 2 * common >= spot.to - spot.from
}
