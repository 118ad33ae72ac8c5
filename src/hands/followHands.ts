import {
  gripsOf,
  handAt,
  isSameGrip,
  lookAhead,
  strike,
  weighGrip,
  type Grips,
  type HandMemory,
  type Outlook,
} from './handMemory'
import { column, places, type Column, type Onsets, type Places } from './onsets'
import { mostStruck, type Ways } from './ways'

/** How many paths are followed at a time; with more, hardly any note goes to another hand. */
export interface Breadth {
  readonly paths: number
  /** A path that is this much less likely than the best, as a logarithm, is given up. */
  readonly giveUp: number
}

/**
 * The likeliest way of each onset. It follows both hands from the first onset to the last along
 * several paths at a time; after each onset only the best go on, so that the work grows with the
 * notes alone. An onset without a way is passed over.
 */
export const followHands = (
  onsets: Onsets,
  ways: Ways,
  middle: number,
  { paths, giveUp }: Breadth,
): Places => {
  const steps = { way: places(onsets.count * paths), before: places(onsets.count * paths) }
  const search = { onsets, ways, branches: branchesOf(paths), giveUp }
  const [left, right] = [gripsOf(onsets.count * paths), gripsOf(onsets.count * paths)]
  let here = Array.from({ length: paths }, () => pathFrom(middle, onsets, left, right))
  let next = Array.from({ length: paths }, () => pathFrom(middle, onsets, left, right))
  let count = 1
  let choice = nextChoice(ways, onsets.count, 0)
  for (let onset = 0; onset < onsets.count; onset++) {
    if (choice < onset) choice = nextChoice(ways, onsets.count, onset)
    if (count === 1 && onset < choice - recalledOnsets) continue
    const choices = (ways.first[onset + 1] ?? 0) - (ways.first[onset] ?? 0)
    if (choices === 0) continue
    if (choices === 1 && count === 1) goStraightOn(search, here, next, onset)
    else {
      branchOut(search, here, count, onset)
      count = goOn(search, here, next, onset)
    }
    for (let i = 0; i < count; i++) {
      const path = next[i]
      if (!path) break
      const step = onset * paths + i
      steps.way[step] = path.way
      steps.before[step] = path.step
      path.step = step
    }
    const last = here
    here = next
    next = last
  }
  const taken = onlyWays(ways, onsets.count)
  trace(taken, here[0]?.step ?? none, steps, paths)
  return taken
}

/**
 * What lies further back than this many onsets, as long as each had but one way, a hand need not have
 * followed: of several ways it decides none. It costs less than 0.01 % of the notes, as far as measured.
 */
const recalledOnsets = 16

/** The next onset with several ways. */
const nextChoice = ({ first }: Ways, count: number, from: number): number => {
  for (let onset = from; onset < count; onset++)
    if ((first[onset + 1] ?? 0) - (first[onset] ?? 0) > 1) return onset
  return Infinity
}

/** The way of each onset that has but one. */
const onlyWays = ({ first }: Ways, count: number): Places => {
  const taken = places(count)
  for (let onset = 0; onset < count; onset++)
    taken[onset] = (first[onset + 1] ?? 0) - (first[onset] ?? 0) === 1 ? (first[onset] ?? 0) : none
  return taken
}

/** Where the hands begin: an octave below and above the middle of the piece. */
const homeFromMiddle = 12
const none = -1

interface Path {
  weight: number
  readonly left: HandMemory
  readonly right: HandMemory
  /** The last way, and the last step; a step tells the one before it. */
  way: number
  step: number
}

const pathFrom = (middle: number, { starts }: Onsets, left: Grips, right: Grips): Path => ({
  weight: Math.log(1),
  left: handAt(middle - homeFromMiddle, starts[0] ?? 0, left),
  right: handAt(middle + homeFromMiddle, starts[0] ?? 0, right),
  way: none,
  step: none,
})

/** All that the paths can do at one onset: for each path each way. */
interface Branches {
  count: number
  readonly weight: Column
  readonly path: Places
  readonly way: Places
  readonly left: Outlook
  readonly right: Outlook
}

interface Search {
  readonly onsets: Onsets
  readonly ways: Ways
  readonly branches: Branches
  readonly giveUp: number
}

