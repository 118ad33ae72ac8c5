/**
 * What to practise: a piece over weeks, and today.
 *
 * place: what the plan leads to secure and kept: a hard spot, a passage, or the join of two passages
 * (layOut.ts). Each has a build-up of exercises, a state (the review's words, or untouched) and work
 * left: repetitions and minutes at the person's own pace (pace.ts). span: the weeks until all is kept,
 * with its uncertainty (span.ts). check: the one cold repetition that a secure place is due for on a
 * later day (due.ts). today: the minutes given, filled with items (day.ts).
 *
 * Example: eight bars with a leap in bar 6 -> the leap; bars 5 to 8; bars 1 to 4; the join, bars 4 to 5.
 */
import type { Exercise } from '@/exercises/buildUp'
import { progressOf } from '@/exercises/progress'
import type { Day } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay } from '@/journal/sums'
import type { PieceDecision } from '@/journal/words'
import type { PieceId, Tempo } from '@/music/units'
import { statesOf, type ChunkState } from '@/review/chunkStates'
import { nextCheck, type Check } from './due'
import { heardIn, type Heard } from './heard'
import type { PieceLayout, PlanPlace } from './layOut'
import { estimateWork, type OwnPace, type Work } from './pace'
import { isReached, ofPiece, type PracticeRecord } from './record'
import { checkInRotation, standingOf, type Standing } from './rotation'

/** Where a place stands: practised as soon as one of its exercises was played. */
export type PlaceState = ChunkState | 'untouched'

/** A place of the plan with what the record says of it. */
export interface PlacePlan extends PlanPlace {
  readonly state: PlaceState
  /** Where both hands play: each hand alone. */
  readonly hands?: { readonly right: PlaceState; readonly left: PlaceState }
  /** The exercises that are not done; the first is the next. None for what is secure or kept. */
  readonly left: readonly Exercise[]
  readonly done: readonly Exercise[]
  readonly work: Work
  /** The work that is done, by the same estimate. */
  readonly doneWork: Work
  /** When it is due cold, for what was once secure. */
  readonly check?: Check
  /** Something of its exercises has been played. */
  readonly begun: boolean
  /** It went clean at some tempo when it was last played: from there on it is practised in turns. */
  readonly playable: boolean
  /** The rung of the last repetition of the next exercise. */
  readonly lastRung?: Tempo
  /** How much went wrong here in the last run-through, where it was not met since. */
  readonly slips: number
}

export interface PiecePlan extends Omit<PieceLayout, 'places'> {
  readonly piece: PieceId
  /** In the order of practice. */
  readonly places: readonly PlacePlan[]
  readonly work: Work
  /** Every place is kept: only cold checks are left, for as long as the piece is to stay. */
  readonly finished: boolean
  readonly standing: Standing
  /** Minutes that the record tells of. */
  readonly practisedMinutes: number
}

/** The plan of a piece as the record and the person's word stand. The same gives the same plan. */
export const planPiece = (
  layout: PieceLayout,
  record: PracticeRecord,
  pace: OwnPace,
  decision?: PieceDecision,
): PiecePlan => {
  const mine = ofPiece(record, layout.piece)
  const rows = groupBy(mine.chunkDays, ({ chunk }) => chunk)
  const states = statesOf(mine.chunkDays)
  const heard = heardIn(layout, mine.chunkDays)
  const places = layout.places.map((place) =>
    planPlace(place, { layout, record: mine, rows, states, pace, heard }),
  )
  const standing = standingOf(places, decision)
  return {
    ...layout,
    places: standing === 'inRotation' ? places.map((place) => inRotation(place, places)) : places,
    standing,
    work: {
      repetitions: places.reduce((sum, { work }) => sum + work.repetitions, 0),
      minutes: places.reduce((sum, { work }) => sum + work.minutes, 0),
    },
    finished: places.length > 0 && places.every(({ state }) => state === 'kept'),
    practisedMinutes: mine.chunkDays.reduce((sum, { ms }) => sum + ms, 0) / 60_000,
  }
}

const inRotation = (place: PlacePlan, all: readonly PlacePlan[]): PlacePlan => {
  const { check: _check, ...rest } = place
  const check = checkInRotation(place, all)
  return check ? { ...rest, check } : rest
}

/** Streak goal met at goal tempo, and nothing has spoken against it since. */
export const isSettled = ({ state }: Pick<PlacePlan, 'state'>): boolean =>
  state === 'secure' || state === 'kept'

interface Known {
  readonly layout: PieceLayout
  readonly record: PracticeRecord
  readonly rows: ReadonlyMap<string, readonly ChunkDay[]>
  readonly states: ReadonlyMap<string, ChunkState>
  readonly pace: OwnPace
  readonly heard: Heard | undefined
}

