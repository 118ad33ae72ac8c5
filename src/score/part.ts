import type { Hand, Note } from '@/music/music'
import type { Key, Tick } from '@/music/units'

export interface PartNote {
  readonly start: Tick
  readonly length: Tick
  readonly key: Key
  readonly marks?: NoteMarks | undefined
}

/** What a printed score says of a note besides its key and place. */
export type NoteMarks = Pick<
  Note,
  'grace' | 'graceRank' | 'ornament' | 'inverted' | 'tremolo' | 'rolled' | 'fingers' | 'spelling'
>

/** The notes that the file keeps together: one track or one channel. */
export interface Part {
  /** Empty when the file gives none. */
  readonly name: string
  /** General MIDI program, 0 to 127; 0 to 7 are pianos. */
  readonly program: number
  readonly notes: readonly PartNote[]
}

export interface HandedNote extends PartNote {
  readonly hand: Hand
  readonly handFrom: 'file' | 'inferred'
}