const branchesOf = (paths: number): Branches => {
  const most = paths * (mostStruck + 1)
  const outlook = (): Outlook => ({
    idle: NaN,
    links: column(mostStruck + 1),
    lowest: NaN,
    highest: NaN,
  })
  return {
    count: 0,
    weight: column(most),
    path: places(most),
    way: places(most),
    left: outlook(),
    right: outlook(),
  }
}

const branchOut = (
  { onsets, ways, branches }: Search,
  paths: readonly Path[],
  count: number,
  onset: number,
): void => {
  const start = onsets.starts[onset] ?? 0
  const from = onsets.first[onset] ?? 0
  const to = onsets.first[onset + 1] ?? 0
  const { left, right } = branches
  branches.count = 0
  for (let p = 0; p < count; p++) {
    const path = paths[p]
    if (!path) break
    lookAhead(left, path.left, onsets, start, from, to)
    lookAhead(right, path.right, onsets, start, from, to)
    for (let way = ways.first[onset] ?? 0; way < (ways.first[onset + 1] ?? 0); way++) {
      const middle = from + (ways.lower[way] ?? 0)
      const below =
        from < middle ? weighGrip(left, path.left, onsets, start, from, middle) : left.idle
      const above =
        middle < to ? weighGrip(right, path.right, onsets, start, middle, to) : right.idle
      const links =
        (left.links[middle - from] ?? 0) +
        (right.links[to - from] ?? 0) -
        (right.links[middle - from] ?? 0)
      branches.weight[branches.count] =
        path.weight + (ways.weight[way] ?? 0) + below + above + links
      branches.path[branches.count] = p
      branches.way[branches.count++] = way
    }
  }
}

/** The only path takes the only way: nothing is to be weighed, since one weight alone decides nothing. */
const goStraightOn = (
  { onsets, ways }: Search,
  here: readonly Path[],
  next: readonly Path[],
  onset: number,
): void => {
  const [path] = here
  const [following] = next
  if (!path || !following) return
  const start = onsets.starts[onset] ?? 0
  const from = onsets.first[onset] ?? 0
  const to = onsets.first[onset + 1] ?? 0
  const way = ways.first[onset] ?? 0
  const middle = from + (ways.lower[way] ?? 0)
  const step = onset * next.length
  strike(following.left, path.left, onsets, start, from, middle, step)
  strike(following.right, path.right, onsets, start, middle, to, step)
  following.weight = path.weight
  following.way = way
  following.step = path.step
}

/** Makes the best branches the next paths, the best first, and tells how many. */
const goOn = (
  { onsets, ways, branches, giveUp }: Search,
  here: readonly Path[],
  next: readonly Path[],
  onset: number,
): number => {
  const start = onsets.starts[onset] ?? 0
  const from = onsets.first[onset] ?? 0
  const to = onsets.first[onset + 1] ?? 0
  let count = 0
  let least = -Infinity
  while (count < next.length) {
    const best = takeBest(branches)
    if (best === none) break
    const weight = branches.weight[best] ?? 0
    const path = here[branches.path[best] ?? 0]
    const following = next[count]
    if (weight < least || !path || !following) break
    if (count === 0) least = weight - giveUp
    branches.weight[best] = -Infinity
    const way = branches.way[best] ?? 0
    const middle = from + (ways.lower[way] ?? 0)
    const step = onset * next.length + count
    strike(following.left, path.left, onsets, start, from, middle, step)
    strike(following.right, path.right, onsets, start, middle, to, step)
    // Of paths that lead to the same keys under the same hands only the best can matter.
    if (isKnown(next, count)) continue
    following.weight = weight
    following.way = way
    following.step = path.step
    count++
  }
  return count
}

const takeBest = ({ count, weight }: Branches): number => {
  let best = none
  let most = -Infinity
  for (let i = 0; i < count; i++)
    if ((weight[i] ?? 0) > most) {
      best = i
      most = weight[i] ?? 0
    }
  return best
}

const isKnown = (paths: readonly Path[], number: number): boolean => {
  const path = paths[number]
  if (!path) return false
  for (let i = 0; i < number; i++) {
    const other = paths[i]
    if (other && isSameGrip(other.left, path.left) && isSameGrip(other.right, path.right))
      return true
  }
  return false
}

/** Notes the way of each onset, from the last step back to the first. */
const trace = (
  taken: Places,
  last: number,
  { way, before }: { readonly way: Places; readonly before: Places },
  paths: number,
): void => {
  for (let step = last; step !== none; step = before[step] ?? 0)
    taken[Math.floor(step / paths)] = way[step] ?? 0
}
