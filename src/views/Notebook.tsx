import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { subjects } from '@/app/notebook'
import { formatRoute } from '@/app/route'
import { holdsWords } from '@/app/searchPieces'
import type { NotebookWritten } from '@/journal/journal'
import type { NotebookSubject } from '@/journal/words'
import type { PieceId } from '@/music/units'
import type { TriedProblem } from '@/review/problems'
import { notebookText } from '@/text/notebook'
import { useApp, useSelected } from './context'
import { NotebookDialog } from './NotebookDialog'
import { NotebookEntry } from './NotebookEntry'
import { PageKeys } from './PageKeys'
import { NotebookProblems, useAllTried } from './NotebookProblems'
import { describeTriedAt, whereWords } from './notebookWords'
import { phrase } from './phrase'
import './notebook.css'

/** All that is written, of all pieces, to be searched. */
export const Notebook = () => {
  const app = useApp()
  const entries = useSelected(app.notebook.store, (state) => state.entries)
  const problem = useSelected(app.notebook.store, (state) => state.problem)
  const [wanted, setWanted] = useState('')
  const [subject, setSubject] = useState<NotebookSubject>()
  const [changing, setChanging] = useState<NotebookWritten>()
  const search = useRef<HTMLInputElement>(null)
  const titleOf = useTitles()
  useEffect(() => void app.notebook.load(), [app])
  const allTried = useAllTried()
  const isHit = useMemo(() => holdsWords(wanted), [wanted])
  const found = useMemo(
    () =>
      entries.filter(
        (entry) =>
          (subject === undefined || entry.subject === subject) &&
          isHit(
            [
              entry.text,
              notebookText.subjects[entry.subject],
              whereWords(entry.place),
              titleOf(entry.piece),
            ].join(' '),
          ),
      ),
    [entries, isHit, subject, titleOf],
  )
  /** Of the problems of a piece those that are asked for. */
  const triedOf = (piece: PieceId): readonly TriedProblem[] =>
    subject !== undefined && subject !== 'tried'
      ? []
      : (allTried.get(piece) ?? []).filter((each) =>
          isHit(`${describeTriedAt(each)} ${titleOf(piece)}`),
        )
  const pieces = [...new Set([...found.map(({ piece }) => piece), ...allTried.keys()])].filter(
    (piece) => found.some((entry) => entry.piece === piece) || triedOf(piece).length > 0,
  )
  return (
    <main className="page page-notebook">
      <div className="row">
        <h1>{notebookText.title}</h1>
        <PageKeys
          keys={[
            {
              key: 'f',
              shown: 'F',
              words: notebookText.keys.search,
              run: () => search.current?.focus(),
            },
          ]}
        />
      </div>
      {problem !== undefined && <p className="notice">{problem}</p>}
      <search className="row no-print">
        <label className="row tight">
          {notebookText.search}
          <input
            ref={search}
            type="search"
            value={wanted}
            onChange={({ target }) => setWanted(target.value)}
          />
        </label>
        <label className="row tight">
          {notebookText.about}
          <select
            value={subject ?? ''}
            onChange={({ target }) => setSubject(subjects.find((each) => each === target.value))}
          >
            <option value="">{notebookText.everything}</option>
            {subjects.map((each) => (
              <option key={each} value={each}>
                {notebookText.subjects[each]}
              </option>
            ))}
          </select>
        </label>
        <p role="status" className="soft">
          {found.length === entries.length
            ? notebookText.entries(found.length)
            : notebookText.someEntries(found.length, entries.length)}
        </p>
      </search>
      {entries.length === 0 && <p>{phrase(notebookText.empty(<kbd>9</kbd>))}</p>}
      {pieces.map((piece) => (
        <section key={piece} aria-label={titleOf(piece)}>
          <h2>
            <a href={formatRoute({ kind: 'piece', piece })}>{titleOf(piece)}</a>
          </h2>
          <Entries
            entries={found.filter((entry) => entry.piece === piece)}
            onChange={setChanging}
          />
          <NotebookProblems tried={triedOf(piece)} />
        </section>
      ))}
      {changing && (
        <NotebookDialog
          piece={{ id: changing.piece, title: titleOf(changing.piece) }}
          change={changing}
          onClose={() => setChanging(undefined)}
        />
      )}
    </main>
  )
}

const Entries = ({
  entries,
  onChange,
}: {
  readonly entries: readonly NotebookWritten[]
  readonly onChange: (entry: NotebookWritten) => void
}) =>
  entries.length === 0 ? null : (
    <ul className="notebook-list">
      {entries.map((entry) => (
        <NotebookEntry key={entry.id} entry={entry} onChange={onChange} />
      ))}
    </ul>
  )

/** Titles as they are listed; of pieces that are gone, as the record has them. */
const useTitles = (): ((piece: PieceId) => string) => {
  const app = useApp()
  const listed = useSelected(app.library.store, (state) => state.listed)
  const [recorded, setRecorded] = useState<ReadonlyMap<PieceId, string>>(new Map())
  useEffect(() => {
    let current = true
    void app.notebook.titles().then((titles) => {
      if (current) setRecorded(titles)
    })
    return () => {
      current = false
    }
  }, [app])
  return useCallback(
    (piece) =>
      listed.find(({ id }) => id === piece)?.title ?? recorded.get(piece) ?? notebookText.gone,
    [listed, recorded],
  )
}
