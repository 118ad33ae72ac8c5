import type { RecordedPlace } from '@/journal/journal'
import type { PieceId } from '@/music/units'
import type { Estimate } from '@/review/proportion'
import type { PiecePlan } from './plan'

/** Another piece, or a passage of this one, that could come before. */
export interface Way {
  readonly piece: PieceId
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
      title: `${place.fromBar === place.toBar ? `bar ${place.fromBar}` : `bars ${place.fromBar} to ${place.toBar}`} of this piece`,
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
  const first = sayDistance(word)
  return ways.length === 0
    ? first
    : `${first} On the way there: ${ways.map(({ title }) => title).join('; ')}.`
}

/** The same without the ways that lead there. */
export const sayDistance = (word: HonestWord): string => {
  switch (word.kind) {
    case 'noRecord':
      return 'Nothing is kept yet, so there is nothing to compare this piece with.'
    case 'within':
      return 'This piece is no more difficult than what you keep already.'
    case 'above':
    case 'farAbove': {
      const { kind, times, months } = word
      const far = kind === 'farAbove' ? 'far above' : 'above'
      return `This piece stands ${far} what you keep now (${times.toFixed(1)} times as difficult at its hardest). What you keep grows to that in some ${monthsInWords(months)}, as a rough guess, so the weeks may turn into more; begin when you like.`
    }
  }
}

const monthsInWords = ({ low, high }: Estimate): string => {
  const [least, most] = [Math.max(1, Math.round(low)), Math.max(1, Math.round(high))]
  return least === most
    ? `${most === 1 ? 'a month' : `${most} months`}`
    : `${least} to ${most} months`
}
