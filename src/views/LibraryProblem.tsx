import { explainLibraryProblem } from '@/app/libraryProblem'
import { useApp, useSelected } from './context'

/** What is wrong with a file that was brought, or with keeping the pieces. */
export const LibraryProblem = () => {
  const app = useApp()
  const problem = useSelected(app.library.store, (state) => state.problem)
  if (!problem) return null
  return (
    <p className="notice" role="alert">
      {explainLibraryProblem(problem)}
    </p>
  )
}
