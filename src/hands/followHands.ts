import {
  handAt,
  isSameGrip,
  lookAhead,
  strike,
  weighGrip,
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
  let here: readonly Path[] = Array.from({ length: paths }, () => pathFrom(middle, onsets))
  let next: readonly Path[] = Array.from({ length: paths }, () => pathFrom(middle, onsets))
  let count = 1
  for (let onset = 0; onset < onsets.count; onset++) {
    if ((ways.first[onset] ?? 0) === (ways.first[onset + 1] ?? 0)) continue
    branchOut(search, here, count, onset)
    count = goOn(search, here, next, onset)
    for (const [i, path] of next.entries()) {
      if (i >= count) break
      const step = onset * paths + i
      steps.way[step] = path.way
      steps.before[step] = path.step
      path.step = step
    }
    ;[here, next] = [next, here]
  }
  return trace(here[0]?.step ?? none, steps, onsets.count, paths)
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

const pathFrom = (middle: number, { starts }: Onsets): Path => ({
  weight: Math.log(1),
  left: handAt(middle - homeFromMiddle, starts[0] ?? 0),
  right: handAt(middle + homeFromMiddle, starts[0] ?? 0),
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
    strike(following.left, path.left, onsets, start, from, middle)
    strike(following.right, path.right, onsets, start, middle, to)
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

/** The way of each onset, from the last step back to the first. */
const trace = (
  last: number,
  { way, before }: { readonly way: Places; readonly before: Places },
  onsets: number,
  paths: number,
): Places => {
  const taken = places(onsets).fill(none)
  for (let step = last; step !== none; step = before[step] ?? 0)
    taken[Math.floor(step / paths)] = way[step] ?? 0
  return taken
}
