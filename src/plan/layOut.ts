import { mergeReasons, type Reason } from '@/difficulty/reasons'
import { buildUp, type Exercise } from '@/exercises/buildUp'
import type { RecordedPlace } from '@/journal/journal'
import { recordPlace } from '@/journal/record'
import { cutChunk, type Chunk } from '@/music/chunk'
import type { Bar, HandChoice, Score } from '@/music/music'
import { msAt, tempoAt } from '@/music/tempoMap'
import { tick, type ChunkId, type PieceId, type Tempo, type Tick } from '@/music/units'
import { proposePassages, type Stretch } from './passages'
import { motionOf, type Motion } from './similar'

/** A hard spot as the analysis finds it, or the person says. */
export interface Spot extends Stretch {
  readonly hand: HandChoice
  readonly reasons: readonly Reason[]
  /** Where the person put it among the others: the lowest is first. */
  readonly rank?: number
}

/** What the plan leads to secure and kept. */
export interface PlanPlace {
  readonly id: ChunkId
  readonly piece: PieceId
  readonly kind: 'spot' | 'passage' | 'join'
  readonly chunk: Chunk
  readonly place: RecordedPlace
  /** Its first and last onset. */
  readonly from: Tick
  readonly to: Tick
  /** Points a second. */
  readonly difficulty: number
  readonly reasons: readonly Reason[]
  /** Where the person's own flaws pile up in it: in so many of so many repetitions. */
  readonly played?: { readonly flawed: number; readonly of: number }
  /** That of a spot, or of the first spot in a passage, where the person put them in order. */
  readonly rank?: number
  /** The places that come before it: it is ready when they are secure. */
  readonly parts: readonly ChunkId[]
  readonly exercises: readonly Exercise[]
  readonly motion: Motion
  /** The bars that it stands in. */
  readonly bars: readonly Bar[]
}

/** A piece cut into places, without any record. */
export interface PieceLayout {
  readonly piece: PieceId
  readonly title: string
  readonly goalTempo: Tempo
  /** In the order of practice. */
  readonly places: readonly PlanPlace[]
  /** All of it, for a run-through, with the ticks of its onsets, and how long that takes. */
  readonly whole?: {
    readonly chunk: ChunkId
    readonly place: RecordedPlace
    readonly starts: readonly Tick[]
  }
  readonly minutes: number
  /** Of the piece. */
  readonly difficulty: number
  readonly uncertainty: number
}

export interface Analysis {
  readonly spots: readonly Spot[]
  readonly difficulty: number
  /** How far that may be off. */
  readonly uncertainty: number
  /** Points a second of a stretch, for comparing places. */
  readonly difficultyIn: (stretch: Stretch) => number
}

export interface LayoutChoices {
  /** Quarters a minute; as the score says where it is left out. */
  readonly goalTempo?: Tempo
  /** The passages that the person chose, in the order of the score; proposed where left out. */
  readonly passages?: readonly Stretch[]
}

/** Cuts a piece into places and puts them in order. */
export const layOutPiece = (
  score: Score,
  { spots, difficulty, uncertainty, difficultyIn }: Analysis,
  {
    goalTempo = tempoAt(score.tempos, tick(0)),
    passages = proposePassages(score),
  }: LayoutChoices = {},
): PieceLayout => {
  const make = (kind: PlanPlace['kind'], stretch: Stretch, more: More = {}): PlanPlace[] =>
    placeOf(score, kind, stretch, difficultyIn(stretch), more)
  const hard = withoutTwins(
    spots.flatMap(({ from, to, ...spot }) => make('spot', { from, to }, spot)),
  ).filter((spot) => !passages.some((passage) => isMostOf(spot, passage)))
  const bodies = passages.flatMap((passage) => {
    const inside = hard.filter(({ from, to }) => from < passage.to && to >= passage.from)
    const within = spots.filter((spot) => overlaps(spot, passage))
    const reasons = within.flatMap((spot) => spot.reasons)
    const ranks = within.flatMap(({ rank }) => rank ?? [])
    return make('passage', passage, {
      parts: inside.map(({ id }) => id),
      reasons: mergeReasons(reasons),
      ...(ranks.length > 0 ? { rank: Math.min(...ranks) } : {}),
    })
  })
  const joins = bodies.slice(1).flatMap((after, i) => {
    const before = bodies[i]
    return before
      ? make('join', joinOf(score, before, after), { parts: [before.id, after.id] })
      : []
  })
  const whole = cutChunk(score, tick(0), score.end, 'both')
  return {
    piece: score.id,
    title: score.title,
    goalTempo,
    places: orderPlaces([...hard, ...bodies, ...withoutTwins(joins, [...hard, ...bodies])]),
    ...(whole ? { whole: wholeOf(score, whole) } : {}),
    minutes: lengthAt(score, goalTempo),
    difficulty,
    uncertainty,
  }
}

interface More {
  readonly hand?: HandChoice
  readonly reasons?: readonly Reason[]
  readonly rank?: number
  readonly parts?: readonly ChunkId[]
}

