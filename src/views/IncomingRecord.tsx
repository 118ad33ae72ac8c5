import { useState } from 'react'
import { formatRoute } from '@/app/route'
import type { IncomingState } from '@/app/incoming'
import type { Students as Studio } from '@/app/students'
import type { StudentId } from '@/journal/ids'
import { useSelected } from './context'
import { dateWords, grouped } from './reviewWords'
import { plural } from '@/text/plural'

/** A student's file: what is in it, whose it is, and what became of it. */
export const IncomingRecord = ({ studio }: { readonly studio: Studio }) => {
  const state = useSelected(studio.incoming.store, (now) => now)
  switch (state.kind) {
    case 'none':
      return null
    case 'reading':
      return (
        <div className="import">
          <Progress label={`Reading ${state.fileName}`} done={state.done} of={1} />
          <button type="button" onClick={studio.incoming.forget}>
            Stop
          </button>
        </div>
      )
    case 'preview':
      return <Preview key={state.fileName} studio={studio} state={state} />
    case 'importing':
      return (
        <div className="import">
          <Progress label={`Taking in ${state.fileName}`} done={state.done} of={state.of} />
        </div>
      )
    case 'done': {
      const { student, outcome } = state
      return (
        <div className="import" role="status">
          <p>
            <b>{grouped(outcome.added)}</b> {outcome.added === 1 ? 'event' : 'events'} of{' '}
            <a href={formatRoute({ kind: 'review', student: student.id })}>{student.name}</a> came
            in, {grouped(outcome.known)} {outcome.known === 1 ? 'was' : 'were'} here already. Your
            own record is as it was.
          </p>
          {outcome.taken.length > 0 && (
            <p>
              {plural(outcome.taken.length, 'event')} bore the name of another one of this student;
              those here were kept.
            </p>
          )}
        </div>
      )
    }
    case 'failed':
      return (
        <div className="import notice" role="alert">
          <p>
            <b>{state.fileName}</b> {state.message}
          </p>
          {state.waiting > 0 && (
            <button type="button" onClick={studio.incoming.forget}>
              On to the next file
            </button>
          )}
        </div>
      )
  }
}

const Progress = ({
  label,
  done,
  of,
}: {
  readonly label: string
  readonly done: number
  readonly of: number
}) => (
  <label className="import-progress">
    {label}: {Math.round((done / Math.max(1, of)) * 100)} %
    <progress value={done} max={of} />
  </label>
)

/** So many lines that cannot be read are told of. */
const mostTold = 5

const Preview = ({
  studio,
  state: { fileName, preview, of, isOwn, name, waiting },
}: {
  readonly studio: Studio
  readonly state: Extract<IncomingState, { readonly kind: 'preview' }>
}) => {
  const students = useSelected(studio.store, (now) => now.students)
  const [student, setStudent] = useState<StudentId | undefined>(of)
  const [typed, setTyped] = useState(name)
  const { fresh, unread } = preview
  const known = students.find(({ id }) => id === of)
  return (
    <form
      className="import"
      onSubmit={(event) => {
        event.preventDefault()
        void studio.incoming.take(student === undefined ? { name: typed } : { student })
      }}
    >
      <h2>{fileName}</h2>
      <p role="status">
        {plural(fresh.repetitions, 'repetition')} on {plural(fresh.days, 'day')}
        {fresh.firstDay !== undefined &&
          fresh.lastDay !== undefined &&
          `, ${dateWords(fresh.firstDay)} to ${dateWords(fresh.lastDay)}`}
        , of {plural(fresh.pieces.length, 'piece')}.
        {known && ` An older file of ${known.name} has sessions of this one.`}
      </p>
      {isOwn && (
        <p className="notice">
          This file has sessions of your own record. Opened here, they would stand among the
          students as somebody else’s; your own practice is on the page{' '}
          <a href={formatRoute({ kind: 'review' })}>Review</a>.
        </p>
      )}
      {unread.length > 0 && (
        <div className="notice">
          <p>
            {plural(unread.length, 'line')} cannot be read and will be left out; ask for the file
            once more if they matter.
          </p>
          <ul className="flaws">
            {unread.slice(0, mostTold).map(({ line, why }) => (
              <li key={line}>
                Line {line}: {why}
              </li>
            ))}
          </ul>
          {unread.length > mostTold && <p>and {unread.length - mostTold} more.</p>}
        </div>
      )}
      {students.length > 0 && (
        <label className="teacher-field">
          Whose record is it?
          <select
            value={student ?? ''}
            onChange={({ target }) =>
              setStudent(students.find(({ id }) => id === target.value)?.id)
            }
          >
            <option value="">a new student’s</option>
            {students.map((each) => (
              <option key={each.id} value={each.id}>
                {each.name}’s: add what is new to what is here
              </option>
            ))}
          </select>
        </label>
      )}
      {student === undefined && (
        <label className="teacher-field">
          Name of the student
          <input
            value={typed}
            autoComplete="off"
            onChange={({ target }) => setTyped(target.value)}
          />
        </label>
      )}
      <div className="row">
        <button type="submit" className="primary">
          Open it beside yours
        </button>
        <button type="button" onClick={studio.incoming.forget}>
          Leave it
        </button>
        {waiting > 0 && <span className="soft">then {plural(waiting, 'file')} more</span>}
      </div>
    </form>
  )
}
