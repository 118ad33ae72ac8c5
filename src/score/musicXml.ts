import type { TempoChange, TimeSignature } from '@/music/music'
import type { NoteMarks } from './part'

/**
 * What a MusicXML file says, odd as it may be: parts of measures of events, in the order of the file.
 * Durations are in divisions, as many to a quarter as the part said last; `layMeasures` makes score
 * time of them.
 */
export interface MusicXmlFile {
  readonly title: string
  readonly composer: string
  readonly parts: readonly XmlPart[]
}

export interface XmlPart {
  /** '' when the file gives none. */
  readonly name: string
  /** Said by the name, or by the sound of its instrument. */
  readonly piano: boolean
  readonly measures: readonly XmlMeasure[]
}

export interface XmlMeasure {
  /** As printed: '1', '12a', 'X1'. */
  readonly number: string
  /** Not counted: a pickup, or the rest of a measure that a repeat divides. */
  readonly implicit: boolean
  readonly events: readonly XmlEvent[]
}

export type XmlEvent = XmlNote | XmlMove | XmlAttributes | XmlTempo | XmlSigns

export interface XmlPitch {
  readonly step: string
  /** Semitones; a fraction for tones between two keys. */
  readonly alter: number
  readonly octave: number
}

export interface XmlNote {
  readonly kind: 'note'
  /** A cue note is not played, an unpitched one has no key. */
  readonly sounds: 'pitch' | 'rest' | 'cue' | 'unpitched'
  readonly pitch: XmlPitch | undefined
  /** Divisions; `undefined` when the file gives none, as with grace notes. */
  readonly duration: number | undefined
  /** Quarters, by the note value as printed; `undefined` when none is given. */
  readonly value: number | undefined
  /** Starts with the note before. */
  readonly chord: boolean
  readonly grace: boolean
  /** Counted from 1, the uppermost. */
  readonly staff: number
  readonly tie: { readonly starts: boolean; readonly stops: boolean }
  readonly marks: NoteMarks
}

/** Forward or, negative, backup. */
export interface XmlMove {
  readonly kind: 'move'
  readonly divisions: number
}

export interface XmlAttributes {
  readonly kind: 'attributes'
  readonly divisions?: number
  readonly fifths?: { readonly fifths: number; readonly mode: 'major' | 'minor' }
  /** 'free': without metre (senza misura). */
  readonly time?: TimeSignature | 'free'
  readonly staves?: number
  /** Semitones from the written to the sounding pitch, in one staff or in all. */
  readonly transpose?: { readonly staff: number | undefined; readonly semitones: number }
}

export interface XmlTempo {
  readonly kind: 'tempo'
  /** Divisions from where it stands in the file. */
  readonly offset: number
  readonly tempo: TempoChange['tempo'] | { readonly timesTheOldOne: number }
  /** Said for playing (`sound`), not only printed. */
  readonly forPlaying: boolean
}

/** What tells the order in which bars are played. */
export interface XmlSigns {
  readonly kind: 'signs'
  readonly signs: BarSigns
}

export interface BarSigns {
  readonly repeatFrom?: true
  /** The repeat back stands at the end of the bar; how often the music is then played, where the file says. */
  readonly repeatBack?: { readonly times: number | undefined }
  /** An ending begins: the passes it is for. */
  readonly ending?: readonly number[]
  /** An ending is over after this bar. */
  readonly endingOver?: true
  readonly segno?: true
  readonly coda?: true
  readonly fine?: true
  readonly toCoda?: true
  readonly daCapo?: true
  readonly dalSegno?: true
}
