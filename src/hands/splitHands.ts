import type { Key, Tick } from '@/music/units'
import type { HandedNote, PartNote } from './hands'

/**
 * Splits notes between the hands: at each onset the lower ones left, the upper ones right. Of all
 * ways to place the split along the piece it takes the cheapest path, where a way costs for
 * hands that stretch, for hands that jump from where they were, and for a split inside a close chord.
 */
export const splitHands = (
  notes: readonly PartNote[],
  ticksPerQuarter: number,
): readonly HandedNote[] => {
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
  const splits = trace(cheapest(paths))
  return onsets.flatMap((onset, i) =>
    onset.map((note, n): HandedNote => ({
      ...note,
      hand: n < (splits[i] ?? 0) ? 'left' : 'right',
      handFrom: 'inferred',
    })),
  )
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

/** Where hands rest before they play: an octave to each side of middle C (common practice, no source). */
const startLeft = 48
const startRight = 72
/** Wider than an octave and a third no chord is held without rolling by most hands (common practice, no source). */
const widestHold = 16
const stretchCost = 6
/** A hand that crosses the other is rare (common practice, no source). */
const crossCost = 1.5
/** Unused hands drift back to their place: after a rest of this many quarters half of the way. */
const forgetQuarters = 4

const groupOnsets = (notes: readonly PartNote[]): PartNote[][] => {
  const sorted = notes.toSorted((a, b) => a.start - b.start || a.key - b.key)
  const onsets: PartNote[][] = []
  for (const note of sorted) {
    const onset = onsets.at(-1)
    if (onset?.[0]?.start === note.start) onset.push(note)
    else onsets.push([note])
  }
  return onsets
}

/** The cheapest path to each split of the onset. */
const extend = (paths: readonly Path[], onset: readonly PartNote[], quarters: number): Path[] => {
  const drift = 1 - 0.5 ** (quarters / forgetQuarters)
  const next: Path[] = []
  for (const lower of waysToSplit(onset)) {
    const left = onset.slice(0, lower).map((n) => n.key)
    const right = onset.slice(lower).map((n) => n.key)
    const own = stretch(left) + stretch(right)
    const ways = paths.map((path): Path => {
      const restLeft = path.left + (startLeft - path.left) * drift * 0.5
      const restRight = path.right + (startRight - path.right) * drift * 0.5
      const nowLeft = middle(left) ?? restLeft
      const nowRight = middle(right) ?? restRight
      const moved = jump(restLeft, nowLeft) + jump(restRight, nowRight)
      const crossed = Math.max(0, nowLeft + 4 - nowRight) * crossCost
      return {
        cost: path.cost + own + moved + crossed,
        left: nowLeft,
        right: nowRight,
        before: path,
        lower,
      }
    })
    next.push(cheapest(ways))
  }
  return next
}

/** More keys than this no two hands strike at once: then the split is at middle C, without a search. */
const mostKeys = 20

const waysToSplit = (onset: readonly PartNote[]): readonly number[] =>
  onset.length > mostKeys
    ? [onset.filter((n) => n.key < 60).length]
    : Array.from({ length: onset.length + 1 }, (_, lower) => lower)

const middle = (keys: readonly Key[]): number | undefined => {
  const [low, high] = [keys[0], keys.at(-1)]
  return low === undefined || high === undefined ? undefined : (low + high) / 2
}

const stretch = (keys: readonly Key[]): number => {
  const span = (keys.at(-1) ?? 0) - (keys[0] ?? 0)
  return Math.max(0, span - widestHold) * stretchCost + Math.max(0, span - 12)
}

const jump = (from: number, to: number): number => Math.abs(to - from)

const cheapest = (paths: readonly Path[]): Path =>
  paths.reduce((best, path) => (path.cost < best.cost ? path : best))

const trace = (end: Path): number[] => {
  const splits: number[] = []
  for (let path: Path | undefined = end; path?.before; path = path.before) splits.push(path.lower)
  return splits.reverse()
}
