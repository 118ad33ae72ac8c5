import type { Bar, HandChoice } from '@/music/music'
import type { PiecePlan, PlacePlan, PlaceState } from '@/plan/plan'
import { isSettled, stateRank } from './planWords'

/** A row of the picture: what each hand can, both together, and what is practised apart. */
export const lanes = ['spot', 'right', 'left', 'both', 'join'] as const
export type Lane = (typeof lanes)[number]

/** A stretch of a lane, by the indices of its bars. */
export interface Segment {
  readonly lane: Lane
  readonly place: PlacePlan
  readonly hand: HandChoice
  readonly from: number
  readonly to: number
  readonly state: PlaceState
  /** Of what is practised: how much of its exercises is done. */
  readonly share: number
}

/** Every place of a piece as stretches; where both hands play, each hand stands apart too. */
export const segmentsOf = ({ places }: PiecePlan, bars: readonly Bar[]): readonly Segment[] =>
  places.flatMap((place) => {
    const [first, last] = [place.bars[0], place.bars.at(-1)]
    const at = (bar: Bar | undefined): number =>
      Math.max(
        0,
        bars.findIndex(({ start }) => start === bar?.start),
      )
    const own = place.place.hand
    const share = place.exercises.length === 0 ? 0 : place.done.length / place.exercises.length
    const whole = { place, hand: own, from: at(first), to: at(last), state: place.state, share }
    if (place.kind !== 'passage') return [{ ...whole, lane: place.kind }]
    const { hands } = place
    if (!hands) return [{ ...whole, lane: own }]
    return [
      ...(['right', 'left'] as const).map((hand): Segment => {
        const state = atLeast(hands[hand], place.state)
        return { ...whole, lane: hand, hand, state, share: shareOf(place, hand) }
      }),
      { ...whole, lane: 'both' },
    ]
  })

/** Whose hands are secure together has each; both may be begun by one of them. */
const atLeast = (hand: PlaceState, both: PlaceState): PlaceState =>
  isSettled({ state: both }) && stateRank[both] > stateRank[hand] ? both : hand

const shareOf = ({ exercises, done }: PlacePlan, hand: HandChoice): number => {
  const of = (all: typeof exercises): number => all.filter((each) => each.hand === hand).length
  return of(exercises) === 0 ? 0 : of(done) / of(exercises)
}

/** A piece in lines of bars, as even as fours allow. */
export const linesOf = (bars: number, most: number): readonly (readonly [number, number])[] => {
  const fewest = Math.max(1, Math.ceil(bars / most))
  const per = fewest === 1 ? bars : Math.min(most, Math.ceil(bars / fewest / 4) * 4)
  const count = Math.max(1, Math.ceil(bars / per))
  return Array.from({ length: count }, (_, i) => [i * per, Math.min(bars, (i + 1) * per) - 1])
}

/** Stretches of one lane that overlap stand below one another: the row of each, from 0. */
export const rowsOf = (segments: readonly Segment[]): ReadonlyMap<Segment, number> => {
  const ends: number[] = []
  const rows = new Map<Segment, number>()
  for (const segment of segments.toSorted((a, b) => a.from - b.from || a.to - b.to)) {
    const free = ends.findIndex((end) => end < segment.from)
    const row = free < 0 ? ends.length : free
    ends[row] = segment.to
    rows.set(segment, row)
  }
  return rows
}

/** How many bars stand in which state, both hands together; a bar that one hand plays alone counts by that hand. */
export const countBars = (
  segments: readonly Segment[],
  bars: number,
): ReadonlyMap<PlaceState, number> => {
  const counts = new Map<PlaceState, number>()
  for (let bar = 0; bar < bars; bar++) {
    const here = segments.filter(({ from, to }) => from <= bar && to >= bar)
    const told =
      here.find(({ lane }) => lane === 'both') ?? here.find(({ place }) => place.kind === 'passage')
    if (told) counts.set(told.state, (counts.get(told.state) ?? 0) + 1)
  }
  return counts
}
