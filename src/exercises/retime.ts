import type { Note } from '@/music/music'
import { tick, type Tick } from '@/music/units'

/** One place of the score and where a variant puts it, in ticks of either. */
export interface Knot {
  readonly at: number
  readonly to: number
}

/**
 * Where a tick goes: even between two knots; before the first and behind the last one, time runs as
 * written, `scale` ticks of the variant to one of the score. Knots rise. All of our variants stretch
 * by whole numbers, so that the result is exact.
 */
export const moveTick = (knots: readonly Knot[], scale: number, t: Tick): Tick => {
  const before = knots.findLast(({ at }) => at <= t)
  const after = knots.find(({ at }) => at > t)
  if (before && after)
    return tick(before.to + ((t - before.at) * (after.to - before.to)) / (after.at - before.at))
  const near = before ?? after
  return tick(near ? near.to + (t - near.at) * scale : t * scale)
}

/** The note with start and end moved; its name, key and hand stay. */
export const moveNote = (note: Note, move: (t: Tick) => Tick): Note => {
  const start = move(note.start)
  return { ...note, start, length: tick(move(tick(note.start + note.length)) - start) }
}
