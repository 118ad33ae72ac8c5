import { catalogue } from './text'

/** The list of pieces, and how a piece comes in. */
export const piecesText = catalogue('pieces', {})

export type PiecesText = typeof piecesText
