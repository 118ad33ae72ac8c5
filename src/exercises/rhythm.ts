import { beatQuarters } from '@/music/beat'
import type { Note, Score } from '@/music/music'
import { tick } from '@/music/units'
import { offsetInBar, onsetsOf, type OnsetRange } from './onsets'
import { moveNote, moveTick, type Knot } from './retime'

/** The half of a value is the finest that a rhythm needs. */
const scale = 2

/**
 * Where the notes of a group begin, in halves of their written value: two sixteenths become a dotted
 * sixteenth and a thirty-second, three eighths a quarter and two sixteenths. The group as a whole
 * keeps its length, and what is slow in one rhythm is quick in the other (common practice, no source).
 */
const rhythms = {
  longShort: { 2: [0, 3], 3: [0, 4, 5] },
  shortLong: { 2: [0, 1], 3: [0, 1, 2] },
} as const
export type Rhythm = keyof typeof rhythms

/**
 * The notes in a rhythm, beat by beat: where a beat is filled with equal values, each two of them, or
 * three where two do not go into the beat, become long and short. The other beats stay as written.
 * `undefined` where fewer than half of the onsets stand in such beats.
 */
export const writeRhythm = (
  score: Score,
  notes: readonly Note[],
  rhythm: Rhythm,
): Score | undefined => {
  const onsets = onsetsOf(notes)
  const beats = beatsOf(score, onsets)
  const runs = beats.flatMap((beat, i) => {
    const values = evenValues(beat, { isFirst: i === 0, isLast: i === beats.length - 1 })
    return values ? [{ ...beat, values }] : []
  })
  const inRuns = runs.reduce((sum, { starts }) => sum + starts.length, 0)
  if (onsets.length < 3 || inRuns < 2 || 2 * inRuns < onsets.length) return undefined
  const knots = runs.flatMap((run) => knotsOf(run, rhythm))
  const moved = notes.map((note) => moveNote(note, (t) => moveTick(knots, scale, t)))
  return { ...scaled(score), notes: moved.toSorted((a, b) => a.start - b.start || a.key - b.key) }
}

interface Beat {
  readonly start: number
  readonly length: number
  /** A pickup begins within it. */
  readonly isCut: boolean
  readonly starts: readonly number[]
}

const beatsOf = (
  { bars, ticksPerQuarter }: Score,
  onsets: readonly OnsetRange[],
): readonly Beat[] => {
  const beats: (Beat & { readonly starts: number[] })[] = []
  for (const { start, barIndex } of onsets) {
    const bar = bars[barIndex]
    if (!bar) continue
    const length = beatQuarters(bar.time) * ticksPerQuarter
    const begin = start - (offsetInBar(start, bar, ticksPerQuarter) % length)
    const last = beats.at(-1)
    if (last?.start === begin) last.starts.push(start)
    else beats.push({ start: begin, length, isCut: begin < bar.start, starts: [start] })
  }
  return beats
}

/**
 * How many equal values fill the beat, two or more that go in pairs or threes. The passage may begin
 * late in its first beat and end early in its last.
 */
const evenValues = (
  { start, length, isCut, starts }: Beat,
  { isFirst, isLast }: { readonly isFirst: boolean; readonly isLast: boolean },
): number | undefined => {
  const [first = 0, second] = starts
  const last = starts.at(-1) ?? first
  if (second === undefined || isCut) return undefined
  const value = second - first
  const values = length / value
  const isEven = starts.every((at, i) => at === first + i * value) && (first - start) % value === 0
  const isFull = (isFirst || first === start) && (isLast || last + value === start + length)
  return isEven && isFull && Number.isInteger(values) && groupSize(values) ? values : undefined
}

const groupSize = (values: number): 2 | 3 | undefined =>
  values % 2 === 0 ? 2 : values % 3 === 0 ? 3 : undefined

const knotsOf = (
  { start, length, values }: Beat & { readonly values: number },
  rhythm: Rhythm,
): Knot[] => {
  const size = groupSize(values) ?? 2
  const value = length / values
  const begins = rhythms[rhythm][size]
  const slots = Array.from({ length: values }, (_, slot) => {
    const group = start + (slot - (slot % size)) * value
    return { at: start + slot * value, to: scale * group + (begins[slot % size] ?? 0) * value }
  })
  return [...slots, { at: start + length, to: scale * (start + length) }]
}

/** The same music at a finer resolution. */
const scaled = (score: Score): Score => {
  const at = <T extends { readonly start: number }>(each: T) => ({
    ...each,
    start: tick(each.start * scale),
  })
  return {
    ...score,
    ticksPerQuarter: score.ticksPerQuarter * scale,
    bars: score.bars.map((bar) => ({ ...at(bar), length: tick(bar.length * scale) })),
    tempos: score.tempos.map(at),
    keys: score.keys.map(at),
    end: tick(score.end * scale),
  }
}
