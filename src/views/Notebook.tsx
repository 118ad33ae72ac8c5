import { useCallback, useEffect, useMemo, useState } from 'react'
import { subjects } from '@/app/notebook'
import { formatRoute } from '@/app/route'
import { holdsWords } from '@/app/searchPieces'
import type { NotebookWritten } from '@/journal/journal'
import type { NotebookSubject } from '@/journal/words'
import type { PieceId } from '@/music/units'
import { useApp, useSelected } from './context'
import { NotebookDialog } from './NotebookDialog'
import { NotebookEntry } from './NotebookEntry'
import { subjectWords, whereWords } from './notebookWords'
import './notebook.css'

/** All that is written, of all pieces, to be searched. */
export const Notebook = () => {
  const app = useApp()
  const entries = useSelected(app.notebook.store, (state) => state.entries)
  const problem = useSelected(app.notebook.store, (state) => state.problem)
  const [wanted, setWanted] = useState('')
  const [subject, setSubject] = useState<NotebookSubject>()
  const [changing, setChanging] = useState<NotebookWritten>()
  const titleOf = useTitles()
  useEffect(() => void app.notebook.load(), [app])
  const found = useMemo(() => {
    const isHit = holdsWords(wanted)
    return entries.filter(
      (entry) =>
        (subject === undefined || entry.subject === subject) &&
        isHit(
          [
            entry.text,
            subjectWords[entry.subject],
            whereWords(entry.place),
            titleOf(entry.piece),
          ].join(' '),
        ),
    )
  }, [entries, wanted, subject, titleOf])
  return (
    <main className="page page-notebook">
      <h1>Notebook</h1>
      {problem !== undefined && <p className="notice">{problem}</p>}
      <search className="row no-print">
        <label className="row tight">
          Search
          <input type="search" value={wanted} onChange={({ target }) => setWanted(target.value)} />
        </label>
        <label className="row tight">
          About
          <select
            value={subject ?? ''}
            onChange={({ target }) => setSubject(subjects.find((each) => each === target.value))}
          >
            <option value="">everything</option>
            {subjects.map((each) => (
              <option key={each} value={each}>
                {subjectWords[each]}
              </option>
            ))}
          </select>
        </label>
        <p role="status" className="soft">
          {found.length === entries.length
            ? entryCount(found.length)
            : `${found.length} of ${entryCount(entries.length)}`}
        </p>
      </search>
      {entries.length === 0 && (
        <p>
          Nothing is written yet. On the page of a piece, in its build-up and in a drill,{' '}
          <kbd>9</kbd> opens its notebook: fingerings, editions, recordings, what a teacher said,
          what you tried and whether it helped.
        </p>
      )}
      {[...new Set(found.map(({ piece }) => piece))].map((piece) => (
        <section key={piece} aria-label={titleOf(piece)}>
          <h2>
            <a href={formatRoute({ kind: 'piece', piece })}>{titleOf(piece)}</a>
          </h2>
          <ul className="notebook-list">
            {found
              .filter((entry) => entry.piece === piece)
              .map((entry) => (
                <NotebookEntry key={entry.id} entry={entry} onChange={setChanging} />
              ))}
          </ul>
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

const entryCount = (n: number): string => (n === 1 ? '1 entry' : `${n} entries`)

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
      listed.find(({ id }) => id === piece)?.title ??
      recorded.get(piece) ??
      'A piece that is not here any more',
    [listed, recorded],
  )
}
