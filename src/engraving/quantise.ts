import type { Note } from '@/music/music'
import type { Metre } from './metre'
import { quarter, toParts } from './parts'
import { bestGrid } from './grid'
import { findTuplets, type Tuplet } from './tuplets'
import { writtenEnds } from './lengths'

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

/** A note with its place and length in parts, not yet on the grid. */
export interface PlacedNote {
  readonly note: Note
  readonly at: number
  readonly length: number
  readonly start: number
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

/** The unit inside which one division holds. */
export interface Pulse {
  readonly start: number
  readonly length: number
  /** Counted from the bar line; even ones may open a group of two. */
  readonly index: number
  readonly metre: Metre
}

export interface Grid extends Pulse {
  /** Into how many equal steps the pulse is divided. */
  readonly division: number
}

const pulsesOf = (metre: Metre): Pulse[] => {
  const pulses: Pulse[] = []
  const first = metre.start - metre.lacking
  for (let at = first; at < metre.end; at += metre.pulse) {
    const start = Math.max(at, metre.start)
    const length = Math.min(at + metre.pulse, metre.end) - start
    const index = Math.round((at - first) / metre.pulse)
    if (length > 0) pulses.push({ start, length, index, metre })
  }
  return pulses
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
