import type { NotebookWritten } from '@/journal/journal'
import { dateWords } from '@/text/dates'
import { notebookText } from '@/text/notebook'
import { useApp } from './context'
import { NotebookText } from './NotebookText'
import { whereWords } from './notebookWords'

/** An entry of the notebook; it can be changed and erased where the caller says how. */
export const NotebookEntry = ({
  entry,
  isHere = false,
  onChange,
  onErase,
}: {
  readonly entry: NotebookWritten
  /** It is of the bars in hand. */
  readonly isHere?: boolean
  readonly onChange?: (entry: NotebookWritten) => void
  readonly onErase?: (entry: NotebookWritten) => void
}) => {
  const app = useApp()
  const { subject, helped, place, text } = entry
  const words = notebookText.entry
  const about = words.about(notebookText.subjects[subject], whereWords(place))
  return (
    <li className="notebook-entry" data-here={isHere}>
      <div className="row notebook-about soft">
        <p>
          <b>{notebookText.subjects[subject]}</b>
          {helped !== undefined && `, ${notebookText.helped[helped ? 'true' : 'false']}`} ·{' '}
          {whereWords(place)} · {dateWords(app.notebook.dayOf(entry))}
        </p>
        <span className="row tight no-print">
          {onChange && (
            <button
              type="button"
              className="plain"
              aria-label={words.changeOf(about)}
              onClick={() => onChange(entry)}
            >
              {words.change}
            </button>
          )}
          {onErase && (
            <button
              type="button"
              className="plain"
              aria-label={words.eraseOf(about)}
              onClick={() => onErase(entry)}
            >
              {words.erase}
            </button>
          )}
        </span>
      </div>
      <NotebookText text={text} />
    </li>
  )
}
