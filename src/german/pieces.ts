import type { PiecesText } from '@/text/pieces'

export const pieces: PiecesText = {}
