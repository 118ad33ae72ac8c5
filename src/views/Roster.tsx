import { useEffect, useRef, useState } from 'react'
import { formatRoute } from '@/app/route'
import type { Students as Studio, StudentsState } from '@/app/students'
import { studentsText } from '@/text/students'
import { dayWords } from './recordWords'

type Student = StudentsState['students'][number]

/** Who is here; each can be called otherwise, and removed. */
export const Roster = ({
  studio,
  students,
}: {
  readonly studio: Studio
  readonly students: readonly Student[]
}) => (
  <details className="roster no-print">
    <summary>{studentsText.roster.summary(students.length)}</summary>
    <ul>
      {students.map((student) => (
        <One key={student.id} studio={studio} student={student} />
      ))}
    </ul>
  </details>
)

const One = ({ studio, student }: { readonly studio: Studio; readonly student: Student }) => {
  const [doing, setDoing] = useState<'rename' | 'remove'>()
  const [left, setLeft] = useState<'rename' | 'remove'>()
  const rename = useRef<HTMLButtonElement>(null)
  const remove = useRef<HTMLButtonElement>(null)
  const keep = useRef<HTMLButtonElement>(null)
  // Who works with the keys alone stands again where it began.
  useEffect(() => {
    if (doing === 'remove') keep.current?.focus()
    if (doing === undefined && left) (left === 'rename' ? rename : remove).current?.focus()
  }, [doing, left])
  const leave = (): void => {
    setLeft(doing)
    setDoing(undefined)
  }
  const { id, name, fileName, takenAtEpochMs } = student
  const words = studentsText.roster
  return (
    <li className="roster-one">
      <p>
        <a href={formatRoute({ kind: 'review', student: id })}>{name}</a>{' '}
        <span className="soft">{words.from(fileName, dayWords(takenAtEpochMs))}</span>
      </p>
      {doing === undefined && (
        <p className="row">
          <a href={formatRoute({ kind: 'teacher', student: id })}>{words.teacherPage}</a>
          <button
            type="button"
            ref={rename}
            onClick={() => setDoing('rename')}
            aria-label={words.renameOne(name)}
          >
            {words.rename}
          </button>
          <button
            type="button"
            ref={remove}
            onClick={() => setDoing('remove')}
            aria-label={words.removeOne(name)}
          >
            {words.remove}
          </button>
        </p>
      )}
      {doing === 'rename' && (
        <Rename
          name={name}
          done={(next) => {
            if (next !== undefined) void studio.rename(id, next)
            leave()
          }}
        />
      )}
      {doing === 'remove' && (
        <div className="row" role="alert">
          <p>{words.sure(name)}</p>
          <button type="button" onClick={() => void studio.remove(id)}>
            {words.removeOne(name)}
          </button>
          <button type="button" ref={keep} onClick={leave}>
            {words.keep}
          </button>
        </div>
      )}
    </li>
  )
}

const Rename = ({
  name,
  done,
}: {
  readonly name: string
  readonly done: (name: string | undefined) => void
}) => {
  const words = studentsText.roster
  const [typed, setTyped] = useState(name)
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => field.current?.select(), [])
  return (
    <form
      className="row"
      onSubmit={(event) => {
        event.preventDefault()
        done(typed)
      }}
    >
      <label className="row">
        {words.name}
        <input ref={field} value={typed} onChange={({ target }) => setTyped(target.value)} />
      </label>
      <button type="submit">{words.rename}</button>
      <button type="button" onClick={() => done(undefined)}>
        {words.leave}
      </button>
    </form>
  )
}