const planPlace = (place: PlanPlace, known: Known): PlacePlan => {
  const { layout, record, rows, states, pace, heard } = known
  const played = place.exercises.flatMap(({ chunk }) => rows.get(chunk.id) ?? [])
  const begun = played.length > 0
  const state = states.get(place.id) ?? (begun ? 'practised' : 'untouched')
  const { settled, left: open } = progressOf(
    place.exercises,
    new Set(
      place.exercises
        .filter((each) => isReached(record, each, layout.goalTempo))
        .map(({ chunk }) => chunk.id),
    ),
  )
  const whole = place.exercises.slice(-1)
  // What was secure and failed cold is met again as a whole, though every exercise was done once.
  const left = isSettled({ state }) ? [] : open.length > 0 ? open : whole
  const done = left.length === 0 ? place.exercises : settled
  const next = left[0] && rows.get(left[0].chunk.id)?.at(-1)
  const all = estimateWork(left, place.difficulty, layout.goalTempo, pace)
  const climbed = climbedWork(left[0], next, known, place.difficulty)
  const settledWork = estimateWork(done, place.difficulty, layout.goalTempo, pace)
  const own = rows.get(place.id) ?? []
  const slips = slipsSince(heard, place, [...played, ...own])
  const check = checkAfter(nextCheck(own), slips > 0 ? heard?.day : undefined)
  const hands = handStates(place, known)
  return {
    ...place,
    state,
    ...(hands ? { hands } : {}),
    left,
    done,
    work: addWork(all, climbed, -1),
    doneWork: addWork(settledWork, climbed, 1),
    ...(check ? { check } : {}),
    begun,
    playable: isPlayable(played),
    ...(next?.lastRung === undefined ? {} : { lastRung: next.lastRung }),
    slips,
  }
}

/** What was played on a later day has been worked on. */
const slipsSince = (
  heard: Heard | undefined,
  place: PlanPlace,
  played: readonly ChunkDay[],
): number => (heard && played.every(({ day }) => day <= heard.day) ? heard.slipsIn(place) : 0)

/** What slipped in a run-through is met cold the next day, however long it had. */
const checkAfter = (check: Check | undefined, heardOn: Day | undefined): Check | undefined =>
  check && heardOn !== undefined ? { ...check, since: heardOn, interval: 1 } : check

/** Of the exercise in hand: the rungs that are climbed already. */
const climbedWork = (
  exercise: Exercise | undefined,
  row: ChunkDay | undefined,
  { layout: { goalTempo }, pace }: Known,
  difficulty: number,
): Work => {
  if (!exercise || row?.lastRung === undefined) return { repetitions: 0, minutes: 0 }
  const { begin, reach } = exercise
  const share = (row.lastRung / goalTempo - begin) / Math.max(reach - begin, 0.01)
  const climbed = Math.min(mostClimbed, Math.max(0, share))
  const { repetitions, minutes } = estimateWork([exercise], difficulty, goalTempo, pace)
  return { repetitions: climbed * repetitions, minutes: climbed * minutes }
}

/** The last rung is never behind one while the exercise is not done. */
const mostClimbed = 0.9

const addWork = (one: Work, other: Work, sign: 1 | -1): Work => ({
  repetitions: one.repetitions + sign * other.repetitions,
  minutes: one.minutes + sign * other.minutes,
})

const handStates = (
  { exercises, chunk }: PlanPlace,
  { rows, states }: Known,
): PlacePlan['hands'] => {
  if (chunk.hand !== 'both') return undefined
  const stateOf = (hand: 'right' | 'left'): PlaceState | undefined => {
    const whole = exercises.findLast((each) => each.hand === hand)
    if (!whole) return undefined
    const begun = exercises.some(
      (each) => (each.hand === hand || each.hand === 'both') && rows.has(each.chunk.id),
    )
    return states.get(whole.chunk.id) ?? (begun ? 'practised' : 'untouched')
  }
  const [right, left] = [stateOf('right'), stateOf('left')]
  return right && left ? { right, left } : undefined
}

/** On the last day more of its repetitions were clean than not. */
const isPlayable = (played: readonly ChunkDay[]): boolean => {
  const last = played.reduce((latest, { day }) => (day > latest ? day : latest), '')
  const rows = played.filter(({ day }) => day === last)
  const clean = rows.reduce((sum, { tally }) => sum + tally.clean, 0)
  return clean > 0 && clean >= rows.reduce((sum, { tally }) => sum + tally.flawed, 0)
}
