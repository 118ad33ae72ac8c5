import type { DayPlan } from '@/plan/day'
import { sayHonestly, type HonestWord } from '@/plan/honest'
import { sayReason } from '@/plan/itemReason'
import type { ItemKind } from '@/plan/itemKinds'
import type { DayItem } from '@/plan/items'
import { planDefaults, type OwnPace } from '@/plan/pace'
import type { PiecePlan, PlacePlan } from '@/plan/plan'
import type { WeekSpan } from '@/plan/span'
import type { Estimate } from '@/review/proportion'
import { planText } from '@/text/plan'
import { tellReason } from '@/text/spots'

export interface PlannedPiece {
  readonly plan: PiecePlan
  /** Where the notes are known. */
  readonly span?: WeekSpan
  readonly word?: HonestWord
}

export const dayJson = ({ day, items, minutes, lowered }: DayPlan): object => ({
  day,
  minutes: round(minutes),
  lowered,
  items: items.map((item) => ({
    ...item,
    minutes: round(item.minutes),
    reason: sayReason(item.reason),
  })),
})

export const pieceJson = ({ plan, span, word }: PlannedPiece): object => ({
  piece: plan.piece,
  title: plan.title,
  goalTempo: plan.goalTempo,
  finished: plan.finished,
  standing: plan.standing,
  difficulty: round(plan.difficulty),
  repetitionsLeft: Math.round(plan.work.repetitions),
  minutesLeft: Math.round(plan.work.minutes),
  ...(span ? { weeks: rounded(span.weeks), daysPerWeek: round(span.daysPerWeek) } : {}),
  ...(word ? { word: sayHonestly(word) } : {}),
  places: plan.places.map((place) => ({
    kind: place.kind,
    chunk: place.id,
    place: place.place,
    state: place.state,
    ...(place.hands ? { hands: place.hands } : {}),
    difficulty: round(place.difficulty),
    reasons: place.reasons.map(tellReason),
    parts: place.parts,
    exercisesDone: place.done.length,
    exercises: place.exercises.length,
    repetitionsLeft: Math.round(place.work.repetitions),
    minutesLeft: Math.round(place.work.minutes),
    ...(place.check ? { check: place.check } : {}),
  })),
})

export const describePlan = (
  today: DayPlan,
  pieces: readonly PlannedPiece[],
  pace: OwnPace,
  unread: readonly { readonly line: number; readonly why: string }[],
): string =>
  [
    `${today.day}: ${about(today.minutes)}${today.lowered ? ', aims lowered since less than half was clean of late' : ''}`,
    ...(today.items.length === 0 ? ['Nothing is due and nothing is begun.'] : []),
    ...today.items.map(describeItem),
    ...pieces.flatMap(describePiece),
    ...(pieces.some(({ span }) => span) ? ['', ...describePace(pace)] : []),
    ...unread.map(({ line, why }) => `line ${line} was not read: ${why}`),
  ].join('\n')

const names: Readonly<Record<ItemKind, string>> = {
  warmUp: 'warm-up',
  coldCheck: 'cold check',
  problemSpot: 'problem spot',
  newGroup: 'group',
  join: 'join',
  runThrough: 'run-through',
}

const describeItem = (item: DayItem): string => {
  if (item.kind === 'rest') return `  ${about(item.minutes)}  rest. ${sayReason(item.reason)}`
  const { startTempo: from, goalTempo: to } = item
  const rungs = from === to ? `at ${from}` : `${from} to ${to}`
  return `  ${about(item.minutes)}  ${names[item.kind]}: ${item.title}, ${barsOf(item.place)}, ${rungs}. ${sayReason(item.reason)}`
}

const describePiece = ({ plan, span, word }: PlannedPiece): readonly string[] => [
  '',
  `${plan.title}: ${describeStanding(plan, span)}`,
  ...(word && plan.standing === 'atWork' ? [sayHonestly(word)] : []),
  ...plan.places.map((place) => `  ${describePlace(place)}`),
]

const describeStanding = (plan: PiecePlan, span: WeekSpan | undefined): string => {
  switch (plan.standing) {
    case 'laidAside':
      return 'laid aside'
    case 'inRotation':
      return 'finished, its passages are checked now and then'
    case 'atWork':
      return span ? describeSpan(plan, span) : `${plan.places.length} places in the record`
  }
}

const describeSpan = ({ finished, work }: PiecePlan, { weeks, daysPerWeek }: WeekSpan): string =>
  finished
    ? 'kept from end to end'
    : `about ${Math.round(work.repetitions)} repetitions left, ${inWeeks(weeks)} at ${round(daysPerWeek)} days a week`

const inWeeks = ({ low, high }: Estimate): string => {
  const [least, most] = [Math.max(1, Math.round(low)), Math.max(1, Math.ceil(high))]
  return least === most
    ? `about ${least} ${least === 1 ? 'week' : 'weeks'}`
    : `${least} to ${most} weeks`
}

const describePlace = ({ kind, place, state, done, exercises, work, reasons }: PlacePlan): string =>
  [
    `${kind}, ${barsOf(place)}: ${state}`,
    ...(work.minutes > 0
      ? [`${done.length} of ${exercises.length} exercises`, `${about(work.minutes)} left`]
      : []),
    ...reasons.slice(0, 2).map(tellReason),
  ].join(', ')

/** What the estimates rest on. */
const describePace = ({ exercises }: OwnPace): readonly string[] =>
  exercises > 0
    ? [`Estimated from ${exercises} exercises of your own record.`]
    : [
        'Estimated without a record, from:',
        ...Object.values(planDefaults).map(
          ({ kind, value }) => `  ${round(value)}: ${planText.weeks.defaults[kind]}`,
        ),
      ]

const barsOf = ({ fromBar, toBar, hand }: PlacePlan['place']): string =>
  `${fromBar === toBar ? `bar ${fromBar}` : `bars ${fromBar} to ${toBar}`}, ${hand === 'both' ? 'both hands' : `${hand} hand`}`

const about = (minutes: number): string => `${minutes < 1 ? '<1' : Math.round(minutes)} min`

const round = (n: number): number => Math.round(n * 10) / 10

const rounded = ({ value, low, high }: Estimate): Estimate => ({
  value: round(value),
  low: round(low),
  high: round(high),
})
