import { catalogue } from './text'

/** The notebook. */
export const notebookText = catalogue('notebook', {})

export type NotebookText = typeof notebookText
