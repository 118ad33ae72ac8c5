import type { Note } from '@/music/music'
import type { Metre } from './metre'
import { quarter, toParts } from './parts'
import { bestGrid } from './grid'
import { findTuplets, type Tuplet } from './tuplets'
import { writtenEnds, type PlacedNote } from './lengths'
import { pulsesOf, type Grid, type Pulse } from './pulses'

/** A note on the grid of notation. */
export interface WrittenNote {
  readonly note: Note
  /** Parts of a quarter from the start of the score. */
  readonly start: number
  readonly end: number
}

/** What one hand plays, as it is written. */
export interface WrittenHand {
  readonly notes: readonly WrittenNote[]
  readonly tuplets: readonly Tuplet[]
}

/**
 * Puts the notes of one hand on a grid for the eye: each pulse takes the division that fits best
 * (sixteenths before triplets before finer ones), and lengths lose the small gaps and overlaps of
 * articulation. The score itself keeps its exact ticks.
 */
export const quantise = (
  notes: readonly Note[],
  metres: readonly Metre[],
  ticksPerQuarter: number,
): WrittenHand => {
  const pulses = metres.flatMap(pulsesOf)
  const raw = notes.map((note) => ({
    note,
    at: toParts(note.start, ticksPerQuarter),
    length: toParts(note.length, ticksPerQuarter),
  }))
  const grids = pulses.map((pulse) => ({
    ...pulse,
    division: bestGrid(
      raw.map(({ at }) => (at - pulse.start) / quarter).filter((q) => isInside(q, pulse)),
      pulse.length / quarter,
    ),
  }))
  const placed: PlacedNote[] = raw.map((note) => ({ ...note, start: snap(note.at, grids) }))
  const tuplets = findTuplets(grids, [...new Set(placed.map(({ start }) => start))])
  const ends = writtenEnds(placed, tuplets)
  return {
    notes: placed.map(({ note, start }) => ({
      note,
      start,
      end: ends.get(note.id) ?? start + quarter,
    })),
    tuplets,
  }
}

const isInside = (quarters: number, pulse: Pulse): boolean =>
  quarters >= 0 && quarters < pulse.length / quarter

/** Outside the bars at hand the grid is sixteenths. */
const snap = (at: number, grids: readonly Grid[]): number => {
  const grid = grids.find(({ start, length }) => at >= start && at < start + length)
  if (!grid) return Math.round(at / (quarter / 4)) * (quarter / 4)
  const step = grid.length / grid.division
  return Math.round(grid.start + Math.round((at - grid.start) / step) * step)
}
