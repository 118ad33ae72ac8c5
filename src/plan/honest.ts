import type { RecordedPlace } from '@/journal/journal'
import type { PieceId } from '@/music/units'
import type { Estimate } from '@/review/proportion'
import { planText } from '@/text/plan'
import { decimal } from '@/text/numbers'
import type { PiecePlan } from './plan'

/** Another piece, or a passage of this one, that could come before. */
export interface Way {
  readonly piece: PieceId
  /** Of the piece. */
  readonly title: string
  readonly place?: RecordedPlace
  readonly difficulty: number
}

/** How far a piece stands above what is kept in the record. It never forbids. */
export type HonestWord =
  | { readonly kind: 'noRecord' }
  /** No harder than what is kept, as far as that can be told. */
  | { readonly kind: 'within' }
  | {
      readonly kind: 'above' | 'farAbove'
      /** The difficulty of the piece, what is kept being 1. */
      readonly times: number
      /** Until what is kept is as difficult. */
      readonly months: Estimate
      /** The next steps up, the easiest first. */
      readonly ways: readonly Way[]
    }

/** Above by more than both figures may be off (an uncertainty of 15 % each). */
const clearlyAbove = 1.2
/** As far as from a piece in eighths to one in sixteenths at the same tempo, nearly. */
const farAbove = 1.6
/**
 * By how much what somebody keeps grows more difficult in a month, as a logarithm: half as difficult
 * again in a year. Nobody has measured it; it is an assumption, and may be half or twice that.
 */
const growthPerMonth = Math.log(1.5) / 12
const growthDoubt = 2
const mostWays = 3
/** The hardest few that are kept say what the person can; one alone may be luck. */
const hardestKept = 3

/**
 * The difficulty of a piece against what is kept, of all pieces at hand: those that lie between, and
 * passages of the piece itself, lead there.
 */
export const honestWord = (plan: PiecePlan, all: readonly PiecePlan[]): HonestWord => {
  const kept = keptLevel(all)
  if (kept === undefined) return { kind: 'noRecord' }
  const hardest = hardestOf(plan)
  const times = hardest / kept
  if (times <= clearlyAbove) return { kind: 'within' }
  const months = Math.log(times) / growthPerMonth
  return {
    kind: times >= farAbove ? 'farAbove' : 'above',
    times,
    months: { value: months, low: months / growthDoubt, high: months * growthDoubt },
    ways: waysTo(plan, all, kept, hardest),
  }
}

const hardestOf = ({ places }: PiecePlan): number =>
  Math.max(0, ...places.map(({ difficulty }) => difficulty))

/** The difficulty of the hardest places that are kept: the middle of the three hardest. */
const keptLevel = (all: readonly PiecePlan[]): number | undefined => {
  const kept = all
    .flatMap(({ places }) => places)
    .filter(({ state }) => state === 'kept')
    .map(({ difficulty }) => difficulty)
    .toSorted((a, b) => b - a)
    .slice(0, hardestKept)
  return kept[Math.floor((kept.length - 1) / 2)]
}

const waysTo = (
  plan: PiecePlan,
  all: readonly PiecePlan[],
  kept: number,
  hardest: number,
): readonly Way[] => {
  const others = all
    .filter(({ piece, finished }) => piece !== plan.piece && !finished)
    .map((other) => ({ piece: other.piece, title: other.title, difficulty: hardestOf(other) }))
  const between = ({ difficulty }: Way): boolean =>
    difficulty > 0.8 * kept && difficulty < 0.9 * hardest
  const own = plan.places
    .filter(({ kind, state }) => kind === 'passage' && state !== 'kept')
    .map(({ place, difficulty }) => ({
      piece: plan.piece,
      title: plan.title,
      place,
      difficulty,
    }))
  const inOrder = (ways: readonly Way[]): readonly Way[] =>
    ways.filter(between).toSorted((a, b) => a.difficulty - b.difficulty)
  return [...inOrder(others), ...inOrder(own)].slice(0, mostWays)
}

/** One or two sentences. */
export const sayHonestly = (word: HonestWord): string => {
  const ways = 'ways' in word ? word.ways : []
  const distance = sayDistance(word)
  return ways.length === 0 ? distance : planText.honest.andWays(distance, ways.map(sayWay))
}

/** The same without the ways that lead there. */
export const sayDistance = (word: HonestWord): string => {
  switch (word.kind) {
    case 'noRecord':
    case 'within':
      return planText.honest[word.kind]
    case 'above':
    case 'farAbove': {
      const { kind, times, months } = word
      const [least, most] = [months.low, months.high].map((n) => Math.max(1, Math.round(n)))
      return planText.honest.above(kind, decimal(times, 1), least ?? 1, most ?? 1)
    }
  }
}

/** 'Ferry at Dusk'; 'bars 5 to 8 of this piece' */
export const sayWay = ({ title, place }: Way): string =>
  place ? planText.honest.ofThisPiece(place.fromBar, place.toBar) : title
