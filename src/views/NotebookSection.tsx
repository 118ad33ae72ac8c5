import { useState } from 'react'
import type { CorrectedPiece } from '@/app/handCorrections'
import { formatRoute } from '@/app/route'
import type { NotebookWritten, RecordedPlace } from '@/journal/journal'
import type { PieceDecision } from '@/journal/words'
import type { PieceId } from '@/music/units'
import { useApp, useSelected } from './context'
import { NotebookEntry } from './NotebookEntry'
import { NotebookOver } from './NotebookOver'
import { decisionWords } from './notebookWords'
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
  return (
    <section className="notebook-strip" aria-labelledby="notebook">
      <div className="row notebook-head">
        <h2 id="notebook">Notebook</h2>
        <button type="button" onClick={open}>
          {entries.length === 0 ? 'Write in it' : 'Open it'} <kbd>9</kbd>
        </button>
        <a href={formatRoute({ kind: 'notebook' })}>All pieces</a>
        <Decision piece={piece.score.id} />
      </div>
      {problem !== undefined && <p className="notice">{problem}</p>}
      {stayed > 0 && (
        <p className="notice">
          {stayed === 1 ? 'One entry' : `${stayed} entries`} stayed with the older edition, whose
          notes differ there; <a href={formatRoute({ kind: 'notebook' })}>All pieces</a> has them.
        </p>
      )}
      {entries.length > 0 && (
        <ul className="notebook-list" aria-label="Entries">
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
  const offered: readonly (readonly [PieceDecision, string])[] =
    now === 'takenUp'
      ? [
          ['finished', 'It is finished'],
          ['laidAside', 'Lay it aside'],
        ]
      : [['takenUp', 'Take it up again']]
  return (
    <span className="row notebook-decision" role="group" aria-label="The piece">
      <span aria-live="polite" className="soft">
        {decisionWords[now]}
      </span>
      {offered.map(([decision, words]) => (
        <button
          key={decision}
          type="button"
          className="plain"
          onClick={() => void app.notebook.decide(piece, decision)}
        >
          {words}
        </button>
      ))}
    </span>
  )
}
