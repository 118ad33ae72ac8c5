import { useCallback, useRef, useState, type ChangeEvent } from 'react'
import { formatRoute } from '@/app/route'
import { sinceChoices, type Since, type StudioRow, type Students as Studio } from '@/app/students'
import { ok } from '@/music/result'
import type { PieceId } from '@/music/units'
import { useApp, useSelected } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { IncomingRecord } from './IncomingRecord'
import { Roster } from './Roster'
import { columnWords, StudioTable } from './StudioTable'
import { columns, piecesIn, sortBy, sortRows, type Sorting } from './studioRows'
import { chosenFile } from './useDrop'
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
      <h1>Students</h1>
      <p>
        For whoever teaches. A student saves the whole record (on the page “The record”) and sends
        you the file. Here it is opened beside yours, to read only: nothing of it ever comes into
        your own record.
      </p>
      <Opened loaded={loaded} again={again}>
        {(studio) => <Ready studio={studio} />}
      </Opened>
    </main>
  )
}

const sinceWords: Readonly<Record<Since, string>> = {
  week: 'the last 7 days',
  fourWeeks: 'the last 4 weeks',
  all: 'all time',
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
    listed.find(({ id }) => id === row.piece)?.title ?? row.title ?? 'a piece without a title'
  const choose = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const files = [...(target.files ?? [])].map(chosenFile)
    target.value = ''
    if (files.length > 0) await studio.incoming.look(files)
  }
  const rows = studio.rows(students, since)
  const shown = piece === undefined ? rows : rows.filter((row) => row.piece === piece)
  const keys: readonly PageKey[] = [
    { key: 'o', shown: 'O', words: 'open a student’s record', run: () => picker.current?.click() },
    ...columns.map((column, i) => ({
      key: String(i + 1),
      shown: String(i + 1),
      words: `sort by ${columnWords[column].toLowerCase()}; once more the other way`,
      run: () => setSorting((now) => sortBy(now, column)),
    })),
    ...sinceChoices.map((each) => ({
      key: sinceKeys[each].toLowerCase(),
      shown: sinceKeys[each],
      words: sinceWords[each],
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
          Open a student’s record … <kbd>O</kbd>
        </button>
        <a href={formatRoute({ kind: 'review' })}>Your own review</a>
        <PageKeys keys={keys} />
      </p>
      <input
        ref={picker}
        className="unseen"
        type="file"
        multiple
        accept=".jsonl,.ndjson,.json,.txt,application/jsonl"
        tabIndex={-1}
        aria-label="Files of students’ records"
        onChange={(event) => void choose(event)}
      />
      <IncomingRecord studio={studio} />
      {students.length > 0 && (
        <section aria-labelledby="studio">
          <h2 id="studio">Piece by piece</h2>
          <p className="soft">
            Pieces and people are not alike: the figures are for the next lesson, not for a contest.
            After the clean share stands where it lies in 95 of 100 cases; tempo is the last one as
            a part of the goal, of the chunk in the middle, then of the slowest and the fastest.
          </p>
          <div className="row no-print">
            <fieldset className="row">
              <legend className="unseen">Since when</legend>
              {sinceChoices.map((each) => (
                <label key={each} className="row tight">
                  <input
                    type="radio"
                    name="since"
                    checked={each === since}
                    onChange={() => setSince(each)}
                  />
                  {sinceWords[each]}
                </label>
              ))}
            </fieldset>
            <label className="row">
              Piece
              <select
                className="chunk-choice"
                value={piece ?? ''}
                onChange={({ target }) =>
                  setPiece(rows.find((row) => row.piece === target.value)?.piece)
                }
              >
                <option value="">all pieces</option>
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
            <p>Nothing was practised in this time.</p>
          )}
          <Roster studio={studio} students={students} />
        </section>
      )}
    </>
  )
}

const sinceKeys: Readonly<Record<Since, string>> = { week: 'W', fourWeeks: 'M', all: 'A' }
