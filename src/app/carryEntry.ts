import type { NotebookWritten } from '@/journal/journal'
import type { Score } from '@/music/music'
import { chunkAt } from '@/music/place'
import { sameNotes } from '@/music/sameNotes'
import type { Draft } from './notebook'
import { notebookPlace } from './notebookPlace'

/**
 * An entry as one of a better edition, in the place of what it was: with the bars as they are numbered
 * there. `undefined` where the notes of its place do not agree; then it stays with the old edition.
 */
export const carriedEntry = (
  { id, place, subject, helped, text }: NotebookWritten,
  old: Score,
  better: Score,
): Draft | undefined => {
  const entry: Draft = { subject, helped, text, replaces: id }
  if (!place) return entry
  const was = chunkAt(old, place)
  const is = chunkAt(better, place)
  return was && is && sameNotes(was, is)
    ? { ...entry, place: notebookPlace(better, is) }
    : undefined
}
