import { formatRoute } from '@/app/route'
import type { StudioRow } from '@/app/students'
import { dateWords } from '@/text/dates'
import { grouped } from '@/text/numbers'
import { studentsText } from '@/text/students'
import { shareWords } from './reviewWords'
import { columns, type Column, type Sorting } from './studioRows'
import { percent } from './words'

/** Students and their pieces side by side; the head of each column sorts. */
export const StudioTable = ({
  rows,
  sorting,
  sort,
  titleOf,
}: {
  readonly rows: readonly StudioRow[]
  readonly sorting: Sorting
  readonly sort: (by: Column) => void
  readonly titleOf: (row: StudioRow) => string
}) => (
  <div className="scroll">
    <table className="studio stack">
      <thead>
        <tr>
          {columns.map((column) => (
            <th
              key={column}
              scope="col"
              aria-sort={sorting.by !== column ? 'none' : sorting.down ? 'descending' : 'ascending'}
            >
              <button type="button" className="plain" onClick={() => sort(column)}>
                {studentsText.table.columns[column]}
                <span className="sort-sign" aria-hidden="true">
                  {sorting.by !== column ? '' : sorting.down ? '↓' : '↑'}
                </span>
              </button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={`${row.student.id} ${row.piece}`} row={row} title={titleOf(row)} />
        ))}
      </tbody>
    </table>
  </div>
)

const Row = ({ row, title }: { readonly row: StudioRow; readonly title: string }) => {
  const { student, piece } = row
  const words = studentsText.table.columns
  return (
    <tr>
      <th scope="row">
        <a href={formatRoute({ kind: 'review', student: student.id })}>{student.name}</a>
      </th>
      <td data-label={words.piece}>
        <a href={formatRoute({ kind: 'review', student: student.id, piece })}>{title}</a>
      </td>
      <td data-label={words.share}>{shareWords(row.share)}</td>
      <td data-label={words.minutes}>{hoursWords(row.minutes)}</td>
      <td data-label={words.repetitions}>{grouped(row.repetitions)}</td>
      <td data-label={words.tempo}>{tempoWords(row)}</td>
      <td data-label={words.lastDay}>
        {dateWords(row.lastDay, 'short')} {row.lastDay.slice(0, 4)}
      </td>
      <td data-label={words.slipped}>{row.chunks.slipped}</td>
    </tr>
  )
}

/** 267 -> '4 h 27 min' */
const hoursWords = (minutes: number): string => {
  const whole = Math.round(minutes)
  return studentsText.table.time(Math.floor(whole / 60), whole % 60)
}

/** '88 % of the goal, 69 to 100': the chunk in the middle, the slowest and the fastest. */
const tempoWords = ({ tempo }: StudioRow): string => {
  if (!tempo) return '–'
  const { least, middle, most } = tempo
  return studentsText.table.tempo(percent(middle), Math.round(least * 100), Math.round(most * 100))
}
