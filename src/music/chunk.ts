import type { Hand, HandChoice, Note, Ornament, Score } from './music'
import {
  chunkId,
  key as toKey,
  tick,
  type ChunkId,
  type Key,
  type NoteId,
  type PieceId,
  type Tick,
} from './units'
import { beatQuarters } from './beat'
import { formatFraction } from './fraction'

/** One key that must be struck at an onset. */
export interface ExpectedNote {
  /** More than one where both hands meet on one key: it is struck once. */
  readonly ids: readonly [NoteId, ...NoteId[]]
  readonly key: Key
  /** From the chunk's first onset. */
  readonly start: Tick
  readonly length: Tick
  readonly hand: Hand
  readonly ornament?: Ornament
}

/** All keys that must be struck together. */
export interface Onset {
  /** From the chunk's first onset; the first onset starts at 0. */
  readonly start: Tick
  /** Sorted by key, each key once. */
  readonly notes: readonly [ExpectedNote, ...ExpectedNote[]]
  /** Keys of grace notes and ornaments that may sound from here to the next onset, never demanded. */
  readonly auxiliaries: readonly Key[]
  /** The chord may be rolled. */
  readonly rolled: boolean
}

/** What is drilled at one time. A variant of a passage is a chunk like any other. */
export interface Chunk {
  readonly id: ChunkId
  readonly piece: PieceId
  readonly hand: HandChoice
  readonly ticksPerQuarter: number
  /** Where the first onset stands in the score. */
  readonly start: Tick
  /** Where the last note of the chunk ends in the score. */
  readonly end: Tick
  /**
   * How far the first onset lies behind the last bar line, and the length of that bar: for accents and
   * silence. A pickup is the end of a whole bar.
   */
  readonly barOffset: Tick
  readonly barLength: Tick
  /** What the metronome counts there; a quarter where it is left out. */
  readonly beat?: Tick
  readonly onsets: readonly Onset[]
}

/**
 * The notes of one hand or both that start in [from, to), as a chunk; `undefined` when there are none.
 * Grace notes become auxiliaries of the onset at or after them; trills and their kin allow the neighbouring keys.
 */
export const cutChunk = (
  score: Score,
  from: Tick,
  to: Tick,
  hand: HandChoice,
): Chunk | undefined => {
  const chosen = score.notes.filter(
    (n) => n.start >= from && n.start < to && (hand === 'both' || n.hand === hand),
  )
  const main = chosen.filter((n) => !n.grace)
  const first = main[0]
  if (!first) return undefined
  const origin = first.start
  const grace = chosen.filter((n) => n.grace)
  const groups = groupByStart(main)
  const onsets = groups.map((notes, i) =>
    onsetOf(notes, origin, [
      ...keysBetween(grace, groups[i - 1]?.[0], notes[0]),
      ...tremoloKeys(notes, groups[i - 1], groups[i + 1]),
    ]),
  )
  const end = tick(main.reduce((latest, n) => Math.max(latest, n.start + n.length), 0))
  const fraction = (t: number): string => formatFraction(t, score.ticksPerQuarter)
  const last = main.at(-1)
  return {
    id: chunkId(`${score.id}:${fraction(origin)}-${fraction(last ? last.start : origin)}:${hand}`),
    piece: score.id,
    hand,
    ticksPerQuarter: score.ticksPerQuarter,
    start: origin,
    end,
    ...placeInBar(score, first),
    onsets,
  }
}

const placeInBar = (
  { bars, ticksPerQuarter }: Score,
  first: Note,
): Pick<Chunk, 'barOffset' | 'barLength' | 'beat'> => {
  const bar = bars[first.barIndex]
  if (!bar) return { barOffset: tick(0), barLength: tick(4 * ticksPerQuarter) }
  const full = (bar.time.beats * 4 * ticksPerQuarter) / bar.time.beatType
  const barLength = bar.number === 0 ? Math.max(full, bar.length) : bar.length
  return {
    barOffset: tick(first.start - bar.start + barLength - bar.length),
    barLength: tick(barLength),
    beat: tick(beatQuarters(bar.time) * ticksPerQuarter),
  }
}

/** How far the chunk's first onset lies behind a click of the metronome, and from click to click. */
export const clickGrid = ({
  barOffset,
  beat,
  ticksPerQuarter,
}: Pick<Chunk, 'barOffset' | 'beat' | 'ticksPerQuarter'>): {
  readonly behind: number
  readonly beat: number
} => {
  const counted = beat ?? ticksPerQuarter
  return { behind: barOffset % counted, beat: counted }
}

/** How many keys the chunk demands. */
export const countNotes = (chunk: Chunk): number =>
  chunk.onsets.reduce((sum, onset) => sum + onset.notes.length, 0)

const groupByStart = (sorted: readonly Note[]): Note[][] => {
  const groups: Note[][] = []
  for (const note of sorted) {
    const group = groups.at(-1)
    if (group?.[0]?.start === note.start) group.push(note)
    else groups.push([note])
  }
  return groups
}

/** The keys that start after one onset, or from the beginning, up to and with the next. */
const keysBetween = (grace: readonly Note[], before?: Note, at?: Note): Key[] =>
  grace
    .filter((n) => (!before || n.start > before.start) && (!at || n.start <= at.start))
    .map((n) => n.key)

/** A tremolo of two onsets goes to and fro between their keys. */
const tremoloKeys = (
  notes: readonly Note[],
  before: readonly Note[] = [],
  after: readonly Note[] = [],
): Key[] => (notes.some(isTremolo) ? [...before, ...after].filter(isTremolo).map((n) => n.key) : [])

const isTremolo = (note: Note): boolean => note.ornament === 'tremolo'

/** Ornaments reach at most a whole tone to either side of the main note (common practice, no source). */
const ornamentReach = 2

const onsetOf = (notes: readonly Note[], origin: Tick, allowed: readonly Key[]): Onset => {
  const byKey = new Map<Key, ExpectedNote>()
  for (const note of notes) byKey.set(note.key, expect(note, origin, byKey.get(note.key)))
  const [first, ...rest] = [...byKey.values()].toSorted((a, b) => a.key - b.key)
  if (!first) throw new Error('an onset has at least one note')
  const auxiliaries = new Set<Key>(allowed)
  for (const { key, ornament } of [first, ...rest]) {
    if (!ornament) continue
    const highest = Math.min(key + ornamentReach, 127)
    for (let near = Math.max(key - ornamentReach, 0); near <= highest; near++)
      auxiliaries.add(toKey(near))
  }
  return {
    start: tick((notes[0]?.start ?? origin) - origin),
    notes: [first, ...rest],
    auxiliaries: [...auxiliaries].toSorted((a, b) => a - b),
    rolled: notes.some((n) => n.rolled),
  }
}

const expect = (note: Note, origin: Tick, twin: ExpectedNote | undefined): ExpectedNote => {
  const ornament = note.ornament ?? twin?.ornament
  return {
    ids: twin ? [...twin.ids, note.id] : [note.id],
    key: note.key,
    start: tick(note.start - origin),
    length: tick(Math.max(note.length, twin?.length ?? 0)),
    hand: twin?.hand ?? note.hand,
    ...(ornament ? { ornament } : {}),
  }
}
