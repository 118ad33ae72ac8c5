import { useCallback, useRef, useState } from 'react'
import { formatRoute } from '@/app/route'
import { sinceChoices, type Since, type StudioRow, type Students as Studio } from '@/app/students'
import { ok } from '@/music/result'
import type { PieceId } from '@/music/units'
import { studentsText } from '@/text/students'
import { ChooseFiles, recordFiles } from './ChooseFiles'
import { useApp, useSelected } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { IncomingRecord } from './IncomingRecord'
import { Roster } from './Roster'
import { StudioTable } from './StudioTable'
import { columns, piecesIn, sortBy, sortRows, type Sorting } from './studioRows'
import { useLoaded } from './useLoaded'
import './review.css'
import './students.css'

/** Records of students, each apart from the others and from one's own: opened, compared, looked into. */
export const Students = () => {
  const app = useApp()
  const read = useCallback(async () => {
    const studio = await app.lessons.openStudents()
    await studio.load()
    return ok(studio)
  }, [app])
  const { loaded, again } = useLoaded(read)
  return (
    <main className="page review students">
      <h1>{studentsText.title}</h1>
      <p>{studentsText.intro}</p>
      <Opened loaded={loaded} again={again}>
        {(studio) => <Ready studio={studio} />}
      </Opened>
    </main>
  )
}

const Ready = ({ studio }: { readonly studio: Studio }) => {
  const app = useApp()
  const { students, problem } = useSelected(studio.store, (state) => state)
  const listed = useSelected(app.library.store, (state) => state.listed)
  const picker = useRef<HTMLInputElement>(null)
  const [since, setSince] = useState<Since>('all')
  const [piece, setPiece] = useState<PieceId>()
  const [sorting, setSorting] = useState<Sorting>({ by: 'student', down: false })

  const titleOf = (row: StudioRow): string =>
    listed.find(({ id }) => id === row.piece)?.title ?? row.title ?? studentsText.untitled
  const words = studentsText.table
  const rows = studio.rows(students, since)
  const shown = piece === undefined ? rows : rows.filter((row) => row.piece === piece)
  const keys: readonly PageKey[] = [
    {
      key: 'o',
      shown: 'O',
      words: studentsText.keys.open,
      run: () => picker.current?.click(),
    },
    ...columns.map((column, i) => ({
      key: String(i + 1),
      shown: String(i + 1),
      words: studentsText.keys.sort(studentsText.table.columns[column]),
      run: () => setSorting((now) => sortBy(now, column)),
    })),
    ...sinceChoices.map((each) => ({
      key: sinceKeys[each].toLowerCase(),
      shown: sinceKeys[each],
      words: studentsText.since[each],
      run: () => setSince(each),
    })),
  ]
  return (
    <>
      {problem !== undefined && (
        <p className="notice" role="alert">
          {problem}
        </p>
      )}
      <p className="row">
        <button type="button" className="primary" onClick={() => picker.current?.click()}>
          {studentsText.open} <kbd>O</kbd>
        </button>
        <a href={formatRoute({ kind: 'review' })}>{studentsText.ownReview}</a>
        <PageKeys keys={keys} />
      </p>
      <ChooseFiles
        picker={picker}
        label={studentsText.files}
        accept={recordFiles}
        choose={studio.incoming.look}
      />
      <IncomingRecord studio={studio} />
      {students.length > 0 && (
        <section aria-labelledby="studio">
          <h2 id="studio">{words.title}</h2>
          <p className="soft">{words.how}</p>
          <div className="row no-print">
            <fieldset className="row">
              <legend className="unseen">{studentsText.since.title}</legend>
              {sinceChoices.map((each) => (
                <label key={each} className="row tight">
                  <input
                    type="radio"
                    name="since"
                    checked={each === since}
                    onChange={() => setSince(each)}
                  />
                  {studentsText.since[each]}
                </label>
              ))}
            </fieldset>
            <label className="row">
              {words.piece}
              <select
                className="chunk-choice"
                value={piece ?? ''}
                onChange={({ target }) =>
                  setPiece(rows.find((row) => row.piece === target.value)?.piece)
                }
              >
                <option value="">{words.allPieces}</option>
                {piecesIn(rows, titleOf).map((each) => (
                  <option key={each.piece} value={each.piece}>
                    {each.title}
                  </option>
                ))}
              </select>
            </label>
          </div>
          {shown.length > 0 ? (
            <StudioTable
              rows={sortRows(shown, sorting, titleOf)}
              sorting={sorting}
              sort={(by) => setSorting((now) => sortBy(now, by))}
              titleOf={titleOf}
            />
          ) : (
            <p>{words.nothing}</p>
          )}
          <Roster studio={studio} students={students} />
        </section>
      )}
    </>
  )
}

const sinceKeys: Readonly<Record<Since, string>> = { week: 'W', fourWeeks: 'M', all: 'A' }
