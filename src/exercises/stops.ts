import { isCompound } from '@/music/beat'
import type { Note, Score, TimeSignature } from '@/music/music'
import { tempoAt } from '@/music/tempoMap'
import { tick, type Tick } from '@/music/units'
import { runOf, type Run } from './equalValues'
import { moveNote, moveTick, type Knot } from './retime'

/**
 * The notes of a run in groups of `size`, each a bar of its own that ends with a stop: the last note
 * of the group is held for at least a beat, until the next group begins on a beat. Four sixteenths
 * and a stop are a bar of 2/4. `undefined` for what is no run, or shorter than a group and one note.
 */
export const writeStops = (
  score: Score,
  notes: readonly Note[],
  size: 3 | 4,
): Score | undefined => {
  const run = runOf(score, notes)
  if (!run || run.onsets.length <= size) return undefined
  const beats = Math.ceil(((size - 1) * run.value) / run.beat) + 1
  const bar = beats * run.beat
  const bars = Math.ceil(run.onsets.length / size)
  const end = bars * bar
  const knots = knotsOf(run, size, bar, end)
  const move = (t: Tick): Tick => tick(Math.min(end, moveTick(knots, 1, t)))
  const first = run.onsets[0].start
  return {
    ...score,
    notes: notes.map((note) => {
      const moved = moveNote(note, move)
      return { ...moved, barIndex: Math.floor(moved.start / bar) }
    }),
    bars: Array.from({ length: bars }, (_, i) => ({
      number: i + 1,
      start: tick(i * bar),
      length: tick(bar),
      time: timeOf(run.time, beats),
    })),
    tempos: [{ start: tick(0), tempo: tempoAt(score.tempos, first) }],
    keys: score.keys
      .filter((key, i) => key.start <= first || i === 0)
      .slice(-1)
      .map((key) => ({ ...key, start: tick(0) })),
    end: tick(end),
  }
}

const knotsOf = ({ onsets, value }: Run, size: number, bar: number, end: number): Knot[] => [
  ...onsets.map(({ start }, i) => ({
    at: start,
    to: Math.floor(i / size) * bar + (i % size) * value,
  })),
  { at: onsets[0].start + onsets.length * value, to: end },
]

/** So many beats of a time signature as a bar: two of 6/8 are 6/8, two of 4/4 are 2/4. */
const timeOf = (time: TimeSignature, beats: number): TimeSignature => ({
  beats: isCompound(time) ? 3 * beats : beats,
  beatType: time.beatType,
})
