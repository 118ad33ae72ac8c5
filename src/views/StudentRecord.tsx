import { useCallback, useMemo, type ReactNode } from 'react'
import { formatRoute } from '@/app/route'
import type { StudentId } from '@/journal/ids'
import { studentsText } from '@/text/students'
import { useApp } from './context'
import { Opened } from './Opened'
import { phrase } from './phrase'
import { ReviewedContext, type Reviewed } from './reviewed'
import { useLoaded } from './useLoaded'

/** What stands in it is of the record of a student, or of one's own where none is named. */
export const RecordOf = ({
  student,
  children,
}: {
  readonly student: StudentId | undefined
  readonly children: ReactNode
}) =>
  student === undefined ? (
    children
  ) : (
    <StudentRecord key={student} id={student}>
      {children}
    </StudentRecord>
  )

const StudentRecord = ({
  id,
  children,
}: {
  readonly id: StudentId
  readonly children: ReactNode
}) => {
  const app = useApp()
  const read = useCallback(async () => (await app.lessons.openStudents()).open(id), [app, id])
  const { loaded, again } = useLoaded(read)
  if (loaded.kind !== 'ready')
    return (
      <main className="page">
        <Opened loaded={loaded} again={again}>
          {() => null}
        </Opened>
      </main>
    )
  return loaded.value ? <Given opened={loaded.value}>{children}</Given> : <NotHere />
}

const Given = ({
  opened,
  children,
}: {
  readonly opened: Required<Reviewed>
  readonly children: ReactNode
}) => {
  const { reviews, student } = opened
  const reviewed = useMemo(() => ({ reviews, student }), [reviews, student])
  return <ReviewedContext value={reviewed}>{children}</ReviewedContext>
}

const NotHere = () => (
  <main className="page">
    <h1>{studentsText.notHere.title}</h1>
    <p>
      {phrase(
        studentsText.notHere.advice((words) => (
          <a href={formatRoute({ kind: 'students' })}>{words}</a>
        )),
      )}
    </p>
  </main>
)