const placeOf = (
  score: Score,
  kind: PlanPlace['kind'],
  { from, to }: Stretch,
  difficulty: number,
  { hand = 'both', reasons = [], rank, parts = [] }: More,
): PlanPlace[] => {
  const plays = (['right', 'left'] as const).filter((one) => cutChunk(score, from, to, one))
  // Where one hand rests throughout, the other plays alone.
  const chosen = hand === 'both' && plays.length === 1 && plays[0] ? plays[0] : hand
  const chunk = cutChunk(score, from, to, chosen)
  if (!chunk) return []
  const last = tick(chunk.start + (chunk.onsets.at(-1)?.start ?? 0))
  const options = { hand: chosen, thoroughness: 'brisk', direction: 'forward' } as const
  const exercises = buildUp(score, { from: chunk.start, to: tick(last + 1) }, options)
  return [
    {
      id: chunk.id,
      piece: score.id,
      kind,
      chunk,
      place: recorded(score, chunk),
      from: chunk.start,
      to: last,
      difficulty,
      reasons,
      ...(rank === undefined ? {} : { rank }),
      parts,
      // The parts of a join are known: it is played whole.
      exercises: kind === 'join' ? exercises.slice(-1) : exercises,
      motion: motionOf(chunk),
      bars: score.bars.filter(({ start, length }) => start <= last && start + length > chunk.start),
    },
  ]
}

const wholeOf = (score: Score, whole: Chunk): NonNullable<PieceLayout['whole']> => ({
  chunk: whole.id,
  place: recorded(score, whole),
  starts: whole.onsets.map(({ start }) => tick(whole.start + start)),
})

const recorded = ({ bars }: Score, chunk: Chunk): RecordedPlace => {
  const last = chunk.start + (chunk.onsets.at(-1)?.start ?? 0)
  return recordPlace(chunk, barAt(bars, chunk.start), barAt(bars, last))
}

/** The number of the bar in which a tick lies. */
export const barAt = (bars: readonly Bar[], at: number): number =>
  bars.findLast(({ start }) => start <= at)?.number ?? 1

const overlaps = (one: Stretch, other: Stretch): boolean =>
  one.from < other.to && other.from < one.to

/** A spot of this much of a passage is the passage. */
const mostOfPassage = 0.7

const isMostOf = (spot: PlanPlace, { from, to }: Stretch): boolean =>
  Math.min(spot.to, to) - Math.max(spot.from, from) >= mostOfPassage * (to - from)

/** The last bar of one and the first of the other. */
const joinOf = ({ bars, end }: Score, before: PlanPlace, after: PlanPlace): Stretch => {
  const last = bars.findLast(({ start }) => start <= before.to)
  const next = bars.findLast(({ start }) => start <= after.from)
  return {
    from: tick(Math.max(before.from, last?.start ?? before.from)),
    to: next ? tick(next.start + next.length) : end,
  }
}

/**
 * As the person ranked the spots, then the passages with the hardest spots first; a spot before its
 * passage, a join as soon as both its passages have come.
 */
export const orderPlaces = (
  places: readonly PlanPlace[],
  difficultyOf = ({ difficulty }: PlanPlace): number => difficulty,
): readonly PlanPlace[] => {
  const of = (kind: PlanPlace['kind']): readonly PlanPlace[] =>
    places.filter((place) => place.kind === kind)
  const hardestFirst = (a: PlanPlace, b: PlanPlace): number =>
    difficultyOf(b) - difficultyOf(a) || a.from - b.from
  const spotsOf = ({ parts }: PlanPlace): readonly PlanPlace[] =>
    of('spot')
      .filter(({ id }) => parts.includes(id))
      .toSorted((a, b) => byRank(a, b) || hardestFirst(a, b))
  const peak = (passage: PlanPlace): number =>
    Math.max(...[passage, ...spotsOf(passage)].map(difficultyOf))
  const ordered: PlanPlace[] = []
  const add = (place: PlanPlace): void => {
    if (!ordered.includes(place)) ordered.push(place)
  }
  for (const passage of of('passage').toSorted(
    (a, b) => byRank(a, b) || peak(b) - peak(a) || a.from - b.from,
  )) {
    spotsOf(passage).forEach(add)
    add(passage)
    of('join')
      .filter(({ parts }) => parts.every((part) => ordered.some(({ id }) => id === part)))
      .forEach(add)
  }
  return ordered
}

/** What the person ranked comes first. */
const byRank = ({ rank: one }: PlanPlace, { rank: other }: PlanPlace): number =>
  one === other ? 0 : (one ?? Infinity) - (other ?? Infinity)

const withoutTwins = (
  places: readonly PlanPlace[],
  others: readonly PlanPlace[] = [],
): readonly PlanPlace[] =>
  places.filter(
    ({ id }, i) =>
      !others.some((other) => other.id === id) && places.findIndex((each) => each.id === id) === i,
  )

/** At the goal tempo; later changes of the tempo keep their proportion. */
const lengthAt = ({ tempos, ticksPerQuarter, end }: Score, goalTempo: Tempo): number =>
  (msAt(tempos, ticksPerQuarter, end) * (tempoAt(tempos, tick(0)) / goalTempo)) / 60_000
