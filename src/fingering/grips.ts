import type { Finger, Hand, Note } from '@/music/music'
import { isBlackKey } from '@/music/pitch'
import type { NoteId, Tick } from '@/music/units'

/** What is read of a note of the score. */
export type HandNote = Pick<
  Note,
  'id' | 'key' | 'start' | 'length' | 'hand' | 'grace' | 'graceRank' | 'fingers'
>

/** One key of a grip. */
export interface GripKey {
  /** More than one where two voices meet on a key: one finger strikes it. */
  readonly ids: readonly NoteId[]
  /** Semitones from the thumb's side; see `Touch`. */
  readonly place: number
  readonly black: boolean
  /** Where it was struck before and is held on: its place among the keys of the grip before. */
  readonly heldFrom?: number
  /** The digit that the file or the person gives, or that a run usually has. */
  readonly fixed?: Finger
  /** The digit at the same place of a like group: kept unless it is awkward here. */
  readonly preferred?: Finger
}

/** A finger for each key of a grip, in their order. */
export type Digits = readonly Finger[]

/** What a hand holds at an onset: the keys struck there and those held on, from the thumb's side. */
export interface Grip {
  readonly start: Tick
  readonly keys: readonly GripKey[]
  /** After a rest, which gives the hand time to settle anew. */
  readonly isAfterRest: boolean
}

export interface GripSettings {
  readonly hand: Hand
  readonly ticksPerQuarter: number
  /** The widest chord in semitones: what is farther away is no longer held. */
  readonly widestChord: number
  readonly fixed: ReadonlyMap<NoteId, Finger>
}

/** After so many quarters of silence nothing binds the next fingers to the last ones. */
const restQuarters = 1
/** A hand has five fingers. */
export const mostKeys = 5

/** The grips of one hand in their order; the other hand's notes are passed over. */
export const gripsOf = (notes: readonly HandNote[], settings: GripSettings): readonly Grip[] => {
  const onsets = groupOnsets(notes.filter((note) => note.hand === settings.hand))
  const grips: Grip[] = []
  let sounding: readonly HandNote[] = []
  let end = -Infinity
  for (let i = 0; i < onsets.length; i++) {
    const onset = onsets[i] ?? []
    const start = startOf(onset)
    const held = heldNotes(sounding, onset, nextStart(onsets, i), settings)
    const rest = start - end
    grips.push(gripOf(onset, held, grips.at(-1), rest, settings))
    const isGrace = onset[0]?.grace === true
    if (isGrace || held.length > 0) sounding = isGrace ? held : [...held, ...onset]
    else sounding = onset
    for (const note of onset) end = Math.max(end, start + (isGrace ? 0 : note.length))
  }
  return grips
}

/** The grips with these digits, each by its number, fixed or preferred where none are fixed yet. */
export const withDigits = (
  grips: readonly Grip[],
  digits: ReadonlyMap<number, Digits>,
  how: 'fixed' | 'preferred',
): readonly Grip[] =>
  grips.map((grip, i) => {
    const chosen = digits.get(i)
    return chosen
      ? { ...grip, keys: grip.keys.map((key, k) => withDigit(key, chosen[k], how)) }
      : grip
  })

const withDigit = (key: GripKey, digit: Finger | undefined, how: 'fixed' | 'preferred'): GripKey =>
  key.fixed !== undefined || digit === undefined ? key : { ...key, [how]: digit }

const startOf = (onset: readonly HandNote[]): Tick => {
  const start = onset[0]?.start
  if (start === undefined) throw new Error('an onset has at least one note')
  return start
}

/** Notes that are struck together; grace notes one after the other before the main notes of their place. */
const groupOnsets = (notes: readonly HandNote[]): HandNote[][] => {
  const rank = (note: HandNote): number => (note.grace ? (note.graceRank ?? 0) + 1 : 0)
  const sorted = notes.toSorted((a, b) => a.start - b.start || rank(b) - rank(a) || a.key - b.key)
  const onsets: HandNote[][] = []
  for (const note of sorted) {
    const last = onsets.at(-1)
    const first = last?.[0]
    if (last && first?.start === note.start && rank(first) === rank(note)) last.push(note)
    else onsets.push([note])
  }
  return onsets
}

/** The start of the next later onset; the end of this one after the last. */
const nextStart = (onsets: readonly (readonly HandNote[])[], i: number): number => {
  const onset = onsets[i] ?? []
  const start = startOf(onset)
  for (let next = i + 1; next < onsets.length; next++) {
    const later = onsets[next]?.[0]?.start
    if (later !== undefined && later > start) return later
  }
  return onset.reduce((last, note) => Math.max(last, note.start + note.length), start + 1)
}

/**
 * What is still held at an onset: what sounds through at least half of the time to the next, since
 * less is a legato overlap. Of what two hands would need, the farthest is given up.
 */
const heldNotes = (
  sounding: readonly HandNote[],
  onset: readonly HandNote[],
  next: number,
  { widestChord }: GripSettings,
): readonly HandNote[] => {
  const start = startOf(onset)
  const lasting = sounding.filter((note) => note.start + note.length - start >= (next - start) / 2)
  if (lasting.length === 0) return lasting
  const struck = onset.map((note) => note.key)
  const [low, high] = [Math.min(...struck), Math.max(...struck)]
  const distance = ({ key }: HandNote): number => Math.max(high - key, key - low)
  const held = lasting
    .filter((note) => !struck.includes(note.key) && distance(note) <= widestChord)
    .toSorted((a, b) => distance(a) - distance(b))
  const kept: HandNote[] = []
  for (const note of held) {
    const all = [...struck, ...kept.map(({ key }) => key), note.key]
    const isInReach = Math.max(...all) - Math.min(...all) <= widestChord
    if (isInReach && new Set(all).size <= mostKeys) kept.push(note)
  }
  return kept
}

const gripOf = (
  onset: readonly HandNote[],
  held: readonly HandNote[],
  before: Grip | undefined,
  rest: number,
  { hand, ticksPerQuarter, fixed }: GripSettings,
): Grip => {
  const side = hand === 'right' ? 1 : -1
  const start = startOf(onset)
  const isAfterRest = rest >= restQuarters * ticksPerQuarter
  const keyOf = (note: HandNote, twin?: GripKey): GripKey => {
    const digit = fixed.get(note.id) ?? note.fingers?.[0] ?? twin?.fixed
    return {
      ids: twin ? [...twin.ids, note.id] : [note.id],
      place: side * note.key,
      black: isBlackKey(note.key),
      ...(digit === undefined ? {} : { fixed: digit }),
    }
  }
  const only = onset[0]
  if (only && onset.length === 1 && held.length === 0)
    return { start, keys: [keyOf(only)], isAfterRest }
  const keys = new Map<number, GripKey>()
  for (const note of [...onset, ...held]) {
    const heldFrom = held.includes(note)
      ? before?.keys.findIndex((key) => key.ids.includes(note.id))
      : undefined
    keys.set(note.key, {
      ...keyOf(note, keys.get(note.key)),
      ...(heldFrom === undefined || heldFrom < 0 ? {} : { heldFrom }),
    })
  }
  return { start, keys: [...keys.values()].toSorted((a, b) => a.place - b.place), isAfterRest }
}
