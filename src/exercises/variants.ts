import { cutChunk, type Chunk } from '@/music/chunk'
import { formedId, forms, type Form } from '@/music/form'
import type { Note, Score } from '@/music/music'
import { tick } from '@/music/units'
import { writeAccents } from './accents'
import { usualSpan, writeBlocked } from './blocked'
import { notesIn } from './onsets'
import { writeRhythm } from './rhythm'
import { writeStops } from './stops'

/** A chunk in one form, and the score that it is cut from and engraved from. */
export interface Variant {
  readonly form: Form
  /** As written the score itself; else only the notes of the chunk, at other places, under their own names. */
  readonly score: Score
  readonly chunk: Chunk
}

/**
 * The chunk of a score in a form; `undefined` where that makes no sense (a rhythm needs a run of equal
 * values, blocking a broken chord). `span`: what the hand reaches, in semitones.
 * C5 D5 E5 F5 G5 in sixteenths, longShort -> C5 at 0, D5 at 3/8, E5 at 1/2, F5 at 7/8, G5 at 1 quarter.
 */
export const writeVariant = (
  score: Score,
  written: Chunk,
  form: Form,
  span: number = usualSpan,
): Variant | undefined => {
  if (form === 'asWritten') return { form, score, chunk: written }
  const lastOnset = written.start + (written.onsets.at(-1)?.start ?? 0)
  const notes = notesIn(score, written.start, lastOnset + 1, written.hand)
  const derived = derive(score, notes, form, span)
  const chunk = derived && cutChunk(derived, tick(0), tick(derived.end + 1), written.hand)
  return chunk && { form, score: derived, chunk: { ...chunk, id: formedId(written.id, form) } }
}

const derive = (
  score: Score,
  notes: readonly Note[],
  form: Exclude<Form, 'asWritten'>,
  span: number,
): Score | undefined => {
  switch (form) {
    case 'longShort':
    case 'shortLong':
      return writeRhythm(score, notes, form)
    case 'stopAfter3':
      return writeStops(score, notes, 3)
    case 'stopAfter4':
      return writeStops(score, notes, 4)
    case 'accentEvery3':
      return writeAccents(score, notes, 3)
    case 'accentEvery4':
      return writeAccents(score, notes, 4)
    case 'blocked':
      return writeBlocked(score, notes, span)
  }
}

/** The forms that make sense for a chunk, as written first. */
export const formsOf = (score: Score, written: Chunk, span: number = usualSpan): readonly Form[] =>
  forms.filter((form) => writeVariant(score, written, form, span) !== undefined)
