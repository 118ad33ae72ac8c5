import type { Chunk } from '@/music/chunk'

/** How a chunk moves: each three neighbouring onsets by their intervals and times, and how often it comes. */
export type Motion = ReadonlyMap<string, number>

/**
 * So much of their motion must two passages share to be near-identical: a variant of one bar in four
 * still is, a common accompaniment under two melodies is not (our choice, no source).
 */
const nearIdentical = 0.75

export const motionOf = ({ onsets, ticksPerQuarter }: Chunk): Motion => {
  const steps = onsets.slice(1).map((onset, i) => {
    const before = onsets[i]
    const [low, high] = [onset.notes[0].key, onset.notes.at(-1)?.key ?? onset.notes[0].key]
    const lowBefore = before?.notes[0].key ?? low
    const highBefore = before?.notes.at(-1)?.key ?? high
    const gap = (onset.start - (before?.start ?? 0)) / ticksPerQuarter
    return `${gap.toFixed(3)} ${low - lowBefore} ${high - highBefore}`
  })
  const motion = new Map<string, number>()
  for (const [i, step] of steps.entries()) {
    const pair = `${steps[i - 1] ?? ''}|${step}`
    motion.set(pair, (motion.get(pair) ?? 0) + 1)
  }
  return motion
}

/** Something that is played at a place of a piece. */
export interface Moving {
  readonly piece: string
  readonly from: number
  readonly to: number
  readonly motion: Motion
}

/**
 * Whether two passages are so alike that learning one after the other takes from what is kept of the
 * first (Simmons & Duke 2006; Allen 2013). The same place is no other passage.
 */
export const areNearIdentical = (one: Moving, other: Moving): boolean => {
  if (one.piece === other.piece && one.from < other.to && other.from < one.to) return false
  const size = (motion: Motion): number => [...motion.values()].reduce((sum, n) => sum + n, 0)
  const both = size(one.motion) + size(other.motion)
  let common = 0
  for (const [pair, n] of one.motion) common += Math.min(n, other.motion.get(pair) ?? 0)
  return both > 0 && (2 * common) / both >= nearIdentical
}
