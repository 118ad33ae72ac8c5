import { readingText, type ReadingText } from '@/text/reading'
import { tell, type Told } from '@/text/told'

/** Why a file could not be read, as data: the reader runs in a worker, which speaks no language. */
export type ReadProblem = Told<ReadingText['problems']>

/** One sentence for the person: what, where, and what to do. */
export const explainReadProblem = (problem: ReadProblem): string =>
  tell(readingText.problems, problem)
