import type { PencilMark } from '@/engraving/pencil'
import type { Mark } from '@/judge/flaw'
import type { Chunk } from '@/music/chunk'
import type { NoteId } from '@/music/units'

/** How each finding of the judge is drawn; `undefined` when the chunk has no note to draw it at. */
export const pencilMark = (mark: Mark, chunk: Chunk): PencilMark | undefined => {
  const drawn = shape(mark, chunk)
  return drawn && mark.kind !== 'right' && mark.forgiven ? { ...drawn, forgiven: true } : drawn
}

const shape = (mark: Mark, chunk: Chunk): PencilMark | undefined => {
  const here = chunk.onsets[Math.max(0, Math.min(mark.onset, chunk.onsets.length - 1))]
  const note = mark.expected?.ids[0] ?? here?.notes[0].ids[0]
  if (!here || !note) return undefined
  const ms = mark.kind === 'right' ? 0 : (mark.ms ?? 0)
  switch (mark.kind) {
    case 'right':
    case 'missing':
    case 'restart':
    case 'hesitation':
    case 'uneven':
      return { shape: mark.kind, note }
    case 'wrong':
      return mark.played
        ? { shape: 'wrong', note, playedKey: mark.played.key }
        : { shape: 'missing', note }
    case 'extra':
      return mark.played ? { shape: 'extra', near: note, key: mark.played.key } : undefined
    case 'repeated':
      return { shape: 'repeated', note: sameKey(mark, chunk) ?? note }
    case 'early':
    case 'late':
      return { shape: mark.kind, note, ms }
    case 'order':
      return { shape: 'order', notes: [note, neighbour(mark.onset, chunk) ?? note] }
    case 'spread':
      return { shape: 'spread', notes: here.notes.map((n) => n.ids[0]) }
    case 'drift':
      return {
        shape: 'drift',
        from: firstNote(chunk) ?? note,
        to: lastNote(chunk) ?? note,
        faster: ms < 0,
      }
  }
}

/** The written note that the repeated key belongs to. */
const sameKey = (mark: Mark, chunk: Chunk): NoteId | undefined =>
  chunk.onsets[mark.onset]?.notes.find((n) => n.key === mark.played?.key)?.ids[0]

const neighbour = (onset: number, chunk: Chunk): NoteId | undefined =>
  (chunk.onsets[onset + 1] ?? chunk.onsets[onset - 1])?.notes[0].ids[0]

const firstNote = (chunk: Chunk): NoteId | undefined => chunk.onsets[0]?.notes[0].ids[0]
const lastNote = (chunk: Chunk): NoteId | undefined => chunk.onsets.at(-1)?.notes[0].ids[0]
