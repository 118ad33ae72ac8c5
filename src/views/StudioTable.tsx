import { formatRoute } from '@/app/route'
import type { StudioRow } from '@/app/students'
import { dateWords, grouped, shareWords } from './reviewWords'
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
                {columnWords[column]}
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

export const columnWords: Readonly<Record<Column, string>> = {
  student: 'Student',
  piece: 'Piece',
  share: 'Clean share',
  minutes: 'Time',
  repetitions: 'Repetitions',
  tempo: 'Tempo',
  lastDay: 'Last',
  slipped: 'Slipped',
}

const Row = ({ row, title }: { readonly row: StudioRow; readonly title: string }) => {
  const { student, piece } = row
  return (
    <tr>
      <th scope="row">
        <a href={formatRoute({ kind: 'review', student: student.id })}>{student.name}</a>
      </th>
      <td data-label={columnWords.piece}>
        <a href={formatRoute({ kind: 'review', student: student.id, piece })}>{title}</a>
      </td>
      <td data-label={columnWords.share}>{shareWords(row.share)}</td>
      <td data-label={columnWords.minutes}>{hoursWords(row.minutes)}</td>
      <td data-label={columnWords.repetitions}>{grouped(row.repetitions)}</td>
      <td data-label={columnWords.tempo}>{tempoWords(row)}</td>
      <td data-label={columnWords.lastDay}>
        {dateWords(row.lastDay, 'short')} {row.lastDay.slice(0, 4)}
      </td>
      <td data-label={columnWords.slipped}>{row.chunks.slipped}</td>
    </tr>
  )
}

/** 267 -> '4 h 27 min' */
const hoursWords = (minutes: number): string => {
  const whole = Math.round(minutes)
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`
}

/** '88 % of the goal, 69 to 100': the chunk in the middle, the slowest and the fastest. */
const tempoWords = ({ tempo }: StudioRow): string => {
  if (!tempo) return '–'
  const { least, middle, most } = tempo
  const span = least === most ? '' : `, ${Math.round(least * 100)} to ${Math.round(most * 100)}`
  return `${percent(middle)}${span}`
}
