import { catalogue } from './text'

/** The session: what was practised in this sitting. */
export const sessionText = catalogue('session', {})

export type SessionText = typeof sessionText
