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

/** What each form is for, in one line (common practice, no source). */
export const purposes: Readonly<Record<Form, string>> = {
  asWritten: 'As it stands in the score.',
  longShort: 'Every second step is quick, with time to prepare it: for a run that is uneven.',
  shortLong: 'The other steps are quick: after long-short, each step has been quick once.',
  stopAfter3: 'Three notes, then a stop to prepare the next three: for a run that stumbles.',
  stopAfter4: 'Four notes, then a stop to prepare the next four: for a run that stumbles.',
  accentEvery3:
    'The accent comes to each finger in turn: for a weak finger. Only keys and time are judged, so listen for it.',
  accentEvery4:
    'The accent leads from group to group: for a run without direction. Only keys and time are judged, so listen for it.',
  blocked: 'The broken chord at once: the hand finds its shape before the fingers move.',
}
