import type { PencilMark } from '@/engraving/pencil'
import type { Score } from '@/music/music'
import type { Key, NoteId } from '@/music/units'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'
import type { PieceReview } from '@/review/pieceReview'

const mostMarks = 4

/** The notes with most flaws are marked, each with the mark of its most frequent one. */
export const flawMarks = (
  score: Score,
  { notes }: BarFlaws,
  { substitutions }: Pick<PieceReview, 'substitutions'>,
): ReadonlyMap<NoteId, PencilMark> => {
  const marks = new Map<NoteId, PencilMark>()
  // Where every note is marked, none stands out.
  for (const { note, kind } of notes) {
    const written = score.notes.find(({ id }) => id === note)?.key
    const playedKey = substitutions.find((each) => each.written === written)?.played
    const mark = markOf(note, kind, playedKey)
    if (mark && !marks.has(note) && marks.size < mostMarks) marks.set(note, mark)
  }
  return marks
}

/** Marks that need no more than their note; the others stand in the list alone. */
export const markOf = (
  note: NoteId,
  kind: NoteFlaw['kind'],
  playedKey: Key | undefined,
): PencilMark | undefined => {
  switch (kind) {
    case 'wrong':
      return playedKey === undefined
        ? { shape: 'missing', note }
        : { shape: 'wrong', note, playedKey }
    case 'missing':
    case 'repeated':
    case 'restart':
    case 'hesitation':
    case 'uneven':
      return { shape: kind, note }
    case 'early':
    case 'late':
      return { shape: kind, note, ms: 0 }
    case 'spread':
      return { shape: kind, notes: [note] }
    case 'extra':
    case 'order':
    case 'drift':
      return undefined
  }
}
