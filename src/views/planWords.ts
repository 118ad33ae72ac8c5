import type { RunItem } from '@/app/dayRun'
import type { RecordedPlace } from '@/journal/journal'
import type { HandChoice } from '@/music/music'
import type { ItemKind } from '@/plan/itemKinds'
import type { DayItem, PlanItem } from '@/plan/items'
import type { PlacePlan, PlaceState } from '@/plan/plan'
import type { WeekSpan } from '@/plan/span'
import { handWords } from './words'
import { plural } from '@/text/plural'

export { weekdayWord } from '@/text/dates'

/** The sentences of the plan, of a piece and of today. */

export const itemWords: Readonly<Record<ItemKind | 'rest', string>> = {
  warmUp: 'Warm-up',
  coldCheck: 'Cold check',
  problemSpot: 'Hard spot',
  newGroup: 'Passage',
  join: 'Join',
  runThrough: 'Run-through',
  rest: 'Rest',
}

export const placeWords: Readonly<Record<PlacePlan['kind'], string>> = {
  spot: 'Hard spot',
  passage: 'Passage',
  join: 'Join',
}

export const outcomeWords: Readonly<Record<RunItem['outcome'], string>> = {
  ahead: '',
  done: 'done',
  begun: 'begun',
  left: 'another day',
}

/** 'bars 5–8' */
export const barWords = ({ fromBar, toBar }: Pick<RecordedPlace, 'fromBar' | 'toBar'>): string =>
  fromBar === toBar ? `bar ${fromBar}` : `bars ${fromBar}–${toBar}`

/** 'bars 5–8, left hand' */
export const whereWords = (place: RecordedPlace): string =>
  `${barWords(place)}, ${handWords[place.hand]}`

/** Where an item of today is played: its place, not the exercise that comes first. */
export const itemPlace = ({ passage, place }: PlanItem): RecordedPlace => passage ?? place

/** 'cold check, Ferry at Dusk, bars 5–7, left hand' */
export const itemLine = (item: DayItem): string =>
  item.kind === 'rest'
    ? `a rest of ${minuteWords(item.minutes)}`
    : `${itemWords[item.kind].toLowerCase()}, ${item.title}, ${whereWords(itemPlace(item))}`

/** '3 minutes'; what is shorter is 'a minute'. */
export const minuteWords = (minutes: number): string =>
  minutes < 1.5 ? 'a minute' : `${Math.round(minutes)} minutes`

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

/** '4 to 7 weeks' */
export const weekWords = ({ weeks }: WeekSpan): string => {
  const [least, most] = [Math.max(1, Math.round(weeks.low)), Math.max(1, Math.ceil(weeks.high))]
  return least === most ? `about ${plural(least, 'week')}` : `${least} to ${most} weeks`
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
  if (isSettled({ state })) return state
  const left = `about ${workWords(work.minutes)} left`
  if (state === 'slipped') return `slipped, ${left}`
  if (!begun) return `new, ${left}`
  return exercises.length === 1
    ? `begun, ${left}`
    : `${done.length} of ${exercises.length} exercises done, ${left}`
}

/** The day on which a place is due cold. */
export const dueDay = ({ since, interval }: NonNullable<PlacePlan['check']>): string =>
  new Date(Date.parse(`${since}T12:00:00Z`) + interval * 86_400_000).toISOString().slice(0, 10)

export const laneWords: Readonly<Record<HandChoice, string>> = {
  right: 'Right hand',
  left: 'Left hand',
  both: 'Together',
}

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
  const parts = [
    ...(places > 0 ? [`${plural(places, 'place')} in turn`] : []),
    ...(count('coldCheck') > 0 ? [plural(count('coldCheck'), 'cold check')] : []),
    ...(count('runThrough') > 0 ? ['a run-through at the end'] : []),
    ...(count('rest') > 0 ? [plural(count('rest'), 'rest')] : []),
  ]
  const rest =
    minutes < muchLess * given
      ? ' There is no more to do: the rest is yours, or take a piece more.'
      : ''
  return `${capital(minuteWords(minutes))}: ${parts.join(', ')}.${rest}`
}

/** How today went: without reproach. */
export const describeDone = (items: readonly RunItem[]): string => {
  const played = items.filter(({ item }) => item.kind !== 'rest')
  const done = played.filter(({ outcome }) => outcome === 'done').length
  const rest = played.length - done
  if (rest === 0) return 'All of today’s plan is done.'
  return `${done} of ${played.length} done; the rest comes again on another day.`
}

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
