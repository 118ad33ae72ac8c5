import type { Note } from '@/music/music'
import type { NoteId } from '@/music/units'

/** Figures, and whole numbers, which as a rule are places in other columns. */
export type Column = Float64Array
export type Places = Int32Array
export const column = (size: number): Column => new Float64Array(size)
export const places = (size: number): Places => new Int32Array(size)

/** A note as it waits for a hand. */
export type OpenNote = Pick<Note, 'id' | 'start' | 'length' | 'key'>

/**
 * Notes in columns, by onset and then from low to high; times in quarters. Columns, since the notes
 * of a long piece are looked at some hundred times each, and small objects would take most of the time.
 */
export interface Onsets {
  readonly count: number
  readonly ids: readonly NoteId[]
  readonly keys: Places
  readonly lengths: Column
  /** A note is held before the first of these, and over after the second; between, it leads to a note. */
  readonly heldTo: Column
  readonly overFrom: Column
  /** Each onset's first note; at the end of the column the number of all notes. */
  readonly first: Places
  readonly starts: Column
}

/** Notes that start closer than this are one onset, as in a chord that was played and not written. */
const togetherQuarters = 1 / 32

/** A note that ends so near another's start leads to it: a 50th of a quarter and a tenth of itself. */
const slackQuarters = 0.02
const slackShare = 0.1

/** Notes, sorted by start and key, as onsets. */
export const groupOnsets = (notes: readonly OpenNote[], ticksPerQuarter: number): Onsets => {
  const sorted = [...notes]
  const first = places(notes.length + 1)
  const starts = column(notes.length)
  let count = 0
  for (const [i, { start }] of notes.entries()) {
    const quarters = start / ticksPerQuarter
    if (count > 0 && quarters <= (starts[count - 1] ?? 0) + togetherQuarters) continue
    if (count > 0) sortByKey(sorted, first[count - 1] ?? 0, i)
    first[count] = i
    starts[count] = quarters
    count++
  }
  if (count > 0) sortByKey(sorted, first[count - 1] ?? 0, notes.length)
  first[count] = notes.length
  return { count, first, starts, ...columnsOf(sorted, ticksPerQuarter) }
}

/** Onsets are in order already, but for those whose notes start a little apart. */
const sortByKey = (notes: OpenNote[], from: number, to: number): void => {
  if (notes[from]?.start === notes[to - 1]?.start) return
  const sorted = notes.slice(from, to).sort((a, b) => a.key - b.key)
  for (const [i, note] of sorted.entries()) notes[from + i] = note
}

const columnsOf = (
  notes: readonly OpenNote[],
  ticksPerQuarter: number,
): Pick<Onsets, 'ids' | 'keys' | 'lengths' | 'heldTo' | 'overFrom'> => {
  const keys = places(notes.length)
  const lengths = column(notes.length)
  const heldTo = column(notes.length)
  const overFrom = column(notes.length)
  for (const [i, { key, start, length }] of notes.entries()) {
    keys[i] = key
    lengths[i] = length / ticksPerQuarter
    const slack = slackQuarters + (slackShare * length) / ticksPerQuarter
    heldTo[i] = (start + length) / ticksPerQuarter - slack
    overFrom[i] = (start + length) / ticksPerQuarter + slack
  }
  return { ids: notes.map(({ id }) => id), keys, lengths, heldTo, overFrom }
}

/** Lengths that are heard as one: within a tenth. */
export const isSameLength = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 0.1 * Math.max(a, b) + 0.001

/** Whether neighbours among these notes differ in length: as a rule they belong to several voices. */
export const isUneven = ({ lengths }: Onsets, from: number, to: number): boolean => {
  for (let i = from + 1; i < to; i++)
    if (!isSameLength(lengths[i - 1] ?? 0, lengths[i] ?? 0)) return true
  return false
}
