import { useRef, type ChangeEvent } from 'react'
import { formatRoute } from '@/app/route'
import type { LookedAt } from '@/app/records'
import type { ImportPreview } from '@/journal/previewImport'
import { useApp, useSelected } from './context'
import { RecordCopies } from './RecordCopies'
import { dateWords, grouped } from './reviewWords'
import { chosenFile } from './useDrop'
import { plural } from '@/text/plural'
import './review.css'

/** The record as a file: out of this machine, and into it. */
export const Records = () => (
  <main className="page records">
    <h1>The record</h1>
    <p>
      Everything that you practise is recorded on this machine and nowhere else. Save it as a file
      now and then, and keep that file in another place: on a new machine it brings everything back.
    </p>
    <RecordCopies />
    <TakeRecord />
    <p>
      <a href={formatRoute({ kind: 'review' })}>Review</a> of what is recorded.
    </p>
  </main>
)

const TakeRecord = () => {
  const app = useApp()
  const picker = useRef<HTMLInputElement>(null)
  const choose = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    await app.records.look([...(target.files ?? [])].map(chosenFile))
    target.value = ''
  }
  return (
    <section className="bring" aria-labelledby="take">
      <h2 id="take">Take in a saved record</h2>
      <p>
        From another machine, or one that was saved here; of a folder, all its files at once. What
        is here already is left as it is, so the same file can be taken in twice. The scores
        themselves are not in it: bring in their files on the page{' '}
        <a href={formatRoute({ kind: 'pieces' })}>Pieces</a>, and they find their record.
      </p>
      <button type="button" onClick={() => picker.current?.click()}>
        Choose a record …
      </button>
      <input
        ref={picker}
        className="unseen"
        type="file"
        multiple
        accept=".jsonl,.ndjson,.json,.txt,application/jsonl"
        tabIndex={-1}
        aria-label="File of a record"
        onChange={(event) => void choose(event)}
      />
      <Import />
    </section>
  )
}

const Import = () => {
  const app = useApp()
  const state = useSelected(app.records.import, (now) => now)
  switch (state.kind) {
    case 'none':
      return null
    case 'reading':
      return (
        <div className="import">
          <Progress label={`Reading ${state.fileName}`} done={state.done} of={1} />
          <button type="button" onClick={app.records.forget}>
            Cancel
          </button>
        </div>
      )
    case 'preview':
      return <Preview fileName={state.fileName} preview={state.preview} />
    case 'importing':
      return (
        <div className="import">
          <Progress label={`Taking in ${state.fileName}`} done={state.done} of={state.of} />
        </div>
      )
    case 'done': {
      const { added, known, taken } = state.outcome
      return (
        <div className="import" role="status">
          <p>
            <b>{grouped(added)}</b> {added === 1 ? 'event' : 'events'} of {state.fileName} came in,{' '}
            {grouped(known)} {known === 1 ? 'was' : 'were'} here already.
          </p>
          {taken.length > 0 && (
            <p>
              {plural(taken.length, 'event')} bore the name of another one that is here; those here
              were kept.
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

/** So many pieces and lines are named. */
const mostNamed = 8

const Preview = ({
  fileName,
  preview: { events, known, fresh, unread },
}: {
  readonly fileName: string
  readonly preview: LookedAt
}) => {
  const app = useApp()
  return (
    <div className="import" role="status">
      <h3>{fileName}</h3>
      <dl className="brings">
        <dt>Events in the file</dt>
        <dd>{grouped(events)}</dd>
        <dt>Here already</dt>
        <dd>{grouped(known)}</dd>
        <dt>New</dt>
        <dd>
          {grouped(fresh.events)}
          {fresh.events > 0 &&
            `, among them ${grouped(fresh.repetitions)} ${fresh.repetitions === 1 ? 'repetition' : 'repetitions'}`}
          {fresh.entries > 0 &&
            ` and ${grouped(fresh.entries)} ${fresh.entries === 1 ? 'entry' : 'entries'} of the notebook`}
        </dd>
        {fresh.firstDay !== undefined && fresh.lastDay !== undefined && (
          <>
            <dt>Days</dt>
            <dd>
              {grouped(fresh.days)}, {dateWords(fresh.firstDay)}
              {fresh.lastDay !== fresh.firstDay && ` to ${dateWords(fresh.lastDay)}`}
            </dd>
          </>
        )}
        {fresh.pieces.length > 0 && (
          <>
            <dt>Pieces</dt>
            <dd>
              <PieceNames pieces={fresh.pieces} />
            </dd>
          </>
        )}
      </dl>
      {unread.length > 0 && (
        <div className="notice">
          <p>{plural(unread.length, 'line')} cannot be read and will be left out:</p>
          <ul className="flaws">
            {unread.slice(0, mostNamed).map(({ of, line, why }) => (
              <li key={`${of} ${line}`}>
                Line {line}
                {of === undefined ? '' : ` of ${of}`}: {why}
              </li>
            ))}
          </ul>
          {unread.length > mostNamed && <p>and {unread.length - mostNamed} more.</p>}
        </div>
      )}
      <div className="row">
        {fresh.events > 0 ? (
          <button type="button" className="primary" onClick={() => void app.records.take()}>
            Take in {grouped(fresh.events)} {fresh.events === 1 ? 'event' : 'events'}
          </button>
        ) : (
          <p>All of it is here already.</p>
        )}
        <button type="button" onClick={app.records.forget}>
          {fresh.events > 0 ? 'Leave it' : 'Close'}
        </button>
      </div>
    </div>
  )
}

/** By the title in the file or in the list of pieces; the nameless are counted. */
const PieceNames = ({ pieces }: { readonly pieces: ImportPreview['fresh']['pieces'] }) => {
  const app = useApp()
  const listed = useSelected(app.library.store, (state) => state.listed)
  const titles = pieces.flatMap(({ piece, title }) => {
    const known = listed.find(({ id }) => id === piece)?.title ?? title
    return known === undefined ? [] : [known]
  })
  const named = titles.slice(0, mostNamed)
  const others = pieces.length - named.length
  return [
    ...named,
    ...(others > 0 ? [plural(others, named.length > 0 ? 'other' : 'piece')] : []),
  ].join(', ')
}
