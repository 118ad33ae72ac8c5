/**
 * The words that every other folder uses.
 *
 * piece: the music as imported; its `Score` is what the rest relies on. onset: all notes that start
 * together. chunk: what is drilled at one time, 3 to 10 onsets as a rule (chunk.ts). take: recorded
 * playing, key events with times (keyEvent.ts). Score time is whole ticks (`Tick`), exact; played
 * time is milliseconds (`Ms`) on the clock of the event's own timestamp; the two are never mixed.
 *
 * Example: a bar of 3/4 in a score of 480 ticks a quarter is 1440 ticks long; its second beat
 * starts at tick 480 of the bar; at 120 quarters a minute it sounds 500 ms after the first.
 */
import type { Key, NoteId, PieceId, Tempo, Tick } from './units'

export const hands = ['left', 'right'] as const
export type Hand = (typeof hands)[number]
/** Which hand, or both, a chunk is for. */
export const handChoices = ['right', 'left', 'both'] as const
export type HandChoice = (typeof handChoices)[number]

export type Finger = 1 | 2 | 3 | 4 | 5

export const ornaments = ['trill', 'mordent', 'turn', 'tremolo'] as const
export type Ornament = (typeof ornaments)[number]

/** How a tremolo is written: on one note or chord, or to and fro from one to the next. */
export interface Tremolo {
  readonly kind: 'single' | 'from' | 'to'
  /** Strokes through the stem, or between the two. */
  readonly strokes: number
}

/** One sounding note of the score: ties are joined, so `length` is all that sounds. */
export interface Note {
  readonly id: NoteId
  readonly key: Key
  readonly start: Tick
  /** Always positive. */
  readonly length: Tick
  readonly hand: Hand
  /** Where the knowledge of the hand comes from. */
  readonly handFrom: 'file' | 'inferred' | 'person'
  /** Index into `Score.bars`. */
  readonly barIndex: number
  /** An auxiliary note without a place of its own in the beat: allowed when played, never demanded. */
  readonly grace?: true
  /** How many grace notes, or chords of them, still come between this one and its main note. */
  readonly graceRank?: number
  readonly ornament?: Ornament
  /** Of a mordent or turn: printed as the inverted sign. */
  readonly inverted?: true
  /** Of a tremolo, where the file says how it is written. */
  readonly tremolo?: Tremolo
  readonly rolled?: true
  /** Struck louder than its neighbours, and printed so. Loudness is not judged. */
  readonly accent?: true
  readonly fingers?: readonly Finger[]
  /** How the file spells the pitch, as a scientific pitch name: 'Cb4' is key 59. Absent where it does not say. */
  readonly spelling?: string
}

/** `beats` of the note value `beatType` in a bar: 6/8 is { beats: 6, beatType: 8 }. */
export interface TimeSignature {
  readonly beats: number
  readonly beatType: number
}

export interface KeySignature {
  readonly start: Tick
  /** Sharps positive, flats negative, -7 to 7. */
  readonly fifths: number
  readonly mode: 'major' | 'minor'
}

/** A bar of the score. A pickup is bar number 0; the first full bar is number 1. */
export interface Bar {
  readonly number: number
  readonly start: Tick
  readonly length: Tick
  readonly time: TimeSignature
}

/** From `start` on, the music goes at `tempo`. The first change of a score starts at tick 0. */
export interface TempoChange {
  readonly start: Tick
  readonly tempo: Tempo
}

/** A validated piece: notes sorted by start, then key; every tick inside a bar; positive lengths. */
export interface Score {
  readonly id: PieceId
  readonly title: string
  readonly ticksPerQuarter: number
  readonly notes: readonly Note[]
  readonly bars: readonly Bar[]
  readonly tempos: readonly TempoChange[]
  readonly keys: readonly KeySignature[]
  /** The end of the last bar. */
  readonly end: Tick
}

/** Every constructor of a new closed union keeps its switch honest: `default` never compiles away a case. */
export const unreachable = (never: never): never => {
  throw new Error(`unreachable: ${JSON.stringify(never)}`)
}
