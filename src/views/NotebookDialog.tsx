import { useLayoutEffect, useRef, useState } from 'react'
import type { Draft } from '@/app/notebook'
import { formatRoute } from '@/app/route'
import type { NotebookWritten, RecordedPlace } from '@/journal/journal'
import type { PieceId } from '@/music/units'
import type { TriedProblem } from '@/review/problems'
import { keysText } from '@/text/keys'
import { notebookText } from '@/text/notebook'
import { useApp } from './context'
import { NotebookEntry } from './NotebookEntry'
import { NotebookForm } from './NotebookForm'
import { whereWords } from './notebookWords'
import { TriedList } from './TriedList'
import { draftOf, isOf, useEntries } from './useNotebook'
import './notebook.css'

interface NotebookDialogProps {
  readonly piece: { readonly id: PieceId; readonly title: string }
  /** The bars in hand. */
  readonly here?: RecordedPlace | undefined
  /** An entry to change at once. */
  readonly change?: NotebookWritten | undefined
  /** What was tried at problems of the piece, where the caller can tell. */
  readonly tried?: readonly TriedProblem[]
  readonly onClose: () => void
}

/** The notebook of a piece over the page. It opens when it is mounted; Esc closes it, and the focus goes back. */
export const NotebookDialog = ({
  piece,
  here: inHand,
  change,
  tried = [],
  onClose,
}: NotebookDialogProps) => {
  const app = useApp()
  const dialog = useRef<HTMLDialogElement>(null)
  // The bars at the moment of opening: keys that are played meanwhile may choose others.
  const [here] = useState(inHand)
  const [draft, setDraft] = useState<Draft | undefined>(() => change && draftOf(change))
  const [erased, setErased] = useState<NotebookWritten>()
  const [said, setSaid] = useState('')
  const entries = useEntries(piece.id)
  // Before the field in it asks for the focus.
  useLayoutEffect(() => {
    const shown = dialog.current
    shown?.showModal()
    return () => shown?.close()
  }, [])
  const erase = (entry: NotebookWritten): void => {
    void app.notebook.erase(entry)
    setErased(entry)
    setSaid('')
  }
  const takeBack = (entry: NotebookWritten): void => {
    void app.notebook.write(entry.piece, { ...draftOf(entry), replaces: undefined })
    setErased(undefined)
    setSaid(notebookText.standsAgain)
  }
  const names = notebookText.groups
  const groups = [
    [here && names.here(whereWords(here)), entries.filter((entry) => isOf(entry, here))],
    [names.piece, entries.filter(({ place }) => !place)],
    [here ? names.elsewhere : names.places, entries.filter((e) => e.place && !isOf(e, here))],
  ] as const
  return (
    <dialog
      ref={dialog}
      className="notebook-dialog"
      aria-labelledby="notebook-title"
      onClose={onClose}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        // The browser would tell of it only afterwards, and the next key might come before.
        event.preventDefault()
        onClose()
      }}
    >
      <div className="row notebook-head">
        <h2 id="notebook-title">
          {notebookText.title} <span className="soft">{piece.title}</span>
        </h2>
        <a href={formatRoute({ kind: 'notebook' })}>{notebookText.allPieces}</a>
        <button type="button" onClick={() => dialog.current?.close()}>
          {notebookText.close} <kbd>{keysText.names.escape}</kbd>
        </button>
      </div>
      <NotebookForm
        piece={piece.id}
        here={here}
        key={draft?.replaces}
        change={draft}
        onDone={(words) => {
          setErased(undefined)
          setDraft(undefined)
          setSaid(words)
        }}
      />
      <p role="status" className="notebook-said">
        {erased ? `${notebookText.erased} ` : said}
        {erased && (
          <button type="button" onClick={() => takeBack(erased)}>
            {notebookText.takeBack}
          </button>
        )}
      </p>
      {groups.map(
        ([name = '', of]) =>
          of.length > 0 && (
            <section key={name} aria-label={names.entriesOf(name)}>
              <h3>{name}</h3>
              <ul className="notebook-list">
                {of.map((entry) => (
                  <NotebookEntry
                    key={entry.id}
                    entry={entry}
                    isHere={isOf(entry, here)}
                    onChange={(each) => setDraft(draftOf(each))}
                    onErase={erase}
                  />
                ))}
              </ul>
            </section>
          ),
      )}
      <TriedList tried={tried} />
    </dialog>
  )
}
