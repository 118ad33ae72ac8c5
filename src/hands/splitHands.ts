import type { Hand, Note } from '@/music/music'
import type { Key, NoteId, Tick } from '@/music/units'

type Struck = Pick<Note, 'id' | 'start' | 'key'>

/**
 * Splits notes, sorted by start and key, between the hands: at each onset the lower ones left, the upper ones right. Of all
 * ways to place the split along the piece it takes the cheapest path, where a way costs for
 * hands that stretch, move, cross, or lie on the other's side.
 */
export const splitHands = (
  notes: readonly Struck[],
  ticksPerQuarter: number,
): ReadonlyMap<NoteId, Hand> => {
  const onsets = groupOnsets(notes)
  let paths: readonly Path[] = [
    { cost: 0, left: startLeft, right: startRight, before: undefined, lower: 0 },
  ]
  let last: Tick | undefined
  for (const onset of onsets) {
    const start = onset[0]?.start
    const gap = start === undefined || last === undefined ? 0 : start - last
    paths = extend(
      paths,
      onset.map((n) => n.key),
      gap / ticksPerQuarter,
    )
    last = start
  }
  const hands = new Map<NoteId, Hand>()
  for (const [i, lower] of trace(cheapest(paths)).entries())
    for (const [n, { id }] of (onsets[i] ?? []).entries())
      hands.set(id, n < lower ? 'left' : 'right')
  return hands
}

/** The middle of what a hand held last, as a key number. */
interface Path {
  readonly cost: number
  readonly left: number
  readonly right: number
  readonly before: Path | undefined
  /** How many notes of the onset the left hand takes. */
  readonly lower: number
}

// The figures below were chosen by search on piano music whose staves are known; near them the
// share of right hands is flat, so their exact values do not matter.
/** Where hands rest, as keys: E3 and E5. */
const startLeft = 52
const startRight = 76
/** After a rest of this many quarters a hand has gone a quarter of the way back to its place. */
const forgetQuarters = 1
/** What a hand holds easily is a fifth; from there each semitone costs, and beyond an octave much more. */
const easySpan = 7
const wideSpan = 12
const easyCost = 3
const wideCost = 12
/** A hand moves a whole tone for nothing, then each semitone costs 1. */
const freeMove = 2
/** A wide gap between neighbouring keys, up to an octave, invites the split. */
const gapGain = 0.25
const widestGap = 12
/** For each semitone by which the left hand lies above the right. */
const crossCost = 3
/** For each semitone by which a hand lies on the other's side of the D above middle C. */
const sideCost = 0.3
const sideBorder = 62

const groupOnsets = (sorted: readonly Struck[]): Struck[][] => {
  const onsets: Struck[][] = []
  for (const note of sorted) {
    const onset = onsets.at(-1)
    if (onset?.[0]?.start === note.start) onset.push(note)
    else onsets.push([note])
  }
  return onsets
}

/** The cheapest path to each split of the onset. */
const extend = (paths: readonly Path[], keys: readonly Key[], quarters: number): Path[] => {
  const back = (1 - 0.5 ** (quarters / forgetQuarters)) / 2
  if (keys.length > mostKeys)
    return [bestPath(paths, keys, keys.filter((k) => k < 60).length, back)]
  const next: Path[] = []
  for (let lower = 0; lower <= keys.length; lower++) next.push(bestPath(paths, keys, lower, back))
  return next
}

/** More keys than this no two hands strike at once: then the split is at middle C, without a search. */
const mostKeys = 20

/** Paths are weighed as numbers; only the best of them is made. */
const bestPath = (
  paths: readonly Path[],
  keys: readonly Key[],
  lower: number,
  back: number,
): Path => {
  const way = weigh(keys, lower)
  let best: Path | undefined
  for (const path of paths) {
    const restLeft = path.left + (startLeft - path.left) * back
    const restRight = path.right + (startRight - path.right) * back
    const left = way.left ?? restLeft
    const right = way.right ?? restRight
    const moved = moveCost(restLeft, left) + moveCost(restRight, right)
    const cost = path.cost + way.cost + moved + Math.max(0, left - right) * crossCost
    if (!best || cost < best.cost) best = { cost, left, right, before: path, lower }
  }
  if (!best) throw new Error('there is a path to every split')
  return best
}

interface Way {
  /** Where each hand then is; `undefined` when it plays nothing. */
  readonly left: number | undefined
  readonly right: number | undefined
  /** What the split costs wherever the hands were. */
  readonly cost: number
}

const weigh = (keys: readonly Key[], lower: number): Way => {
  const low = keys[lower - 1]
  const high = keys[lower]
  const left = middle(keys[0], low)
  const right = middle(high, keys.at(-1))
  const gap = low === undefined || high === undefined ? 0 : Math.min(widestGap, high - low)
  const side =
    (left === undefined ? 0 : Math.max(0, left - sideBorder)) +
    (right === undefined ? 0 : Math.max(0, sideBorder - right))
  const spans = spanCost(keys[0], low) + spanCost(high, keys.at(-1))
  return { left, right, cost: spans - gapGain * gap + side * sideCost }
}

const middle = (low: Key | undefined, high: Key | undefined): number | undefined =>
  low === undefined || high === undefined ? undefined : (low + high) / 2

const spanCost = (low: Key | undefined, high: Key | undefined): number => {
  const span = low === undefined || high === undefined ? 0 : high - low
  return Math.max(0, span - easySpan) * easyCost + Math.max(0, span - wideSpan) * wideCost
}

const moveCost = (from: number, to: number): number => Math.max(0, Math.abs(to - from) - freeMove)

const cheapest = (paths: readonly Path[]): Path =>
  paths.reduce((best, path) => (path.cost < best.cost ? path : best))

const trace = (end: Path): number[] => {
  const splits: number[] = []
  for (let path: Path | undefined = end; path?.before; path = path.before) splits.push(path.lower)
  return splits.reverse()
}
