/** A stretch of beats that stands out, both ends included. */
export interface BeatStretch {
  readonly from: number
  readonly to: number
  /** Its highest local difficulty. */
  readonly peak: number
}

/** The hardest tenth of the beats may begin a stretch; */
const hardShare = 0.9
/** then the hardest tenth of the others, since one very hard page would hide all that is merely hard. */
const rounds = 2
/** And only what is clearly above the usual beat of the piece; */
const aboveUsual = 1.25
/** which is one below the middle, so that the harder half of a piece may stand out from the other. */
const usualShare = 0.4
/** A stretch goes on while it stays near its peak. */
const nearPeak = 0.6
/** Stretches with no more than so many beats between them are one. */
const joinedBeats = 1

/**
 * The stretches of some beats, each with its local difficulty, that stand out: from each of the hardest
 * beats to both sides while it stays near that. In the order of the beats. 1 1 1 1 4 4 1 1 -> beats 4 to 5.
 */
export const findStretches = (loads: readonly number[]): readonly BeatStretch[] => {
  const smooth = loads.map((_, i) => smoothed(loads, i))
  // No easy beat is hard by its neighbours.
  const own = smooth.map((load, i) => Math.min(load, loads[i] ?? 0))
  const usual = quantile(
    smooth.filter((load) => load > 0),
    usualShare,
  )
  const hardest = smooth.indexOf(Math.max(...smooth))
  if ((smooth[hardest] ?? 0) <= aboveUsual * usual) return evenStretch(smooth)
  const found: BeatStretch[] = []
  const taken = new Set<number>()
  const take = (seed: number): void => {
    if (taken.has(seed)) return
    const stretch = trim(grow(smooth, seed, usual, nearPeak, taken), loads)
    // The beat after it is where it lands, and no spot of its own.
    for (let i = stretch.from - 1; i <= stretch.to + 1; i++) taken.add(i)
    found.push(stretch)
  }
  take(hardest)
  for (let round = 0; round < rounds; round++) seedsAmong(own, taken, usual).forEach(take)
  return joinNear(found.toSorted((a, b) => a.from - b.from))
}

/** The hardest of the beats that are left, the hardest first. */
const seedsAmong = (
  loads: readonly number[],
  taken: ReadonlySet<number>,
  usual: number,
): readonly number[] => {
  const left = [...loads.entries()].filter(([i, load]) => load > 0 && !taken.has(i))
  const hard = quantile(
    left.map(([, load]) => load),
    hardShare,
  )
  return left
    .filter(([, load]) => load >= hard && load > aboveUsual * usual)
    .toSorted((a, b) => b[1] - a[1])
    .map(([i]) => i)
}

/** A beat with half of its neighbours, so that one note more or less does not make or unmake a hard spot. */
const smoothed = (loads: readonly number[], i: number): number => {
  const here = loads[i] ?? 0
  return (2 * here + (loads[i - 1] ?? here) + (loads[i + 1] ?? here)) / 4
}

const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[
    Math.min(values.length - 1, Math.floor(values.length * share))
  ] ?? 0

const grow = (
  loads: readonly number[],
  seed: number,
  usual: number,
  near: number,
  taken: ReadonlySet<number> = new Set(),
): BeatStretch => {
  const peak = loads[seed] ?? 0
  const isHard = (i: number): boolean =>
    !taken.has(i) && (loads[i] ?? 0) >= Math.max(near * peak, usual)
  let [from, to] = [seed, seed]
  while (from > 0 && isHard(from - 1)) from--
  while (to + 1 < loads.length && isHard(to + 1)) to++
  return { from, to, peak }
}

/** Without beats at its ends that are only near something hard. */
const trim = ({ from, to, peak }: BeatStretch, loads: readonly number[]): BeatStretch => {
  const isHard = (i: number): boolean => (loads[i] ?? 0) >= nearPeak * peak
  let [first, last] = [from, to]
  while (first < last && !isHard(first)) first++
  while (last > first && !isHard(last)) last--
  return { from: first, to: last, peak }
}

/** Where all is nearly alike and nothing stands out, what is about the hardest beat; all of it, perhaps. */
const evenStretch = (loads: readonly number[]): readonly BeatStretch[] => {
  const peak = Math.max(0, ...loads)
  return peak === 0 ? [] : [grow(loads, loads.indexOf(peak), 0, nearlyAlike)]
}

const nearlyAlike = 0.9

const joinNear = (sorted: readonly BeatStretch[]): readonly BeatStretch[] => {
  const joined: BeatStretch[] = []
  for (const stretch of sorted) {
    const last = joined.at(-1)
    if (last && stretch.from - last.to - 1 <= joinedBeats)
      joined[joined.length - 1] = {
        from: last.from,
        to: Math.max(last.to, stretch.to),
        peak: Math.max(last.peak, stretch.peak),
      }
    else joined.push(stretch)
  }
  return joined
}
