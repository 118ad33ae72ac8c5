import { daysBetween, type Day } from '@/journal/day'
import { daysOverdue, type Check } from './due'
import { checkMinutes, runMinutes, type Candidate, type Chosen } from './items'
import { isSettled, type PiecePlan, type PlacePlan } from './plan'
import type { Rank } from './seed'
import { areNearIdentical } from './similar'

/** What the choice of a day rests on. */
export interface Aims {
  readonly day: Day
  readonly rank: Rank
  readonly lowered: boolean
}

/** A place that is due cold. */
export interface DueCheck extends Candidate {
  readonly check: Check
  readonly minutes: number
}

/**
 * The cold checks of today in the order of playing: the longest due first, as many as fit, one at
 * least. What stays behind comes before all that falls due later, so that nothing waits more days than
 * there were checks before it. Of two near-identical ones with nothing to part them, one waits.
 */
export const chooseChecks = (
  candidates: readonly Candidate[],
  minutes: number,
  { day, rank }: Aims,
): readonly DueCheck[] => {
  const due = candidates
    .flatMap(({ piece, place }) =>
      place.check && daysOverdue(place.check, day) >= 0
        ? [{ piece, place, check: place.check, minutes: checkMinutes(place, place.check) }]
        : [],
    )
    .toSorted(
      (a, b) =>
        daysOverdue(b.check, day) - daysOverdue(a.check, day) ||
        rank(a.place.id) - rank(b.place.id),
    )
  let left = minutes
  const fitting: DueCheck[] = []
  for (const each of due) {
    if (fitting.length > 0 && each.minutes > left) break
    left -= each.minutes
    fitting.push(each)
  }
  return partTwins(fitting)
}

/** No two near-identical places one after the other; who finds no neighbour waits. */
export const partTwins = (checks: readonly DueCheck[]): readonly DueCheck[] => {
  const ordered: DueCheck[] = []
  let left = checks
  for (;;) {
    const last = ordered.at(-1)
    const next = left.find(({ place }) => !last || !areNearIdentical(last.place, place))
    if (!next) return ordered
    ordered.push(next)
    left = left.filter((each) => each !== next)
  }
}

/** So many minutes at a place make three turns of three minutes (Carter & Grahn 2016 took turns of three). */
const minutesAPlace = 9
/** The second piece has a quarter of the work; */
const secondShare = 0.25
/** where that is less than a turn of some minutes, every fourth day is its own. */
const leastShareMinutes = 4

/** The places that are worked at today, each with its minutes; the main piece first. */
export const choosePlaces = (
  pieces: readonly PiecePlan[],
  checks: readonly DueCheck[],
  minutes: number,
  aims: Aims,
): readonly Chosen[] => {
  const open = pieces.filter(({ places }) => places.some((place) => !isSettled(place)))
  const [main, ...others] = open
  const [second] = others.toSorted((a, b) => a.difficulty - b.difficulty)
  const taken = checks.map(({ place }) => place)
  const shares = sharesOf(minutes, second !== undefined, aims.day)
  const mine = main ? chooseIn(main, taken, shares.main, aims) : []
  const freed = mine.length === 0 ? shares.main : 0
  const theirs = second
    ? chooseIn(second, [...taken, ...mine.map(({ place }) => place)], shares.second + freed, aims)
    : []
  const unused = theirs.length === 0 ? shares.second : 0
  return [...shared(mine, shares.main + unused), ...shared(theirs, shares.second + freed)]
}

const sharesOf = (
  minutes: number,
  hasSecond: boolean,
  day: Day,
): { readonly main: number; readonly second: number } => {
  if (!hasSecond) return { main: minutes, second: 0 }
  const second = secondShare * minutes
  if (second >= leastShareMinutes) return { main: minutes - second, second }
  const isItsDay = daysBetween(anyDay, day) % 4 === 0
  return isItsDay ? { main: 0, second: minutes } : { main: minutes, second: 0 }
}

/** To count days from. */
const anyDay = '2000-01-03' as Day

const shared = (places: readonly Omit<Chosen, 'minutes'>[], minutes: number): readonly Chosen[] =>
  places.map((each) => ({ ...each, minutes: minutes / places.length }))

