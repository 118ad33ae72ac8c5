import type { NotebookWritten } from '@/journal/journal'
import type { PieceId } from '@/music/units'
import { notebookText } from '@/text/notebook'
import { NotebookEntry } from './NotebookEntry'
import { useTried } from './NotebookOver'
import { useReviewed } from './reviewed'
import { TriedList } from './TriedList'
import './notebook.css'

/** The notebook of a piece in its review, and on paper. */
export const NotebookPrinted = ({
  id,
  entries,
}: {
  readonly id: PieceId
  readonly entries: readonly NotebookWritten[]
}) => {
  const isOwn = useReviewed().student === undefined
  const tried = useTried(id, isOwn)
  return entries.length === 0 && tried.length === 0 ? null : (
    <section aria-labelledby="notebook">
      <h2 id="notebook">{notebookText.title}</h2>
      <ul className="notebook-list">
        {entries.map((entry) => (
          <NotebookEntry key={entry.id} entry={entry} />
        ))}
      </ul>
      <TriedList tried={tried} />
    </section>
  )
}
