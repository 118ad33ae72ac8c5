import type { Note } from '@/music/music'
import type { WrittenNote } from './quantise'
import type { Span } from './values'

/** Notes of one voice that start and end together. */
export interface WrittenChord {
  readonly start: number
  readonly end: number
  /** Sorted by key. */
  readonly notes: readonly Note[]
}

/** The first voice is the upper one. */
export type Voice = readonly WrittenChord[]

/** More voices than this in one hand cannot be read; the longest note then gives way. */
const mostVoices = 4

/**
 * Parts the notes of a hand into voices: all that fits in one goes into one; where notes overlap, the
 * higher go into the first voice and the lower into the second, which then lasts as far in the bar
 * as chords allow.
 */
export const partVoices = (
  notes: readonly WrittenNote[],
  bars: readonly Span[],
): readonly Voice[] => {
  const chords = chordsOf(notes)
  const voices: WrittenChord[][] = [[], []]
  for (const [i, chord] of chords.entries()) {
    const free = freeVoices(voices, chord.start)
    const wanted = wantedVoice(chord, i, chords, voices)
    const choice = free.includes(wanted) ? wanted : free[0]
    if (choice !== undefined) voices[choice]?.push(chord)
    else if (voices.length < mostVoices) voices.push([chord])
    else giveWay(voices, chord)
  }
  const [first = [], second = [], ...others] = voices
  if (second.length === 0) return [first]
  return [...leadSecond(first, second, bars), ...others]
}

/** A chord of the first voice beside the second one gives it all but its upper note. */
const leadSecond = (first: Voice, second: Voice, bars: readonly Span[]): readonly Voice[] => {
  const lower = [...second]
  const parted = new Map<WrittenChord, WrittenChord>()
  const part = (chord: WrittenChord, bar: Span): void => {
    const { start, end, notes } = chord
    const own = lower.filter((c) => c.start < bar.end && c.end > bar.start)
    const isFree = own.every((c) => c.start >= end || c.end <= start)
    const isBeside = own.some((c) => c.start === end || c.end === start)
    const upper = notes.at(-1)
    if (!upper || notes.length < 2 || !isFree || !isBeside || parted.has(chord)) return
    parted.set(chord, { start, end, notes: [upper] })
    lower.push({ start, end, notes: notes.slice(0, -1) })
  }
  for (const bar of bars) {
    const own = first.filter((c) => c.start >= bar.start && c.end <= bar.end)
    // Away from what the second voice has, either way.
    for (const chord of own) part(chord, bar)
    for (const chord of own.toReversed()) part(chord, bar)
  }
  return [
    first.map((chord) => parted.get(chord) ?? chord),
    lower.toSorted((a, b) => a.start - b.start),
  ]
}

const chordsOf = (notes: readonly WrittenNote[]): WrittenChord[] => {
  const byPlace = new Map<string, WrittenNote[]>()
  for (const note of notes) {
    const place = `${note.start}-${note.end}`
    byPlace.set(place, [...(byPlace.get(place) ?? []), note])
  }
  return [...byPlace.values()]
    .flatMap(([first, ...rest]) => (first ? [[first, ...rest] as const] : []))
    .map(([first, ...rest]) => ({
      start: first.start,
      end: first.end,
      notes: [first, ...rest].map(({ note }) => note).toSorted((a, b) => a.key - b.key),
    }))
    .toSorted((a, b) => a.start - b.start || height(b) - height(a))
}

const height = ({ notes }: WrittenChord): number =>
  notes.reduce((sum, note) => sum + note.key, 0) / Math.max(1, notes.length)

const freeVoices = (voices: readonly (readonly WrittenChord[])[], start: number): number[] =>
  voices.flatMap((voice, i) => ((voice.at(-1)?.end ?? 0) <= start ? [i] : []))

/** Lower than what sounds with it: the second voice; else the first. */
const wantedVoice = (
  chord: WrittenChord,
  index: number,
  chords: readonly WrittenChord[],
  voices: readonly (readonly WrittenChord[])[],
): number => {
  const held = voices.findIndex((voice) => (voice.at(-1)?.end ?? 0) > chord.start)
  if (held === 0) return 1
  if (held > 0) return 0
  const later: WrittenChord[] = []
  for (let i = index + 1; i < chords.length; i++) {
    const other = chords[i]
    if (!other || other.start >= chord.end) break
    later.push(other)
  }
  if (later.length === 0) return 0
  const above = later.filter((other) => height(other) > height(chord)).length
  return above * 2 > later.length ? 1 : 0
}

const giveWay = (voices: WrittenChord[][], chord: WrittenChord): void => {
  const longest = voices.reduce((a, b) => ((b.at(-1)?.end ?? 0) > (a.at(-1)?.end ?? 0) ? b : a))
  const last = longest.at(-1)
  if (!last) return
  if (last.start < chord.start) {
    longest[longest.length - 1] = { ...last, end: chord.start }
    longest.push(chord)
    return
  }
  longest[longest.length - 1] = {
    ...last,
    notes: [...last.notes, ...chord.notes].toSorted((a, b) => a.key - b.key),
  }
}
