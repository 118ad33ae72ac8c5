import type { Note } from '@/music/music'
import type { Spelling } from '@/music/spelling'
import type { Head } from './accidentals'
import type { Piece } from './layers'
import type { Reading } from './readings'
import type { Graces } from './spellVoices'

/** Where a note is written: under an octave line an octave nearer to the staff. */
export const onStaff = (
  spelling: Spelling = { step: 0, alter: 0 },
  reading: Reading | undefined,
): Spelling => ({ ...spelling, step: spelling.step - 7 * (reading?.octaves ?? 0) })

/** The id of a head: the note's own for its first value, derived ones for what is tied to it. */
export const headId = (note: Note, piece: Piece): string =>
  piece.tiedFrom ? `${note.id}-t${piece.start}` : note.id

export const headsOf = (
  voices: readonly (readonly Piece[])[],
  bar: number,
  fifths: number,
  graces: Graces,
  written: (id: string) => Spelling,
): Head[] =>
  voices.flat().flatMap((piece) =>
    piece.notes.flatMap((note) => {
      const head = (of: Note, at: number): Head => ({
        ...written(of.id),
        id: of === note ? headId(note, piece) : of.id,
        bar,
        at,
        fifths,
        tiedFrom: piece.tiedFrom,
      })
      const before = piece.tiedFrom ? [] : (graces.get(note.id) ?? [])
      return [...before.map((grace) => head(grace, graceAt(piece))), head(note, piece.start)]
    }),
  )

/** Grace notes are read before their main note. */
export const graceAt = (piece: Piece): number => piece.start - 1
