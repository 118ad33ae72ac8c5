import type { Note } from '@/music/music'

/** Figures, and whole numbers, which as a rule are places in other columns. */
export type Column = Float64Array
export type Places = Int32Array
export const column = (size: number): Column => new Float64Array(size)
export const places = (size: number): Places => new Int32Array(size)

/** A note as it waits for a hand. */
export type OpenNote = Pick<Note, 'start' | 'length' | 'key'>

/**
 * Notes in columns, by onset and then from low to high; times in quarters. Columns, since the notes
 * of a long piece are looked at some hundred times each, and small objects would take most of the time.
 */
export interface Onsets {
  readonly count: number
  /** Each note's number among the notes as they were given. */
  readonly numbers: Places
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
  const numbers = places(notes.length)
  const first = places(notes.length + 1)
  const starts = column(notes.length)
  let count = 0
  for (let i = 0; i < notes.length; i++) {
    numbers[i] = i
    const quarters = (notes[i]?.start ?? 0) / ticksPerQuarter
    if (count > 0 && quarters <= (starts[count - 1] ?? 0) + togetherQuarters) continue
    if (count > 0) sortByKey(numbers, notes, first[count - 1] ?? 0, i)
    first[count] = i
    starts[count] = quarters
    count++
  }
  if (count > 0) sortByKey(numbers, notes, first[count - 1] ?? 0, notes.length)
  first[count] = notes.length
  return { count, first, starts, numbers, ...columnsOf(notes, numbers, ticksPerQuarter) }
}

/** Onsets are in order already, but for those whose notes start a little apart. */
const sortByKey = (numbers: Places, notes: readonly OpenNote[], from: number, to: number): void => {
  if (notes[from]?.start === notes[to - 1]?.start) return
  numbers.subarray(from, to).sort((a, b) => (notes[a]?.key ?? 0) - (notes[b]?.key ?? 0) || a - b)
}

const columnsOf = (
  notes: readonly OpenNote[],
  numbers: Places,
  ticksPerQuarter: number,
): Pick<Onsets, 'keys' | 'lengths' | 'heldTo' | 'overFrom'> => {
  const keys = places(notes.length)
  const lengths = column(notes.length)
  const heldTo = column(notes.length)
  const overFrom = column(notes.length)
  for (let i = 0; i < notes.length; i++) {
    const note = notes[numbers[i] ?? 0]
    if (!note) break
    const length = note.length / ticksPerQuarter
    const end = (note.start + note.length) / ticksPerQuarter
    const slack = slackQuarters + slackShare * length
    keys[i] = note.key
    lengths[i] = length
    heldTo[i] = end - slack
    overFrom[i] = end + slack
  }
  return { keys, lengths, heldTo, overFrom }
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
