import type { Bar, HandChoice, Note, Score } from '@/music/music'
import type { Tick } from '@/music/units'

/** The notes of one hand or both that start in [from, to), in the order of the score. */
export const notesIn = (
  score: Score,
  from: number,
  to: number,
  hand: HandChoice,
): readonly Note[] =>
  score.notes.filter((n) => n.start >= from && n.start < to && (hand === 'both' || n.hand === hand))

/** What starts together: `notes[begin]` up to `notes[end - 1]` of the notes that it was found in. */
export interface OnsetRange {
  readonly start: Tick
  readonly barIndex: number
  readonly begin: number
  readonly end: number
}

/** The onsets that must be played: where only grace notes stand there is none. */
export const onsetsOf = (notes: readonly Note[]): readonly OnsetRange[] => {
  const ranges: OnsetRange[] = []
  for (let begin = 0, end = 0; begin < notes.length; begin = end) {
    const start = notes[begin]?.start
    while (notes[end]?.start === start) end++
    const main = notes.slice(begin, end).find((n) => !n.grace)
    if (main) ranges.push({ start: main.start, barIndex: main.barIndex, begin, end })
  }
  return ranges
}

/**
 * How far a tick lies behind the bar line, where the last beats of a bar are written in a pickup,
 * counted from the bar line that the pickup lacks.
 */
export const offsetInBar = (at: Tick, bar: Bar, ticksPerQuarter: number): number => {
  const whole = wholeBar(bar, ticksPerQuarter)
  const isPickup = bar.number === 0 && bar.length < whole
  return at - bar.start + (isPickup ? whole - bar.length : 0)
}

/** How long the time signature says that the bar is, in ticks. */
export const wholeBar = ({ time }: Bar, ticksPerQuarter: number): number =>
  (4 * ticksPerQuarter * time.beats) / time.beatType
