import type { PencilMark } from '@/engraving/pencilMark'
import type { SystemBars } from '@/engraving/systems'
import type { Note, Score } from '@/music/music'
import type { NoteFlaw } from '@/review/flawBars'
import { markOf } from './flawMarks'

/** What went wrong over a stretch, as far as it lies on one line: in a row of its own under the line. */
export interface LineStretch {
  readonly flaw: NoteFlaw
  /** Where it begins, not goes on. */
  readonly isBegin: boolean
  readonly mark: Extract<PencilMark, { readonly shape: 'drift' }>
}

interface Part {
  readonly flaw: NoteFlaw
  readonly line: number
  readonly from: Note
  readonly to: Note
  readonly isBegin: boolean
}

/** By the index of the line; the most frequent stand nearest to the music, and no two over one another. `space`: a staff space, CSS pixels. */
export const stretchesByLine = (
  score: Score,
  plan: readonly SystemBars[],
  flaws: readonly NoteFlaw[],
  space: number,
): ReadonlyMap<number, readonly LineStretch[]> => {
  const byId = new Map(score.notes.map((note) => [note.id, note]))
  const parts = flaws
    .toSorted((a, b) => b.times - a.times)
    .flatMap((flaw): readonly Part[] => {
      const [from, to] = [byId.get(flaw.note), flaw.until && byId.get(flaw.until)]
      return from && to ? partsOf(score, plan, flaw, from, to) : []
    })
  const lines = [...new Set(parts.map(({ line }) => line))]
  return new Map(
    lines.map((line) => [
      line,
      inRows(
        parts.filter((part) => part.line === line),
        space,
      ),
    ]),
  )
}

/** What of a stretch lies on each line; a single onset at its border is no stretch. */
const partsOf = (
  score: Score,
  plan: readonly SystemBars[],
  flaw: NoteFlaw,
  first: Note,
  last: Note,
): readonly Part[] => {
  const within = score.notes.filter(({ start }) => first.start <= start && start <= last.start)
  const parts = plan.flatMap(({ fromBar, toBar }, line): Omit<Part, 'isBegin'>[] => {
    const here = within.filter(({ barIndex }) => fromBar <= barIndex && barIndex <= toBar)
    const ofHand = here.filter(({ hand }) => hand === first.hand)
    const notes = ofHand.length > 0 ? ofHand : here
    const [from, to] = [notes[0], notes.at(-1)]
    return from && to ? [{ flaw, line, from, to }] : []
  })
  const wide = parts.filter(({ from, to }) => from.start < to.start)
  const shown = wide.length > 0 ? wide : parts.slice(0, 1)
  return shown.map((part, i) => ({ ...part, isBegin: i === 0 }))
}

/** Each in the first row in which it meets no other. */
const inRows = (parts: readonly Part[], space: number): readonly LineStretch[] => {
  const rows: Part[][] = []
  for (const part of parts) {
    const free = rows.find((row) => row.every((other) => !meet(part, other)))
    if (free) free.push(part)
    else rows.push([part])
  }
  return rows.flatMap((of, row) =>
    of.flatMap(({ flaw, from, to, isBegin }): LineStretch[] => {
      const mark = markOf(flaw)
      return mark?.shape === 'drift'
        ? [{ flaw, isBegin, mark: { ...mark, from: from.id, to: to.id, under: under(row, space) } }]
        : []
    }),
  )
}

/** Under the numbers of the notes, and as far apart as numbers need; a number is so high, CSS pixels. */
const numberHeight = 17
/** The middle of a row under the line, in staff spaces. */
const under = (row: number, space: number): number => {
  const above = Math.max(2.5, (1.7 * numberHeight) / space)
  return above + (row + 0.5) * Math.max(1.9, numberHeight / space)
}

const meet = (a: Part, b: Part): boolean => a.from.start <= b.to.start && b.from.start <= a.to.start
