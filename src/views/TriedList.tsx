import type { TriedProblem } from '@/review/problems'
import { notebookText } from '@/text/notebook'
import { describeTriedAt } from './notebookWords'

/** What was done about problems in drills: it stands here by itself. */
export const TriedList = ({ tried }: { readonly tried: readonly TriedProblem[] }) =>
  tried.length === 0 ? null : (
    <section aria-label={notebookText.tried.label}>
      <h3>{notebookText.tried.title}</h3>
      <TriedItems tried={tried} />
    </section>
  )

export const TriedItems = ({ tried }: { readonly tried: readonly TriedProblem[] }) => (
  <ul className="notebook-list">
    {tried.map((each) => (
      <li key={each.problem.id} className="notebook-entry">
        {describeTriedAt(each)}
      </li>
    ))}
  </ul>
)