const chooseIn = (
  piece: PiecePlan,
  taken: readonly PlacePlan[],
  minutes: number,
  { lowered }: Aims,
): readonly Omit<Chosen, 'minutes'>[] => {
  if (minutes <= 0) return []
  const usual = Math.max(1, Math.round(minutes / minutesAPlace))
  const count = lowered ? Math.ceil(usual / 2) : usual
  const chosen: PlacePlan[] = []
  for (const place of inTurn(piece, lowered)) {
    if (chosen.length === count) break
    if (![...taken, ...chosen].some((other) => areNearIdentical(other, place))) chosen.push(place)
  }
  const places = chosen.map((place) => ({ piece, place, kind: kindOf(place) }))
  return places.toSorted((a, b) => workKinds.indexOf(a.kind) - workKinds.indexOf(b.kind))
}

const workKinds = ['problemSpot', 'newGroup', 'join'] as const

const kindOf = ({ kind, state }: PlacePlan): Chosen['kind'] => {
  if (state === 'slipped' || kind === 'spot') return 'problemSpot'
  return kind === 'join' ? 'join' : 'newGroup'
}

/**
 * What is ready, in the order in which it is taken up: what slipped, what went wrong in the last
 * run-through, what is begun, then what is new. With lowered aims nothing new and no joins, while there is anything else; and the easiest first.
 */
const inTurn = ({ places }: PiecePlan, lowered: boolean): readonly PlacePlan[] => {
  const ready = places.filter(
    (place) =>
      !isSettled(place) &&
      place.parts.every((part) => places.some((each) => each.id === part && isSettled(each))),
  )
  const order = (place: PlacePlan): number =>
    place.state === 'slipped' ? 0 : place.slips > 0 ? 1 : place.begun ? 2 : 3
  const ordered = ready.toSorted((a, b) => order(a) - order(b))
  if (!lowered) return ordered
  const easier = ordered.filter((place) => place.begun && place.kind !== 'join')
  return easier.length > 0 ? easier : ready.toSorted((a, b) => a.difficulty - b.difficulty)
}

/**
 * What the warm-up is played on: something that goes already and is not due today; else what is easiest.
 * Never the hardest of what is to be learned, unless there is nothing else.
 */
export const chooseWarmUp = (
  candidates: readonly Candidate[],
  today: readonly Candidate[],
  { day, rank }: Aims,
): Candidate | undefined => {
  const hardest = Math.max(...candidates.map(({ place }) => place.difficulty))
  const isDue = ({ check }: PlacePlan): boolean =>
    check !== undefined && daysOverdue(check, day) >= 0
  const free = candidates.filter(
    ({ place }) => !isDue(place) && !today.some((other) => areNearIdentical(other.place, place)),
  )
  // What shares notes with the work or the checks of today would take from them.
  const apart = free.filter(({ place }) => !today.some((other) => shareNotes(other.place, place)))
  const notNext = free.filter(({ place }) => !today[0] || !shareNotes(today[0].place, place))
  const known = (all: readonly Candidate[]): readonly Candidate[] =>
    all
      .filter(({ place }) => isSettled(place))
      .toSorted((a, b) => rank(a.place.id) - rank(b.place.id))
  const easy = (all: readonly Candidate[]): readonly Candidate[] =>
    all
      .filter(({ place }) => place.kind !== 'join' && place.difficulty < hardest)
      .toSorted((a, b) => a.place.difficulty - b.place.difficulty)
  const ordered = [apart, notNext, free].flatMap((all) => [...known(all), ...easy(all)])
  return ordered[0] ?? (candidates.length === 1 ? free[0] : undefined)
}

const shareNotes = (one: PlacePlan, other: PlacePlan): boolean =>
  one.piece === other.piece && one.from < other.to && other.from < one.to

/** From so many secure passages on a run-through has something to run through. */
const settledForRun = 2 / 3

/** The piece that is played from end to end at the end of the day, if that fits into so many minutes. */
export const chooseRun = (pieces: readonly PiecePlan[], minutes: number): PiecePlan | undefined => {
  const main = pieces.find(({ finished }) => !finished) ?? pieces[0]
  const passages = main?.places.filter(({ kind }) => kind === 'passage') ?? []
  const settled = passages.filter(isSettled).length
  return main?.whole &&
    settled > 0 &&
    settled >= settledForRun * passages.length &&
    runMinutes(main) <= minutes
    ? main
    : undefined
}
