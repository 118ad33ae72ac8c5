import type { PieceText } from '@/text/piece'

export const piece: PieceText = {}
