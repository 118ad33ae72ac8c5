import { catalogue } from './text'

/** The head of every page, and the messages that stand under it. */
export const shellText = catalogue('shell', {})

export type ShellText = typeof shellText
