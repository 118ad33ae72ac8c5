import { catalogue } from './text'

/** The page of a piece: its music, passages, hands. */
export const pieceText = catalogue('piece', {})

export type PieceText = typeof pieceText
