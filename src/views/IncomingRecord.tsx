import { useState } from 'react'
import { formatRoute } from '@/app/route'
import type { IncomingState } from '@/app/incoming'
import type { Students as Studio } from '@/app/students'
import type { StudentId } from '@/journal/ids'
import { dateWords } from '@/text/dates'
import { studentsText } from '@/text/students'
import { useSelected } from './context'
import { CameIn, CannotComeIn, Reading, Taking, UnreadLines } from './IncomingParts'
import { phrase } from './phrase'

/** A student's file: what is in it, whose it is, and what became of it. */
export const IncomingRecord = ({ studio }: { readonly studio: Studio }) => {
  const state = useSelected(studio.incoming.store, (now) => now)
  const words = studentsText.incoming
  switch (state.kind) {
    case 'none':
      return null
    case 'reading':
      return (
        <Reading fileName={state.fileName} done={state.done}>
          <button type="button" onClick={studio.incoming.forget}>
            {words.stop}
          </button>
        </Reading>
      )
    case 'preview':
      return <Preview key={state.fileName} studio={studio} state={state} />
    case 'importing':
      return <Taking fileName={state.fileName} done={state.done} of={state.of} />
    case 'done': {
      const { added, known, taken } = state.outcome
      const { id, name } = state.student
      const student = <a href={formatRoute({ kind: 'review', student: id })}>{name}</a>
      return (
        <CameIn taken={taken.length} words={words.taken}>
          {phrase(words.came((figure) => <b>{figure}</b>, student, added, known))}
        </CameIn>
      )
    }
    case 'failed':
      return (
        <CannotComeIn fileName={state.fileName} message={state.message}>
          {state.waiting > 0 && (
            <button type="button" onClick={studio.incoming.forget}>
              {words.next}
            </button>
          )}
        </CannotComeIn>
      )
  }
}

type Looked = Extract<IncomingState, { readonly kind: 'preview' }>

const Preview = ({ studio, state }: { readonly studio: Studio; readonly state: Looked }) => {
  const { fileName, preview, of, isOwn, waiting } = state
  const [student, setStudent] = useState<StudentId | undefined>(of)
  const [typed, setTyped] = useState(state.name)
  const words = studentsText.incoming
  return (
    <form
      className="import"
      onSubmit={(event) => {
        event.preventDefault()
        void studio.incoming.take(student === undefined ? { name: typed } : { student })
      }}
    >
      <h2>{fileName}</h2>
      <About studio={studio} state={state} />
      {isOwn && (
        <p className="notice">
          {phrase(words.own((review) => <a href={formatRoute({ kind: 'review' })}>{review}</a>))}
        </p>
      )}
      <UnreadLines unread={preview.unread} words={words.unread} />
      <Whose studio={studio} student={student} choose={setStudent} />
      {student === undefined && (
        <label className="teacher-field">
          {words.name}
          <input
            value={typed}
            autoComplete="off"
            onChange={({ target }) => setTyped(target.value)}
          />
        </label>
      )}
      <div className="row">
        <button type="submit" className="primary">
          {words.take}
        </button>
        <button type="button" onClick={studio.incoming.forget}>
          {words.leave}
        </button>
        {waiting > 0 && <span className="soft">{words.waiting(waiting)}</span>}
      </div>
    </form>
  )
}

/** What is in the file. */
const About = ({ studio, state }: { readonly studio: Studio; readonly state: Looked }) => {
  const known = useSelected(studio.store, ({ students }) =>
    students.find(({ id }) => id === state.of),
  )
  const { repetitions, days, pieces, firstDay, lastDay } = state.preview.fresh
  const words = studentsText.incoming
  const about = words.about({
    repetitions,
    days,
    pieces: pieces.length,
    ...(firstDay === undefined || lastDay === undefined
      ? {}
      : { span: [dateWords(firstDay), dateWords(lastDay)] }),
  })
  return <p role="status">{known ? `${about} ${words.older(known.name)}` : about}</p>
}

const Whose = ({
  studio,
  student,
  choose,
}: {
  readonly studio: Studio
  readonly student: StudentId | undefined
  readonly choose: (student: StudentId | undefined) => void
}) => {
  const students = useSelected(studio.store, (now) => now.students)
  const words = studentsText.incoming
  if (students.length === 0) return null
  return (
    <label className="teacher-field">
      {words.whose}
      <select
        value={student ?? ''}
        onChange={({ target }) => choose(students.find(({ id }) => id === target.value)?.id)}
      >
        <option value="">{words.newOne}</option>
        {students.map(({ id, name }) => (
          <option key={id} value={id}>
            {words.addTo(name)}
          </option>
        ))}
      </select>
    </label>
  )
}
