import type { Note, Score } from '@/music/music'
import { runOf } from './equalValues'

/** A run as written, with an accent on each n-th note from the first; `undefined` for what is no run, or too short for a second accent. */
export const writeAccents = (
  score: Score,
  notes: readonly Note[],
  every: 3 | 4,
): Score | undefined => {
  const run = runOf(score, notes)
  if (!run || run.onsets.length <= every) return undefined
  const accented = new Set(run.onsets.filter((_, i) => i % every === 0).map(({ start }) => start))
  return {
    ...score,
    notes: notes.map((note) =>
      accented.has(note.start) && !note.grace ? { ...note, accent: true as const } : note,
    ),
  }
}
