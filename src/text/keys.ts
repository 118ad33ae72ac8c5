import { catalogue } from './text'

/** The list of keys. */
export const keysText = catalogue('keys', {})

export type KeysText = typeof keysText
