import { catalogue } from './text'

/** What the database and a folder answer. */
export const storageText = catalogue('storage', {})

export type StorageText = typeof storageText
