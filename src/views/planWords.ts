import type { RunItem } from '@/app/dayRun'
import type { RecordedPlace } from '@/journal/journal'
import type { DayItem, PlanItem } from '@/plan/items'
import type { PlacePlan, PlaceState } from '@/plan/plan'
import type { WeekSpan } from '@/plan/span'
import { musicText } from '@/text/music'
import { planText } from '@/text/plan'
import { handWords } from './words'

/** The sentences of the plan, of a piece and of today. */

/** 'bars 5–8' */
export const barWords = ({ fromBar, toBar }: Pick<RecordedPlace, 'fromBar' | 'toBar'>): string =>
  musicText.bars(fromBar, toBar)

/** 'bars 5–8, left hand' */
export const whereWords = (place: RecordedPlace): string =>
  `${barWords(place)}, ${handWords[place.hand]}`

/** Where an item of today is played: its place, not the exercise that comes first. */
export const itemPlace = ({ passage, place }: PlanItem): RecordedPlace => passage ?? place

/** 'cold check, Ferry at Dusk, bars 5–7, left hand' */
export const itemLine = (item: DayItem): string =>
  item.kind === 'rest'
    ? planText.restLine(wholeMinutes(item.minutes))
    : planText.itemLine(item.kind, item.title, whereWords(itemPlace(item)))

/** One at least. */
const wholeMinutes = (minutes: number): number => Math.max(1, Math.round(minutes))

/** '20 min', '5 h' */
export const workWords = (minutes: number): string => {
  if (minutes < 1) return '1 min'
  if (minutes < 90) return `${Math.round(minutes)} min`
  return minutes < 600
    ? `${(Math.round(minutes / 30) / 2).toString().replace('.5', '½').replace(/^0½/, '½')} h`
    : `${Math.round(minutes / 60)} h`
}

/** 1574 -> 1600: no more than is known. */
export const roughly = (n: number): number => {
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, n))) - 1)
  return Math.round(n / unit) * unit
}

const weeksOfYear = 52
/** Nobody counts so many weeks. */
const countedInYears = 2 * weeksOfYear

/** '4 to 7 weeks', '2 to 7 years' */
export const weekWords = ({ weeks: { low, high } }: Pick<WeekSpan, 'weeks'>): string => {
  const [unit, words] =
    high > countedInYears
      ? ([weeksOfYear, planText.weeks.years] as const)
      : ([1, planText.weeks.span] as const)
  return words(Math.max(1, Math.round(low / unit)), Math.max(1, Math.ceil(high / unit)))
}

/** A state stands above another: kept above secure above practised, and what slipped is practised. */
export const stateRank: Readonly<Record<PlaceState, number>> = {
  untouched: 0,
  slipped: 1,
  practised: 1,
  secure: 2,
  kept: 3,
}

/** Secure or kept: no work is left. */
export const isSettled = ({ state }: Pick<PlacePlan, 'state'>): boolean =>
  stateRank[state] >= stateRank.secure

/** What a place comes to in words: its state, and how far its exercises are. */
export const standingWords = ({ state, begun, done, exercises, work }: PlacePlan): string => {
  if (isSettled({ state })) return planText.states[state]
  const left = workWords(work.minutes)
  const { slipped, fresh, begun: isBegun, exercises: isOnTheWay } = planText.standing
  if (state === 'slipped') return slipped(left)
  if (!begun) return fresh(left)
  return exercises.length === 1 ? isBegun(left) : isOnTheWay(done.length, exercises.length, left)
}

/** The day on which a place is due cold. */
export const dueDay = ({ since, interval }: NonNullable<PlacePlan['check']>): string =>
  new Date(Date.parse(`${since}T12:00:00Z`) + interval * 86_400_000).toISOString().slice(0, 10)

/** So much less than was given is worth a word. */
const muchLess = 0.7

/** What is said of today before it begins. */
export const describeDay = (items: readonly DayItem[], minutes: number, given: number): string => {
  const count = (kind: DayItem['kind']): number => items.filter((item) => item.kind === kind).length
  const places = new Set(
    items.flatMap((item) =>
      item.kind === 'problemSpot' || item.kind === 'newGroup' || item.kind === 'join'
        ? [`${item.piece} ${itemPlace(item).from} ${itemPlace(item).to} ${itemPlace(item).hand}`]
        : [],
    ),
  ).size
  const counts = planText.today.counts({
    minutes: wholeMinutes(minutes),
    places,
    checks: count('coldCheck'),
    runs: count('runThrough'),
    rests: count('rest'),
  })
  return minutes < muchLess * given ? `${counts} ${planText.today.spare}` : counts
}

/** How today went: without reproach. */
export const describeDone = (items: readonly RunItem[]): string => {
  const played = items.filter(({ item }) => item.kind !== 'rest')
  const done = played.filter(({ outcome }) => outcome === 'done').length
  if (done === played.length) return planText.today.allDone
  return played.every(({ outcome }) => outcome === 'left')
    ? planText.today.noneDone
    : planText.today.someDone(done, played.length)
}
