import type { Hand, Note, Score, TempoChange } from '@/music/music'
import { defaultTempo, tempoAt } from '@/music/tempoMap'
import { tick, type Key, type Tempo, type Tick } from '@/music/units'

/** All keys that one hand strikes together, in time at the goal tempo. */
export interface Stroke {
  readonly hand: Hand
  readonly start: Tick
  /** When the last of its notes ends. */
  readonly end: Tick
  /** Seconds since the stroke of this hand before; infinite at the first. */
  readonly gap: number
  /** How long its longest note sounds, seconds. */
  readonly seconds: number
  /** Sorted, each key once. */
  readonly keys: readonly [Key, ...Key[]]
  readonly notes: readonly Note[]
  /** Its grace notes, which come before it. */
  readonly graces: number
}

/** Seconds from the beginning of a score to a tick. */
export type Clock = (at: Tick) => number

/**
 * The clock of a score that begins at the goal tempo; later changes keep their proportion to the first.
 * Without a goal it goes as the score says. At 120 quarters a minute two quarters take a second.
 */
export const clockOf = (
  { tempos, ticksPerQuarter }: Pick<Score, 'tempos' | 'ticksPerQuarter'>,
  goal: Tempo | undefined,
): Clock => {
  const first = tempoAt(tempos, tick(0))
  const factor = goal === undefined ? 1 : goal / first
  const all: readonly TempoChange[] =
    tempos[0]?.start === 0 ? tempos : [{ start: tick(0), tempo: defaultTempo }, ...tempos]
  const starts: number[] = []
  let seconds = 0
  for (const [i, { start }] of all.entries()) {
    const before = all[i - 1]
    if (before) seconds += secondsOf(start - before.start, before.tempo, ticksPerQuarter, factor)
    starts.push(seconds)
  }
  return (at) => {
    const i = lastBefore(all, at)
    const change = all[i]
    if (!change) return 0
    return (starts[i] ?? 0) + secondsOf(at - change.start, change.tempo, ticksPerQuarter, factor)
  }
}

const secondsOf = (ticks: number, tempo: Tempo, ticksPerQuarter: number, factor: number): number =>
  ((ticks / ticksPerQuarter) * 60) / (tempo * factor)

/** The change in force at a tick, by halving. */
const lastBefore = (changes: readonly TempoChange[], at: Tick): number => {
  let low = 0
  let high = changes.length - 1
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((changes[middle]?.start ?? 0) <= at) low = middle
    else high = middle - 1
  }
  return low
}

/** The strokes of one hand in their order. */
export const strokesOf = (notes: readonly Note[], hand: Hand, clock: Clock): readonly Stroke[] => {
  const strokes: Stroke[] = []
  let graces = 0
  let together: Note[] = []
  const strike = (): void => {
    const stroke = strokeOf(together, strokes.at(-1), graces, clock)
    if (stroke) strokes.push(stroke)
    if (stroke) graces = 0
    together = []
  }
  for (const note of notes) {
    if (note.hand !== hand) continue
    if (together[0] && together[0].start !== note.start) strike()
    if (note.grace) graces++
    else together.push(note)
  }
  strike()
  return strokes
}

const strokeOf = (
  notes: readonly Note[],
  before: Stroke | undefined,
  graces: number,
  clock: Clock,
): Stroke | undefined => {
  const note = notes[0]
  if (!note) return undefined
  const end = tick(notes.reduce((last, { start, length }) => Math.max(last, start + length), 0))
  return {
    hand: note.hand,
    start: note.start,
    end,
    gap: before ? clock(note.start) - clock(before.start) : Infinity,
    seconds: clock(end) - clock(note.start),
    keys: notes.length === 1 ? [note.key] : keysOf(note, notes),
    notes,
    graces,
  }
}

const keysOf = ({ key }: Note, notes: readonly Note[]): readonly [Key, ...Key[]] => {
  const [first = key, ...rest] = [...new Set(notes.map((each) => each.key))].toSorted(
    (a, b) => a - b,
  )
  return [first, ...rest]
}
