/**
 * Bytes of a file to a `Score`, and back.
 *
 * `readPiece` reads a Standard MIDI File, MusicXML, plain or compressed, or a fragment typed in
 * (typedMusic.ts, which goes its own way to `validate`), in two stages. What the
 * file says, odd as it may be, is an `SmfFile`, tracks of events in file ticks (for a piece its notes are
 * joined while they are read), or a `MusicXmlFile`
 * (musicXml.ts), parts of measures of events in divisions. From the one `gatherPiece` makes an
 * `SmfPiece` (parts of notes with lengths, tempo, time and key marks) and `validate` a `Score`; from
 * the other `gatherMusicXml` does. `finishScore` is the last step of both: what the rest relies on.
 * `readTake` reads recorded playing into a `Take`; `writeMidiFile` writes both.
 *
 * Example: `readPiece(bytes, 'waltz.mid')` -> { ok: true, value: { score, warnings: [] } }, or
 * { ok: false, reason: { kind: 'noNotes' } }, which `explainReadProblem` puts into one sentence.
 */
import type { KeySignature, Score, TempoChange, TimeSignature } from '@/music/music'
import type { Key, Tick } from '@/music/units'
import type { Part } from './part'
import type { Warning } from './warning'

/** A piece as read, and what the person should know about how it was read. */
export interface PieceRead {
  readonly score: Score
  readonly warnings: readonly Warning[]
  /** '' or absent when the file does not say. */
  readonly composer?: string
  /** The parts that the file has, where it has several: all that `readPiece` can be asked to take. */
  readonly parts?: readonly PartOffered[]
  /** Indices of bars in the order in which they are played, where repeats make it another than the written one. */
  readonly playOrder?: readonly number[]
}

export interface PartOffered {
  readonly name: string
  readonly notes: number
  readonly taken: boolean
}

/** `at` counts from the start of the track; velocity-0 note-ons are note-offs already. */
export type SmfEvent = { readonly at: Tick } & (
  | {
      readonly kind: 'noteOn'
      readonly channel: number
      readonly key: Key
      readonly velocity: number
    }
  | { readonly kind: 'noteOff'; readonly channel: number; readonly key: Key }
  | {
      readonly kind: 'controller'
      readonly channel: number
      readonly controller: number
      readonly value: number
    }
  | { readonly kind: 'program'; readonly channel: number; readonly program: number }
  | { readonly kind: 'tempo'; readonly microsecondsPerQuarter: number }
  | ({ readonly kind: 'time' } & TimeSignature)
  | { readonly kind: 'key'; readonly fifths: number; readonly minor: boolean }
  | { readonly kind: 'name'; readonly text: string }
  | { readonly kind: 'end' }
)

/** `Track` is what was kept of each track: its events, or what a listener made of them (readTrack.ts). */
export interface SmfFile<Track = readonly SmfEvent[]> {
  readonly format: 0 | 1
  readonly ticksPerQuarter: number
  readonly tracks: readonly Track[]
  readonly warnings: readonly Warning[]
}

export interface TimeChange {
  readonly start: Tick
  readonly time: TimeSignature
}

/** What the file says about the piece; marks are in order of time, one at a tick. */
export interface SmfPiece {
  readonly title: string
  readonly ticksPerQuarter: number
  /** Without the drums. */
  readonly parts: readonly Part[]
  readonly drumNotes: number
  readonly tempos: readonly TempoChange[]
  readonly times: readonly TimeChange[]
  readonly keys: readonly KeySignature[]
  readonly warnings: readonly Warning[]
}

/** Channel 10 is for drums (General MIDI); counted from 0 as in the bytes. */
export const drumChannel = 9
