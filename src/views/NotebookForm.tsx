import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react'
import { longestEntry, subjects, type Draft } from '@/app/notebook'
import type { RecordedPlace } from '@/journal/journal'
import type { PieceId } from '@/music/units'
import { keysText } from '@/text/keys'
import { notebookText } from '@/text/notebook'
import { useApp } from './context'
import { whereWords } from './notebookWords'
import { phrase } from './phrase'

/** An entry is written, or changed. What is typed is kept while the program runs, wherever one goes. Another entry is another form. */
export const NotebookForm = ({
  piece,
  here,
  change,
  onDone,
}: {
  readonly piece: PieceId
  /** The bars in hand when the notebook was opened. */
  readonly here: RecordedPlace | undefined
  /** An entry to change. */
  readonly change: Draft | undefined
  /** It is saved, or left as it was: in words. */
  readonly onDone: (said: string) => void
}) => {
  const app = useApp()
  const words = notebookText.form
  const id = useId()
  const field = useRef<HTMLTextAreaElement>(null)
  const fresh: Draft = { place: here, subject: 'idea', text: '' }
  const before = change ?? fresh
  const name = change?.replaces ?? piece
  const [draft, setDraft] = useState<Draft>(() => app.notebook.drafts.get(name) ?? before)
  const [problem, setProblem] = useState(false)
  const keep = (next: Draft): void => {
    setDraft(next)
    if (next.text === before.text) app.notebook.drafts.delete(name)
    else app.notebook.drafts.set(name, next)
  }
  useEffect(() => field.current?.focus(), [])
  const places = [here, draft.place].filter((place) => place !== undefined)
  const save = (): void => {
    if (draft.text.trim() === '') return setProblem(true)
    void app.notebook.write(piece, draft)
    app.notebook.drafts.delete(name)
    setDraft(fresh)
    setProblem(false)
    field.current?.focus()
    onDone(words.said.written)
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return
    event.preventDefault()
    save()
  }
  return (
    <form
      className="notebook-form"
      onSubmit={(event) => {
        event.preventDefault()
        save()
      }}
    >
      <label htmlFor={`${id}-text`}>{change ? words.change : words.fresh}</label>
      <textarea
        id={`${id}-text`}
        ref={field}
        rows={4}
        maxLength={longestEntry}
        value={draft.text}
        aria-describedby={`${id}-marks`}
        aria-invalid={problem}
        onKeyDown={onKeyDown}
        onChange={({ target }) => keep({ ...draft, text: target.value })}
      />
      <p id={`${id}-marks`} className="soft notebook-marks">
        {problem && draft.text.trim() === ''
          ? words.empty
          : phrase(
              words.marks(
                <code>{words.examples.stress}</code>,
                <code>{words.examples.list}</code>,
                <code>{words.examples.link}</code>,
              ),
            )}
      </p>
      <div className="row">
        <label className="row tight">
          {notebookText.about}
          <select
            value={draft.subject}
            onChange={({ target }) => {
              const subject = subjects.find((each) => each === target.value)
              if (subject) keep({ ...draft, subject })
            }}
          >
            {subjects.map((subject) => (
              <option key={subject} value={subject}>
                {notebookText.subjects[subject]}
              </option>
            ))}
          </select>
        </label>
        {draft.subject === 'tried' && (
          <label className="row tight">
            {words.didItHelp}
            <select
              value={String(draft.helped)}
              onChange={({ target: { value } }) =>
                keep({ ...draft, helped: value === 'undefined' ? undefined : value === 'true' })
              }
            >
              <option value="undefined">{words.notKnown}</option>
              <option value="true">{notebookText.helped.true}</option>
              <option value="false">{notebookText.helped.false}</option>
            </select>
          </label>
        )}
        <label className="row tight">
          {words.of}
          <select
            value={nameOf(draft.place)}
            onChange={({ target }) =>
              keep({ ...draft, place: places.find((place) => nameOf(place) === target.value) })
            }
          >
            {[...new Map(places.map((place) => [nameOf(place), place])).values()].map((place) => (
              <option key={nameOf(place)} value={nameOf(place)}>
                {whereWords(place)}
              </option>
            ))}
            <option value={nameOf(undefined)}>{whereWords(undefined)}</option>
          </select>
        </label>
        <span className="row tight notebook-save">
          {change && (
            <button
              type="button"
              onClick={() => {
                app.notebook.drafts.delete(name)
                onDone(words.said.left)
              }}
            >
              {words.leave}
            </button>
          )}
          <button type="submit" className="primary">
            {words.save} <kbd>{keysText.names.ctrlEnter}</kbd>
          </button>
        </span>
      </div>
    </form>
  )
}

const nameOf = (place: RecordedPlace | undefined): string =>
  place ? `${place.from}-${place.to}/${place.hand}` : 'whole'
