import { explainReadProblem, type ReadProblem } from '@/score/readProblem'
import { piecesText } from '@/text/pieces'

/** Why a file could not be taken in, or a piece not opened or kept. */
export type LibraryProblem =
  | { readonly kind: 'unread'; readonly fileName: string; readonly reason: ReadProblem }
  /** Without a file's name it is about the pieces as a whole. `why` is the store's own sentence. */
  | { readonly kind: 'unstored'; readonly fileName?: string; readonly why: string }
  /** The file holds a piece that comes with the program. */
  | { readonly kind: 'ofProgram'; readonly fileName: string }

/** What it is about, and one sentence. */
export const explainLibraryProblem = (problem: LibraryProblem): string => {
  switch (problem.kind) {
    case 'unread':
      return `${problem.fileName}: ${explainReadProblem(problem.reason)}`
    case 'unstored':
      return `${problem.fileName ?? piecesText.problems.yourPieces}: ${problem.why}`
    case 'ofProgram':
      return `${problem.fileName}: ${piecesText.problems.ofProgram}`
  }
}
