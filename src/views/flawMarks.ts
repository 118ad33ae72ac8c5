import type { PencilMark } from '@/engraving/pencil'
import type { NoteId } from '@/music/units'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'

const mostMarks = 4

/** The notes with most flaws are marked, each with the mark of its most frequent one. */
export const flawMarks = ({ notes }: BarFlaws): ReadonlyMap<NoteId, PencilMark> => {
  const marks = new Map<NoteId, PencilMark>()
  // Where every note is marked, none stands out.
  for (const flaw of notes) {
    const mark = markOf(flaw)
    if (mark && !marks.has(flaw.note) && marks.size < mostMarks) marks.set(flaw.note, mark)
  }
  return marks
}

/** Marks that need no more than their note or stretch; an exchange needs the score. */
export const markOf = ({
  note,
  until,
  kind,
  times,
  played,
  faster = 0,
}: NoteFlaw): PencilMark | undefined => {
  const key = played?.[0]?.key
  switch (kind) {
    case 'wrong':
      return key === undefined
        ? { shape: 'missing', note }
        : { shape: 'wrong', note, playedKey: key }
    case 'extra':
      return key === undefined ? undefined : { shape: 'extra', near: note, key }
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
    case 'drift':
      // Which way it mostly went; rising where it went either way as often.
      return { shape: kind, from: note, to: until ?? note, faster: 2 * faster >= times }
    case 'order':
      return undefined
  }
}
