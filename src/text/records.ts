import { catalogue } from './text'

/** The record: copies, saving, taking in. */
export const recordsText = catalogue('records', {})

export type RecordsText = typeof recordsText
