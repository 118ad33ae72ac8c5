import type { StudioRow } from '@/app/students'
import type { PieceId } from '@/music/units'

/** The columns of the table of students and pieces. */
export const columns = [
  'student',
  'piece',
  'share',
  'minutes',
  'repetitions',
  'tempo',
  'lastDay',
  'slipped',
] as const
export type Column = (typeof columns)[number]

export interface Sorting {
  readonly by: Column
  readonly down: boolean
}

/** The same column once more turns the order round. */
export const sortBy = (now: Sorting, by: Column): Sorting =>
  now.by === by ? { by, down: !now.down } : { by, down: false }

/** Sorted by one column; equal ones by student, then piece. What is not known stands last, whichever way. */
export const sortRows = (
  rows: readonly StudioRow[],
  { by, down }: Sorting,
  titleOf: (row: StudioRow) => string,
): readonly StudioRow[] =>
  rows.toSorted((a, b) => {
    const [x, y] = [valueOf(a, by, titleOf), valueOf(b, by, titleOf)]
    if (x === undefined || y === undefined)
      return Number(x === undefined) - Number(y === undefined) || byName(a, b, titleOf)
    return compare(x, y) * (down ? -1 : 1) || byName(a, b, titleOf)
  })

const byName = (a: StudioRow, b: StudioRow, titleOf: (row: StudioRow) => string): number =>
  compare(a.student.name, b.student.name) || compare(titleOf(a), titleOf(b))

const compare = (a: string | number, b: string | number): number =>
  typeof a === 'number' && typeof b === 'number'
    ? a - b
    : String(a).localeCompare(String(b), undefined, { numeric: true })

const valueOf = (
  row: StudioRow,
  by: Column,
  titleOf: (row: StudioRow) => string,
): string | number | undefined => {
  switch (by) {
    case 'student':
      return row.student.name
    case 'piece':
      return titleOf(row)
    case 'share':
      return row.share?.value
    case 'minutes':
      return row.minutes
    case 'repetitions':
      return row.repetitions
    case 'tempo':
      return row.tempo?.middle
    case 'lastDay':
      return row.lastDay
    case 'slipped':
      return row.chunks.slipped
  }
}

/** The pieces in the rows, each once, by title. */
export const piecesIn = (
  rows: readonly StudioRow[],
  titleOf: (row: StudioRow) => string,
): readonly { readonly piece: PieceId; readonly title: string }[] =>
  [...new Map(rows.map((row) => [row.piece, titleOf(row)]))]
    .map(([piece, title]) => ({ piece, title }))
    .toSorted((a, b) => a.title.localeCompare(b.title))
