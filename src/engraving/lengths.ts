import type { Note } from '@/music/music'
import type { NoteId } from '@/music/units'
import { quarter } from './parts'
import type { Tuplet } from './tuplets'

/** From this share of the way to the next onset on, the gap is articulation, not a rest. */
const full = 0.78
/** A key held into the next note for less than this share of it is legato, not a second voice. */
export const legato = 0.6
/** Lengths of one chord within this ratio are one length. */
const alike = 1.25
/** A length may exceed its written value by this much. */
const slack = 1.05
/** 5 ticks of 480: a file written by a program misses the grid by rounding alone. */
const rounding = quarter / 96

/** Lengths that one written value has, in quarters: thirty-second to breve, plain and dotted. */
const plainValues = [1 / 8, 1 / 4, 3 / 8, 1 / 2, 3 / 4, 1, 3 / 2, 2, 3, 4, 6, 8].map(
  (q) => q * quarter,
)

/** A note with its place and length in parts, not yet on the grid. */
export interface PlacedNote {
  readonly note: Note
  readonly at: number
  readonly length: number
  readonly start: number
}

interface Onset {
  readonly start: number
  readonly notes: readonly PlacedNote[]
}

/**
 * Where each note of a hand ends on the page. A note that lasts most of the way to the next onset
 * reaches it; one that sounds on well past it keeps its length, for a second voice; a short one
 * takes the least written value that holds it.
 */
export const writtenEnds = (
  notes: readonly PlacedNote[],
  tuplets: readonly Tuplet[],
): ReadonlyMap<NoteId, number> => {
  const onsets = onsetsOf(notes)
  const strikes = nextStrikes(onsets)
  const ends = new Map<NoteId, number>()
  for (const [i, onset] of onsets.entries()) {
    for (const group of alikeLengths(onset.notes)) {
      const length = Math.max(...group.map((n) => n.length))
      const end = endOf(length, onsets, i, tuplets)
      for (const { note } of group)
        ends.set(note.id, Math.min(end, strikes.get(note.id) ?? Infinity))
    }
  }
  return ends
}

const endOf = (
  length: number,
  onsets: readonly Onset[],
  index: number,
  tuplets: readonly Tuplet[],
): number => {
  const start = onsets[index]?.start ?? 0
  const next = onsets[index + 1]
  if (!next) return shortEnd(start, length, Infinity, tuplets)
  const gap = next.start - start
  if (length < gap && (length >= gap / 2 || gap > quarter) && isPlain(length))
    return shortEnd(start, length, next.start, tuplets)
  const overlap = length - gap
  const successor = Math.min(...next.notes.map((n) => n.length))
  if (overlap > legato * successor && overlap > quarter / 16)
    return (
      reachedOnset(start, length, onsets, index + 2) ?? shortEnd(start, length, Infinity, tuplets)
    )
  if (length >= full * gap) return next.start
  return shortEnd(start, length, next.start, tuplets)
}

/** Written so on purpose: exactly one value. */
const isPlain = (length: number): boolean =>
  plainValues.some((value) => Math.abs(value - length) <= rounding)

/** The first onset from `from` on that a held note reaches, all but the gap of articulation. */
const reachedOnset = (
  start: number,
  length: number,
  onsets: readonly Onset[],
  from: number,
): number | undefined => {
  for (let i = from; i < onsets.length; i++) {
    const onset = onsets[i]?.start ?? 0
    if (length < full * (onset - start)) return undefined
    if (length <= slack * (onset - start)) return onset
  }
  return undefined
}

const shortEnd = (
  start: number,
  length: number,
  limit: number,
  tuplets: readonly Tuplet[],
): number => {
  const beat = beatReached(start, length)
  if (beat !== undefined && beat <= limit) return beat
  const gap = limit - start
  const steps = stepsFrom(start, tuplets)
  const least = gap <= quarter && steps.length === 0 ? Math.max(length, gap / 2) : length
  const candidates = [
    ...plainValues.map((value) => start + value),
    ...steps,
    ...onSixteenth(start + length),
  ]
    .map((end) => snapToTuplet(end, tuplets))
    .filter((end) => end > start && least <= slack * (end - start) && isOnGrid(end, tuplets))
  const end = Math.min(limit, ...candidates)
  return end === Infinity ? Math.ceil((start + length) / quarter) * quarter : end
}

/** One value that ends on a beat, all but the gap of articulation. */
const beatReached = (start: number, length: number): number | undefined =>
  plainValues
    .filter((value) => length <= slack * value && length >= full * value)
    .map((value) => start + value)
    .find((end) => end % quarter === 0)

/** Outside tuplets an end falls on a thirty-second. */
const isOnGrid = (end: number, tuplets: readonly Tuplet[]): boolean =>
  end % (quarter / 8) === 0 || tuplets.some((t) => end > t.start && end < t.end)

const onSixteenth = (end: number): number[] => {
  const step = quarter / 4
  const near = Math.round(end / step) * step
  return Math.abs(near - end) <= rounding ? [near] : []
}

const stepsFrom = (start: number, tuplets: readonly Tuplet[]): number[] => {
  const tuplet = tuplets.find((t) => start >= t.start && start < t.end)
  if (!tuplet) return []
  return Array.from({ length: tuplet.num }, (_, i) => tuplet.start + (i + 1) * tuplet.step)
}

/** Inside a tuplet an end falls on one of its steps. */
const snapToTuplet = (end: number, tuplets: readonly Tuplet[]): number => {
  const tuplet = tuplets.find((t) => end > t.start && end < t.end)
  if (!tuplet) return end
  return tuplet.start + Math.round((end - tuplet.start) / tuplet.step) * tuplet.step
}

const onsetsOf = (notes: readonly PlacedNote[]): Onset[] => {
  const byStart = new Map<number, PlacedNote[]>()
  for (const note of notes) byStart.set(note.start, [...(byStart.get(note.start) ?? []), note])
  return [...byStart]
    .map(([start, chord]) => ({ start, notes: chord }))
    .toSorted((a, b) => a.start - b.start)
}

/** When the key of each note is struck again. */
const nextStrikes = (onsets: readonly Onset[]): ReadonlyMap<NoteId, number> => {
  const strikes = new Map<NoteId, number>()
  const coming = new Map<number, number>()
  for (const { start, notes } of onsets.toReversed()) {
    for (const { note } of notes) {
      const strike = coming.get(note.key)
      if (strike !== undefined) strikes.set(note.id, strike)
    }
    for (const { note } of notes) coming.set(note.key, start)
  }
  return strikes
}

const alikeLengths = (chord: readonly PlacedNote[]): PlacedNote[][] => {
  const groups: PlacedNote[][] = []
  for (const note of chord.toSorted((a, b) => a.length - b.length)) {
    const before = groups.at(-1)?.at(-1)
    if (before && note.length <= alike * before.length) groups.at(-1)?.push(note)
    else groups.push([note])
  }
  return groups
}
