import type { NotebookWritten } from '@/journal/journal'
import { useApp } from './context'
import { NotebookText } from './NotebookText'
import { helpedWords, subjectWords, whereWords } from './notebookWords'
import { dateWords } from './reviewWords'

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
  const about = `${subjectWords[subject]}, ${whereWords(place)}`
  return (
    <li className="notebook-entry" data-here={isHere}>
      <div className="row notebook-about soft">
        <p>
          <b>{subjectWords[subject]}</b>
          {helped !== undefined && `, ${helpedWords[helped ? 'true' : 'false']}`} ·{' '}
          {whereWords(place)} · {dateWords(app.notebook.dayOf(entry))}
        </p>
        {onChange && (
          <button
            type="button"
            className="plain no-print"
            aria-label={`Change: ${about}`}
            onClick={() => onChange(entry)}
          >
            Change
          </button>
        )}
        {onErase && (
          <button
            type="button"
            className="plain no-print"
            aria-label={`Erase: ${about}`}
            onClick={() => onErase(entry)}
          >
            Erase
          </button>
        )}
      </div>
      <NotebookText text={text} />
    </li>
  )
}
