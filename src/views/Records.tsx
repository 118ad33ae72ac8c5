import { Fragment, useRef, useState, type RefObject } from 'react'
import { formatRoute } from '@/app/route'
import type { LookedAt } from '@/app/records'
import { dateWords } from '@/text/dates'
import { grouped } from '@/text/numbers'
import { recordsText } from '@/text/records'
import { ChooseFiles, recordFiles } from './ChooseFiles'
import { useApp, useSelected } from './context'
import { CameIn, CannotComeIn, Reading, Taking, UnreadLines } from './IncomingParts'
import { PageKeys } from './PageKeys'
import { phrase } from './phrase'
import { RecordCopies } from './RecordCopies'
import './review.css'

/** The record as a file: out of this machine, and into it. */
export const Records = () => {
  const { records } = useApp()
  const picker = useRef<HTMLInputElement>(null)
  const choose = (): void => picker.current?.click()
  const [tableProblem, setTableProblem] = useState<string>()
  const saveTable = async (): Promise<void> => {
    const saved = await records.saveTable()
    setTableProblem(saved.ok ? undefined : saved.reason)
  }
  const { keys } = recordsText
  return (
    <main className="page records">
      <div className="row">
        <h1>{recordsText.title}</h1>
        <PageKeys
          keys={[
            { key: 's', shown: 'S', words: keys.save, run: () => void records.save() },
            { key: 't', shown: 'T', words: keys.table, run: () => void saveTable() },
            { key: 'o', shown: 'O', words: keys.choose, run: choose },
          ]}
        />
      </div>
      <p>{recordsText.intro}</p>
      <RecordCopies saveTable={saveTable} tableProblem={tableProblem} />
      <TakeRecord picker={picker} choose={choose} />
      <p>
        {phrase(
          recordsText.review((words) => <a href={formatRoute({ kind: 'review' })}>{words}</a>),
        )}
      </p>
    </main>
  )
}

const TakeRecord = ({
  picker,
  choose,
}: {
  readonly picker: RefObject<HTMLInputElement | null>
  readonly choose: () => void
}) => {
  const app = useApp()
  const words = recordsText.takeIn
  return (
    <section className="bring" aria-labelledby="take">
      <h2 id="take">{words.title}</h2>
      <p>{words.what}</p>
      <button type="button" onClick={choose}>
        {words.choose} <kbd>O</kbd>
      </button>
      <ChooseFiles
        picker={picker}
        label={words.file}
        accept={recordFiles}
        choose={app.records.look}
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
        <Reading fileName={state.fileName} done={state.done}>
          <button type="button" onClick={app.records.forget}>
            {recordsText.incoming.cancel}
          </button>
        </Reading>
      )
    case 'preview':
      return <Preview fileName={state.fileName} preview={state.preview} />
    case 'importing':
      return <Taking fileName={state.fileName} done={state.done} of={state.of} />
    case 'done': {
      const { added, known, taken } = state.outcome
      const { pieces } = state
      return (
        <CameIn taken={taken.length} words={recordsText.done.taken}>
          {phrase(recordsText.done.came((figure) => <b>{figure}</b>, added, known, state.fileName))}
          {pieces > 0 && ` ${recordsText.done.pieces(pieces)}`}
        </CameIn>
      )
    }
    case 'failed':
      return <CannotComeIn fileName={state.fileName} message={state.message} />
  }
}

const Preview = ({
  fileName,
  preview,
}: {
  readonly fileName: string
  readonly preview: LookedAt
}) => {
  const app = useApp()
  const { fresh, unread, kept } = preview
  const bringsPieces = Object.values(kept).some((each) => each.fresh + each.newer > 0)
  const brings = fresh.events > 0 || bringsPieces
  return (
    <div className="import" role="status">
      <h3>{fileName}</h3>
      <Brings preview={preview} />
      <UnreadLines unread={unread} words={recordsText.incoming.unread} />
      <div className="row">
        {brings ? (
          <button type="button" className="primary" onClick={() => void app.records.take()}>
            {fresh.events > 0
              ? recordsText.preview.takeEvents(fresh.events)
              : recordsText.preview.takePieces}
          </button>
        ) : (
          <p>{recordsText.preview.allHere}</p>
        )}
        <button type="button" onClick={app.records.forget}>
          {brings ? recordsText.incoming.leave : recordsText.incoming.close}
        </button>
      </div>
    </div>
  )
}

/** What comes with it, in figures. */
const Brings = ({ preview: { events, known, fresh, kept } }: { readonly preview: LookedAt }) => {
  const words = recordsText.preview
  const { firstDay, lastDay } = fresh
  return (
    <dl className="brings">
      <dt>{words.events}</dt>
      <dd>{grouped(events)}</dd>
      <dt>{words.known}</dt>
      <dd>{grouped(known)}</dd>
      <dt>{words.fresh}</dt>
      <dd>{words.newOnes(fresh)}</dd>
      {firstDay !== undefined && lastDay !== undefined && (
        <>
          <dt>{words.days}</dt>
          <dd>{words.span(fresh.days, dateWords(firstDay), dateWords(lastDay))}</dd>
        </>
      )}
      {fresh.pieces.length > 0 && (
        <>
          <dt>{words.pieces}</dt>
          <dd>
            <PieceNames pieces={fresh.pieces} />
          </dd>
        </>
      )}
      {keptKinds.map(
        (kind) =>
          Object.values(kept[kind]).some((n) => n > 0) && (
            <Fragment key={kind}>
              <dt>{words.kept[kind]}</dt>
              <dd>{words.ofPieces(kept[kind])}</dd>
            </Fragment>
          ),
      )}
    </dl>
  )
}

const keptKinds = ['pieceFile', 'pieceHands', 'pieceSpots'] as const

/** So many pieces are named. */
const mostNamed = 8

/** By the title in the file or in the list of pieces; the nameless are counted. */
const PieceNames = ({ pieces }: { readonly pieces: LookedAt['fresh']['pieces'] }) => {
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
    ...(others > 0 ? [recordsText.preview.otherPieces(others, named.length)] : []),
  ].join(', ')
}
