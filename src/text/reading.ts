import { catalogue } from './text'

/** What is told of a file that cannot be read, or is odd. */
export const readingText = catalogue('reading', {})

export type ReadingText = typeof readingText
