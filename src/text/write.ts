import { catalogue } from './text'

/** Music that is typed or played in. */
export const writeText = catalogue('write', {})

export type WriteText = typeof writeText
