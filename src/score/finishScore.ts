import { identifyPiece, noteNamer } from '@/music/identity'
import type { Bar, Hand, KeySignature, Note, Score, TempoChange } from '@/music/music'
import { defaultTempo } from '@/music/tempoMap'
import { tick, type Key, type NoteId, type Tick } from '@/music/units'
import type { HandedNote } from './part'

/** All that a score is made of; the notes in order, each inside a bar. */
export interface ScoreContent {
  readonly title: string
  readonly ticksPerQuarter: number
  readonly notes: readonly HandedNote[]
  readonly bars: readonly Bar[]
  readonly tempos: readonly TempoChange[]
  readonly keys: readonly KeySignature[]
  readonly end: Tick
}

/** Names the notes and the piece, gives each note its bar, and drops marks that say nothing new. */
export const finishScore = (content: ScoreContent): Score => {
  const { title, ticksPerQuarter, notes, bars, tempos, keys, end } = content
  const struck = mergeUnisons(notes.filter(({ marks }) => !marks?.grace))
  return {
    id: identifyPiece(struck, bars, ticksPerQuarter),
    title,
    ticksPerQuarter,
    notes: finishNotes(notes, bars, noteNamer(ticksPerQuarter)),
    bars,
    tempos: tidyTempos(tempos, end),
    keys: tidyKeys(keys, end),
    end,
  }
}

/** By start, then key; on one key main notes before grace notes, right hand first, the longest first. */
export const sortNotes = (notes: readonly HandedNote[]): HandedNote[] =>
  notes.toSorted(
    (a, b) =>
      a.start - b.start ||
      a.key - b.key ||
      graceOrder(a) - graceOrder(b) ||
      handOrder(a.hand) - handOrder(b.hand) ||
      b.length - a.length,
  )

/** Of sorted notes with the same start, key and hand the longest stays: what one hand strikes. */
const mergeUnisons = (sorted: readonly HandedNote[]): HandedNote[] =>
  sorted.filter((note, i) => !isUnison(note, sorted[i - 1]))

/** Of notes that are the same in everything one stays; two voices may meet on a key with different lengths. */
export const mergeDoubled = (sorted: readonly HandedNote[]): HandedNote[] =>
  sorted.filter((note, i) => {
    const before = sorted[i - 1]
    return !isUnison(note, before) || note.length !== before?.length
  })

const isUnison = (note: HandedNote, before: HandedNote | undefined): boolean =>
  before?.start === note.start && before.key === note.key && before.hand === note.hand

const graceOrder = ({ marks }: HandedNote): number => (marks?.grace ? 1 : 0)
const handOrder = (hand: Hand): number => (hand === 'right' ? 0 : 1)

/**
 * Gives the notes their bars and names; notes and bars are in order of time. The fields are listed,
 * since a spread with a field after it takes some eight times as long in V8.
 */
const finishNotes = (
  notes: readonly HandedNote[],
  bars: readonly Bar[],
  name: (start: Tick, key: Key) => NoteId,
): Note[] => {
  let barIndex = 0
  let barEnd = bars[1]?.start ?? Infinity
  return notes.map(({ start, length, key, hand, handFrom, marks }) => {
    while (barEnd <= start) barEnd = bars[++barIndex + 1]?.start ?? Infinity
    const note = { id: name(start, key), key, start, length, hand, handFrom, barIndex }
    return marks ? { ...note, ...marks } : note
  })
}

const tidyTempos = (tempos: readonly TempoChange[], end: Tick): readonly TempoChange[] => {
  const fromZero =
    tempos[0]?.start === 0 ? tempos : [{ start: tick(0), tempo: defaultTempo }, ...tempos]
  return fromZero.filter((t, i) => t.start < end && t.tempo !== fromZero[i - 1]?.tempo)
}

const tidyKeys = (keys: readonly KeySignature[], end: Tick): readonly KeySignature[] =>
  keys.filter((k, i) => {
    const before = keys[i - 1]
    return k.start < end && (k.fifths !== before?.fifths || k.mode !== before.mode)
  })
