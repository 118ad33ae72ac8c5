import { useState } from 'react'
import type { CorrectedPiece } from '@/app/handCorrections'
import { formatRoute } from '@/app/route'
import type { NotebookWritten, RecordedPlace } from '@/journal/journal'
import type { PieceDecision } from '@/journal/words'
import type { PieceId } from '@/music/units'
import { notebookText } from '@/text/notebook'
import { useApp, useSelected } from './context'
import { NotebookEntry } from './NotebookEntry'
import { NotebookOver } from './NotebookOver'
import { phrase } from './phrase'
import { isOf, useEntries, useNotebookKey } from './useNotebook'
import './notebook.css'

/** On the page of a piece: its notebook, that of the chosen bars first, and what is decided of the piece. */
export const NotebookSection = ({
  piece,
  here,
}: {
  readonly piece: CorrectedPiece
  /** The chosen bars. */
  readonly here: RecordedPlace | undefined
}) => {
  const app = useApp()
  const { open, isOpen, close } = useNotebookKey()
  const [change, setChange] = useState<NotebookWritten>()
  const entries = useEntries(piece.score.id)
  const problem = useSelected(app.notebook.store, (state) => state.problem)
  const stayed = useSelected(app.notebook.store, (state) => state.stayed.get(piece.score.id) ?? 0)
  const [mine, others] = [true, false].map((wanted) =>
    entries.filter((entry) => isOf(entry, here) === wanted),
  )
  const words = notebookText.strip
  return (
    <section className="notebook-strip" aria-labelledby="notebook">
      <div className="row notebook-head">
        <h2 id="notebook">{notebookText.title}</h2>
        <button type="button" onClick={open}>
          {entries.length === 0 ? words.write : words.open} <kbd>9</kbd>
        </button>
        <a href={formatRoute({ kind: 'notebook' })}>{notebookText.allPieces}</a>
        <Decision piece={piece.score.id} />
      </div>
      {problem !== undefined && <p className="notice">{problem}</p>}
      {stayed > 0 && (
        <p className="notice">
          {phrase(
            words.stayed(
              stayed,
              <a href={formatRoute({ kind: 'notebook' })}>{notebookText.allPieces}</a>,
            ),
          )}
        </p>
      )}
      {entries.length > 0 && (
        <ul className="notebook-list" aria-label={words.entries}>
          {[...(mine ?? []), ...(others ?? [])].map((entry) => (
            <NotebookEntry
              key={entry.id}
              entry={entry}
              isHere={isOf(entry, here)}
              onChange={(each) => {
                setChange(each)
                open()
              }}
            />
          ))}
        </ul>
      )}
      <NotebookOver
        piece={piece.score}
        {...{ here, change, isOpen }}
        close={() => {
          close()
          setChange(undefined)
        }}
      />
    </section>
  )
}

/** Whether the piece is at work, finished or laid aside. */
const Decision = ({ piece }: { readonly piece: PieceId }) => {
  const app = useApp()
  const decisions = useSelected(app.notebook.store, (state) => state.decisions)
  const now = decisions.get(piece) ?? 'takenUp'
  const offered: readonly PieceDecision[] =
    now === 'takenUp' ? ['finished', 'laidAside'] : ['takenUp']
  return (
    <span className="row notebook-decision" role="group" aria-label={notebookText.strip.thePiece}>
      <span aria-live="polite" className="soft">
        {notebookText.decided[now]}
      </span>
      {offered.map((decision) => (
        <button
          key={decision}
          type="button"
          className="plain"
          onClick={() => void app.notebook.decide(piece, decision)}
        >
          {notebookText.decide[decision]}
        </button>
      ))}
    </span>
  )
}
