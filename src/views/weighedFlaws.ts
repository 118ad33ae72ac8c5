import type { WeighedMark, Weight } from '@/engraving/pencilMark'
import type { SystemBars } from '@/engraving/systems'
import type { RecordedFlawKind } from '@/journal/words'
import type { Hand, Score } from '@/music/music'
import type { NoteId } from '@/music/units'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'
import type { PieceReview } from '@/review/pieceReview'
import { markOf } from './flawMarks'

/** What went wrong at one note, the most frequent kind first. */
export interface NoteFlaws {
  readonly note: NoteId
  readonly hand: Hand
  readonly times: number
  readonly flaws: readonly NoteFlaw[]
}

/** From how many times on a mark is drawn with more weight. */
export interface Weighing {
  readonly middle: number
  readonly heavy: number
}

/** Half as often as the most frequent flaw of the piece is heavy; what came once is light in any case. */
export const weighingOf = (bars: readonly BarFlaws[]): Weighing => {
  const most = Math.max(0, ...bars.flatMap(({ notes }) => notes.map(({ times }) => times)))
  const middle = Math.max(2, Math.ceil(most / 6))
  return { middle, heavy: Math.max(middle + 1, Math.ceil(most / 2)) }
}

export const weightOf = ({ middle, heavy }: Weighing, times: number): Weight =>
  times >= heavy ? 'heavy' : times >= middle ? 'middle' : 'light'

/** By the index of the line: what went wrong at its notes, in the order of the score. */
export const flawsByLine = (
  score: Score,
  plan: readonly SystemBars[],
  bars: readonly BarFlaws[],
  kind: RecordedFlawKind | undefined,
): ReadonlyMap<number, readonly NoteFlaws[]> => {
  const byNote = new Map<NoteId, NoteFlaw[]>()
  for (const each of bars.flatMap(({ notes }) => notes))
    if (kind === undefined || each.kind === kind)
      byNote.set(each.note, [...(byNote.get(each.note) ?? []), each])
  const lines = new Map<number, NoteFlaws[]>()
  for (const { id, hand, barIndex } of score.notes) {
    const flaws = byNote.get(id)
    if (!flaws) continue
    const line = plan.findIndex(({ fromBar, toBar }) => fromBar <= barIndex && barIndex <= toBar)
    const times = flaws.reduce((sum, flaw) => sum + flaw.times, 0)
    lines.set(line, [...(lines.get(line) ?? []), { note: id, hand, times, flaws }])
  }
  return lines
}

/** More marks than on a third of the notes, and none stands out: what came seldom waits to be asked for. */
const mostMarked = 1 / 3

export const isCrowded = (score: Score, bars: readonly BarFlaws[]): boolean =>
  new Set(bars.flatMap(({ notes }) => notes.map(({ note }) => note))).size >
  score.notes.length * mostMarked

/** The mark of the most frequent kind at each note of a line, the heavy ones drawn last. */
export const marksOnLine = (
  score: Score,
  notes: readonly NoteFlaws[],
  substitutions: PieceReview['substitutions'],
  weighing: Weighing,
): readonly WeighedMark[] =>
  notes
    .flatMap(({ flaws }) => flaws.toSorted((a, b) => b.times - a.times).slice(0, 1))
    .toSorted((a, b) => a.times - b.times)
    .flatMap(({ note, kind, times }) => {
      const written = score.notes.find(({ id }) => id === note)?.key
      const played = substitutions.find((each) => each.written === written)?.played
      const mark = markOf(note, kind, played) ?? exchanged(score, note, kind)
      return mark ? [{ mark, weight: weightOf(weighing, times) }] : []
    })

/** With the next onset of the same hand. */
const exchanged = (
  score: Score,
  note: NoteId,
  kind: RecordedFlawKind,
): WeighedMark['mark'] | undefined => {
  const at = score.notes.find(({ id }) => id === note)
  if (kind !== 'order' || !at) return undefined
  const next = score.notes.find(({ start, hand }) => start > at.start && hand === at.hand)
  return { shape: 'order', notes: [note, next?.id ?? note] }
}
