import type { Exercise } from '@/exercises/buildUp'
import type { Day } from '@/journal/day'
import type { RecordedPlace } from '@/journal/journal'
import type { Form } from '@/music/form'
import { quarterMs, tempo, type ChunkId, type PieceId, type Tempo } from '@/music/units'
import { daysOverdue, type Check } from './due'
import type { ItemKind } from './itemKinds'
import type { ItemReason } from './itemReason'
import { barAt } from './layOut'
import type { PiecePlan, PlacePlan } from './plan'

/** One thing to do today, with all that is needed to begin it. */
export interface PlanItem {
  readonly kind: ItemKind
  readonly piece: PieceId
  readonly title: string
  /** The chunk that is played first, in its form; when it is done, the next of the build-up follows. */
  readonly chunk: ChunkId
  readonly place: RecordedPlace
  readonly form: Form
  /** The passage to whose build-up it belongs. */
  readonly passage?: RecordedPlace
  /** Where it begins, and where this exercise is to arrive. */
  readonly startTempo: Tempo
  readonly goalTempo: Tempo
  readonly minutes: number
  readonly reason: ItemReason
}

export interface RestItem {
  readonly kind: 'rest'
  readonly minutes: number
  readonly reason: ItemReason
}

export type DayItem = PlanItem | RestItem

/** A place of a piece. */
export interface Candidate {
  readonly piece: PiecePlan
  readonly place: PlacePlan
}

/** A place that is worked at today, for so many minutes altogether. */
export interface Chosen extends Candidate {
  readonly kind: 'problemSpot' | 'newGroup' | 'join'
  readonly minutes: number
}

/** Warming up and slowing down before a streak goes at so much of the goal tempo (common practice, no source). */
const slowShare = 0.7
/** A new day begins about two rungs below where the last one ended (common practice, no source). */
const coldShare = 0.92
/** So much slower everything begins while more is flawed than clean. */
const loweredShare = 0.85

/** Something that goes, played slowly; where nothing goes yet, the smallest group of the easiest place. */
export const warmUpItem = ({ piece, place }: Candidate, minutes: number): PlanItem => {
  const [first] = place.left
  if (!first)
    return {
      ...whole(piece, place),
      kind: 'warmUp',
      startTempo: slower(piece.goalTempo, slowShare),
      goalTempo: slower(piece.goalTempo, slowShare),
      minutes,
      reason: { kind: 'warmUpKnown' },
    }
  const item = exerciseItem(piece, place, first, 1)
  return {
    ...item,
    kind: 'warmUp',
    goalTempo: item.startTempo,
    minutes,
    reason: { kind: 'warmUpEasy' },
  }
}

/** Once through, cold, at the tempo at which it is to be confirmed. */
export const checkItem = ({ piece, place }: Candidate, check: Check, day: Day): PlanItem => ({
  ...whole(piece, place),
  kind: 'coldCheck',
  startTempo: check.rung,
  goalTempo: check.rung,
  minutes: checkMinutes(place, check),
  reason: reasonForCheck(place, check, daysOverdue(check, day)),
})

/** To find the place, look at it, and put the hands down: minutes (common practice, no source). */
const findMinutes = 1 / 3
const leastCheckMinutes = 0.5

/** How long a check takes: once through. */
export const checkMinutes = ({ chunk }: PlacePlan, { rung }: Check): number => {
  const quarters = (chunk.end - chunk.start) / chunk.ticksPerQuarter
  return Math.max(leastCheckMinutes, findMinutes + (quarters * quarterMs(rung)) / 60_000)
}

const reasonForCheck = (
  { state, slips }: PlacePlan,
  { interval }: Check,
  overdue: number,
): ItemReason => {
  if (slips > 0) return { kind: 'checkWrong' }
  const days = interval + overdue
  switch (state) {
    case 'slipped':
      return { kind: 'checkSlipped', days }
    case 'kept':
      return { kind: 'checkKept', days }
    case 'secure':
    case 'practised':
    case 'untouched':
      return { kind: 'checkSecure', days }
  }
}

/** One turn at a place: the next exercise of its build-up. */
export const turnItem = (chosen: Chosen, minutes: number, lowered: boolean): PlanItem => {
  const { piece, place, kind } = chosen
  const [next] = place.left
  const share = lowered ? loweredShare : 1
  return {
    ...(next ? exerciseItem(piece, place, next, share) : whole(piece, place)),
    kind,
    minutes,
    reason: reasonForTurn(chosen, next, lowered),
  }
}

const reasonForTurn = (
  { place }: Chosen,
  next: Exercise | undefined,
  lowered: boolean,
): ItemReason => {
  const exercise = next
    ? { what: next.what, size: next.size }
    : ({ what: 'whole', size: 0 } as const)
  if (lowered) return { kind: 'lowered', exercise }
  if (place.state === 'slipped') return { kind: 'slipped' }
  if (place.kind === 'join') return { kind: 'join' }
  const isHardSpot = place.kind === 'spot'
  const [hard] = place.reasons
  return {
    kind: place.begun ? 'next' : 'fresh',
    exercise,
    wentWrong: place.slips > 0,
    isHardSpot,
    ...(isHardSpot && hard ? { hard } : {}),
  }
}

/** A run-through is played a little under the goal tempo: it is for listening (common practice, no source). */
const runTempoShare = 0.85

/** From the first note to the last, once; nothing where the notes are not known. */
export const runItem = (piece: PiecePlan): readonly PlanItem[] => {
  if (!piece.whole) return []
  const tempoOfRun = slower(piece.goalTempo, piece.finished ? 1 : runTempoShare)
  return [
    {
      kind: 'runThrough',
      piece: piece.piece,
      title: piece.title,
      chunk: piece.whole.chunk,
      place: piece.whole.place,
      form: 'asWritten',
      startTempo: tempoOfRun,
      goalTempo: tempoOfRun,
      minutes: runMinutes(piece),
      reason: { kind: 'runThrough' },
    },
  ]
}

export const runMinutes = ({ minutes, finished }: PiecePlan): number =>
  findMinutes + minutes / (finished ? 1 : runTempoShare)

const whole = (
  { piece, title, goalTempo }: PiecePlan,
  { id, place }: PlacePlan,
): Omit<PlanItem, 'kind' | 'minutes' | 'reason'> => ({
  piece,
  title,
  chunk: id,
  place,
  form: 'asWritten',
  startTempo: goalTempo,
  goalTempo,
})

const exerciseItem = (
  { piece, title, goalTempo }: PiecePlan,
  { place, bars, lastRung }: PlacePlan,
  exercise: Exercise,
  share: number,
): Omit<PlanItem, 'kind' | 'minutes' | 'reason'> => {
  const goal = slower(goalTempo, exercise.reach)
  const begin = Math.min(goal, Math.max(goalTempo * exercise.begin, coldShare * (lastRung ?? 0)))
  return {
    piece,
    title,
    chunk: exercise.chunk.id,
    place: {
      ...exercise.place,
      fromBar: barAt(bars, exercise.from),
      toBar: barAt(bars, exercise.to),
    },
    form: exercise.form,
    passage: place,
    startTempo: slower(tempo(begin), share),
    goalTempo: goal,
  }
}

const slower = (goal: Tempo, share: number): Tempo => tempo(Math.max(1, Math.round(goal * share)))
