import type { PencilMark, WeighedMark, Weight } from '@/engraving/pencilMark'
import type { SystemBars } from '@/engraving/systems'
import type { RecordedFlawKind } from '@/journal/words'
import type { Hand, Score } from '@/music/music'
import type { NoteId } from '@/music/units'
import type { BarFlaws, NoteFlaw } from '@/review/flawBars'
import { markOf } from './flawMarks'
import { stretchesByLine, type LineStretch } from './flawStretches'

/** What went wrong at one note, the most frequent kind first. */
export interface NoteFlaws {
  readonly note: NoteId
  readonly hand: Hand
  readonly times: number
  readonly flaws: readonly NoteFlaw[]
}

/** What went wrong on one line: at its notes in the order of the score, and over stretches of it. */
export interface LineFlaws {
  readonly notes: readonly NoteFlaws[]
  readonly stretches: readonly LineStretch[]
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

/** By the index of the line; lines without flaws are left out. `space`: a staff space, CSS pixels. */
export const flawsByLine = (
  score: Score,
  plan: readonly SystemBars[],
  bars: readonly BarFlaws[],
  kind: RecordedFlawKind | undefined,
  space: number,
): ReadonlyMap<number, LineFlaws> => {
  const all = bars
    .flatMap(({ notes }) => notes)
    .filter((each) => kind === undefined || each.kind === kind)
  const notes = notesByLine(
    score,
    plan,
    all.filter(({ until }) => until === undefined),
  )
  const stretches = stretchesByLine(
    score,
    plan,
    all.filter(({ until }) => until !== undefined),
    space,
  )
  const lines = [...new Set([...notes.keys(), ...stretches.keys()])].toSorted((a, b) => a - b)
  return new Map(
    lines.map((line) => [
      line,
      { notes: notes.get(line) ?? [], stretches: stretches.get(line) ?? [] },
    ]),
  )
}

const notesByLine = (
  score: Score,
  plan: readonly SystemBars[],
  all: readonly NoteFlaw[],
): ReadonlyMap<number, readonly NoteFlaws[]> => {
  const byNote = new Map<NoteId, NoteFlaw[]>()
  for (const each of all) byNote.set(each.note, [...(byNote.get(each.note) ?? []), each])
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

/** Each stretch, and the most frequent kind at each note of a line; the heavy ones drawn last. */
export const marksOnLine = (
  score: Score,
  { notes, stretches }: LineFlaws,
  weighing: Weighing,
): readonly WeighedMark[] => {
  const atNotes = notes.flatMap(({ flaws }) => {
    const flaw = flaws.toSorted((a, b) => b.times - a.times)[0]
    const mark = flaw && (markOf(flaw) ?? exchanged(score, flaw))
    return mark ? [{ mark, times: flaw.times }] : []
  })
  return [...stretches.map(({ mark, flaw: { times } }) => ({ mark, times })), ...atNotes]
    .toSorted((a, b) => a.times - b.times)
    .map(({ mark, times }) => ({ mark, weight: weightOf(weighing, times) }))
}

/** With the next onset of the same hand. */
const exchanged = (score: Score, { note, kind }: NoteFlaw): PencilMark | undefined => {
  const at = score.notes.find(({ id }) => id === note)
  if (kind !== 'order' || !at) return undefined
  const next = score.notes.find(({ start, hand }) => start > at.start && hand === at.hand)
  return { shape: 'order', notes: [note, next?.id ?? note] }
}
