import type { Hand, Note } from '@/music/music'
import type { Key, NoteId, Tick } from '@/music/units'

type Struck = Pick<Note, 'id' | 'start' | 'key'>

/**
 * Splits notes between the hands: at each onset the lower ones left, the upper ones right. Of all
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
    paths = extend(paths, onset, gap / ticksPerQuarter)
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

const groupOnsets = (notes: readonly Struck[]): Struck[][] => {
  const sorted = notes.toSorted((a, b) => a.start - b.start || a.key - b.key)
  const onsets: Struck[][] = []
  for (const note of sorted) {
    const onset = onsets.at(-1)
    if (onset?.[0]?.start === note.start) onset.push(note)
    else onsets.push([note])
  }
  return onsets
}

/** The cheapest path to each split of the onset. */
const extend = (paths: readonly Path[], onset: readonly Struck[], quarters: number): Path[] => {
  const back = (1 - 0.5 ** (quarters / forgetQuarters)) / 2
  return waysToSplit(onset).map((lower) => {
    const left = onset.slice(0, lower).map((n) => n.key)
    const right = onset.slice(lower).map((n) => n.key)
    const [middleLeft, middleRight] = [middle(left), middle(right)]
    const own =
      spanCost(left) +
      spanCost(right) -
      gapGain * gapBetween(left, right) +
      sideCost * Math.max(0, (middleLeft ?? 0) - sideBorder) +
      sideCost * Math.max(0, sideBorder - (middleRight ?? sideBorder))
    const ways = paths.map((path): Path => {
      const restLeft = path.left + (startLeft - path.left) * back
      const restRight = path.right + (startRight - path.right) * back
      const [nowLeft, nowRight] = [middleLeft ?? restLeft, middleRight ?? restRight]
      const moved = moveCost(restLeft, nowLeft) + moveCost(restRight, nowRight)
      const crossed = Math.max(0, nowLeft - nowRight) * crossCost
      const cost = path.cost + own + moved + crossed
      return { cost, left: nowLeft, right: nowRight, before: path, lower }
    })
    return cheapest(ways)
  })
}

/** More keys than this no two hands strike at once: then the split is at middle C, without a search. */
const mostKeys = 20

const waysToSplit = (onset: readonly Struck[]): readonly number[] =>
  onset.length > mostKeys
    ? [onset.filter((n) => n.key < 60).length]
    : Array.from({ length: onset.length + 1 }, (_, lower) => lower)

const middle = (keys: readonly Key[]): number | undefined => {
  const [low, high] = [keys[0], keys.at(-1)]
  return low === undefined || high === undefined ? undefined : (low + high) / 2
}

const spanCost = (keys: readonly Key[]): number => {
  const span = (keys.at(-1) ?? 0) - (keys[0] ?? 0)
  return Math.max(0, span - easySpan) * easyCost + Math.max(0, span - wideSpan) * wideCost
}

const gapBetween = (left: readonly Key[], right: readonly Key[]): number => {
  const [low, high] = [left.at(-1), right[0]]
  return low === undefined || high === undefined ? 0 : Math.min(widestGap, high - low)
}

const moveCost = (from: number, to: number): number => Math.max(0, Math.abs(to - from) - freeMove)

const cheapest = (paths: readonly Path[]): Path =>
  paths.reduce((best, path) => (path.cost < best.cost ? path : best))

const trace = (end: Path): number[] => {
  const splits: number[] = []
  for (let path: Path | undefined = end; path?.before; path = path.before) splits.push(path.lower)
  return splits.reverse()
}
