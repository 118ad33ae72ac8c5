import { beatQuarters } from '@/music/beat'
import type { Chunk } from '@/music/chunk'
import { hands, type Note, type Score } from '@/music/music'
import { tick, type Key } from '@/music/units'
import { offsetInBar, onsetsOf, wholeBar, type OnsetRange } from './onsets'

/** What a hand is taken to reach where the person has not said: an octave, in semitones. */
export const usualSpan = 12
/** A hand has five fingers. */
const mostKeys = 5
/** Two notes after each other may be a step of a melody; three are the least broken chord. */
const leastOnsets = 3
/** Notes of a chord stand a third apart; a seventh chord has one second, as in D G F G or G B D F. */
const third = 3
const notesOfSeventhChord = 4

/**
 * The broken chords of each hand as chords: what a hand plays in a bar, half of it or a beat, the
 * largest of them that it can hold at once, is struck together and held. The rest stays as written.
 * `undefined` where neither hand has half of its onsets in broken chords, or only one chord is left.
 */
export const writeBlocked = (
  score: Score,
  notes: readonly Note[],
  span: number,
): Score | undefined => {
  const blocked = hands.map((hand) =>
    blockHand(
      score,
      notes.filter((note) => note.hand === hand),
      span,
    ),
  )
  if (!blocked.some(({ isBroken }) => isBroken)) return undefined
  const all = blocked
    .flatMap((hand) => hand.notes)
    .toSorted((a, b) => a.start - b.start || a.key - b.key)
  return onsetsOf(all).length < 2 ? undefined : { ...score, notes: all }
}

/** The widest that a hand strikes at once, in semitones. */
export const widestIn = ({ onsets }: Pick<Chunk, 'onsets'>): number =>
  Math.max(
    0,
    ...onsets.flatMap(({ notes }) =>
      hands.map((hand) => {
        const keys = notes.filter((note) => note.hand === hand).map(({ key }) => key)
        return Math.max(...keys) - Math.min(...keys)
      }),
    ),
  )

interface BlockedHand {
  readonly notes: readonly Note[]
  /** At least half of the onsets were those of broken chords. */
  readonly isBroken: boolean
}

const blockHand = (score: Score, notes: readonly Note[], span: number): BlockedHand => {
  const onsets = onsetsOf(notes)
  const written: Note[] = []
  let inChords = 0
  for (let i = 0; i < onsets.length;) {
    const group = groupAt(score, notes, onsets, i, span)
    written.push(...(group?.chord ?? notes.slice(onsets[i - 1]?.end ?? 0, onsets[i]?.end)))
    inChords += group?.onsets ?? 0
    i += group?.onsets ?? 1
  }
  return { notes: written, isBroken: inChords > 0 && 2 * inChords >= onsets.length }
}

/** The broken chord that begins with this onset, in the largest part of the bar that begins there. */
const groupAt = (
  score: Score,
  notes: readonly Note[],
  onsets: readonly OnsetRange[],
  index: number,
  span: number,
): { readonly chord: readonly Note[]; readonly onsets: number } | undefined => {
  const first = onsets[index]
  if (!first) return undefined
  for (const end of partEnds(score, first, onsets[index - 1])) {
    const onsetsIn = onsets.slice(index).findIndex(({ start }) => start >= end)
    const count = onsetsIn < 0 ? onsets.length - index : onsetsIn
    const last = onsets[index + count - 1]
    const group = notes.slice(first.begin, last?.end)
    if (count >= leastOnsets && isBrokenChord(group, span))
      return { chord: struckTogether(group, end), onsets: count }
  }
  return undefined
}

/** Where the bar, half of it and the beat end that this onset is the first of, as far as there is one before. */
const partEnds = (
  { bars, ticksPerQuarter }: Score,
  { start, barIndex }: OnsetRange,
  before: OnsetRange | undefined,
): readonly number[] => {
  const bar = bars[barIndex]
  if (!bar) return []
  const offset = offsetInBar(start, bar, ticksPerQuarter)
  const beat = beatQuarters(bar.time) * ticksPerQuarter
  const whole = wholeBar(bar, ticksPerQuarter)
  const halves = (whole / 2) % beat === 0 ? [whole / 2] : []
  return [whole, ...halves, beat]
    .map((part) => ({ begin: start - (offset % part), part }))
    .filter(({ begin }) => !before || before.start < begin)
    .map(({ begin, part }) => Math.min(begin + part, bar.start + bar.length))
}

const isBrokenChord = (notes: readonly Note[], span: number): boolean => {
  const keys = [...new Set(notes.map(({ key }) => key))].toSorted((a, b) => a - b)
  const steps = keys.slice(1).map((key, i) => key - (keys[i] ?? key))
  const seconds = steps.filter((step) => step < third).length
  return (
    notes.every(({ grace, ornament }) => !grace && !ornament) &&
    keys.length >= 2 &&
    keys.length <= mostKeys &&
    (keys.at(-1) ?? 0) - (keys[0] ?? 0) <= span &&
    seconds <= (notes.length >= notesOfSeventhChord ? 1 : 0)
  )
}

/** Each key once, by the name of its first note, held until the part of the bar is over or longer. */
const struckTogether = (notes: readonly Note[], end: number): readonly Note[] => {
  const [first] = notes
  const chord = new Map<Key, Note>()
  for (const note of notes) {
    if (!first || chord.has(note.key)) continue
    const release = Math.max(end, note.start + note.length)
    chord.set(note.key, { ...note, start: first.start, length: tick(release - first.start) })
  }
  return [...chord.values()].toSorted((a, b) => a.key - b.key)
}
