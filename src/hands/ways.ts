import { column, isUneven, places, type Column, type Onsets, type Places } from './onsets'
import { chordWeights, mostFingers, pastFinger, pastReach, reach, widestGap } from './weights'

/** The ways to share each onset: its lower notes for the left hand, the others for the right. */
export interface Ways {
  /** Each onset's first way; at the end of the column the number of all ways. */
  readonly first: Places
  /** How many notes the left hand takes. */
  readonly lower: Places
  /** What speaks for the way, whatever was before; of an only way it is of no account. */
  readonly weight: Column
}

/** More keys than these no two hands strike at once: then there is no way, and no search for one. */
export const mostStruck = 20

/** Where both hands can reach all notes of an onset, there is no way on which they cannot. */
export const waysToShare = (onsets: Onsets): Ways => {
  const first = places(onsets.count + 1)
  const lower = places(onsets.keys.length + onsets.count)
  const weight = column(onsets.keys.length + onsets.count)
  let ways = 0
  for (let onset = 0; onset < onsets.count; onset++) {
    first[onset] = ways
    const from = onsets.first[onset] ?? 0
    const to = onsets.first[onset + 1] ?? 0
    if (to - from > mostStruck) continue
    const least = leastFor(onsets, from, to)
    const most = mostFor(onsets, from, to)
    if (least === most) {
      lower[ways++] = most - from
      continue
    }
    const gap = widestGapOf(onsets, from, to)
    const reachable = least <= most
    for (let middle = reachable ? least : from; middle <= (reachable ? most : to); middle++) {
      lower[ways] = middle - from
      weight[ways++] =
        weighGrip(onsets, from, middle) +
        weighGrip(onsets, middle, to) +
        (from < middle && middle < to ? weighSplit(onsets, from, middle, to, gap) : 0)
    }
  }
  first[onsets.count] = ways
  return { first, lower, weight }
}

/** The first note of those at the top that one hand reaches. */
const leastFor = ({ keys }: Onsets, from: number, to: number): number => {
  let note = to
  while (
    note > from &&
    to - note < mostFingers &&
    (keys[to - 1] ?? 0) - (keys[note - 1] ?? 0) <= reach
  )
    note--
  return note
}

/** The first note above those at the bottom that one hand reaches. */
const mostFor = ({ keys }: Onsets, from: number, to: number): number => {
  let note = from
  while (note < to && note - from < mostFingers && (keys[note] ?? 0) - (keys[from] ?? 0) <= reach)
    note++
  return note
}

const spanOf = ({ keys }: Onsets, from: number, to: number): number =>
  from < to ? (keys[to - 1] ?? 0) - (keys[from] ?? 0) : 0

/** The note above the widest gap, the lowest of several. */
const widestGapOf = ({ keys }: Onsets, from: number, to: number): number => {
  let above = from
  let widest = 0
  for (let i = from + 1; i < to; i++) {
    const gap = (keys[i] ?? 0) - (keys[i - 1] ?? 0)
    if (gap > widest) {
      widest = gap
      above = i
    }
  }
  return above
}

const weighSplit = (
  onsets: Onsets,
  from: number,
  middle: number,
  to: number,
  aboveGap: number,
): number => {
  const atGap = middle === aboveGap ? widestGap : 0
  const span = spanOf(onsets, from, to)
  if (span > reach) return atGap
  const { sharedEven, sharedUneven } = chordWeights
  return atGap + ((isUneven(onsets, from, to) ? sharedUneven : sharedEven)[span] ?? 0)
}

const weighGrip = (onsets: Onsets, from: number, to: number): number => {
  if (to - from < 2) return 0
  const span = spanOf(onsets, from, to)
  const fingers = Math.max(0, to - from - mostFingers) * pastFinger
  if (span > reach) return fingers + (span - reach) * pastReach
  const { oneEven, oneUneven } = chordWeights
  return fingers + ((isUneven(onsets, from, to) ? oneUneven : oneEven)[span] ?? 0)
}
