import type { PieceId } from '@/music/units'
import type { PieceFigures } from '@/review/allTime'
import { piecesText } from '@/text/pieces'
import { useApp, useSelected } from './context'

/** The title of a piece as it stands in the list, else as it was added last. */
export const useTitles = (
  pieces: readonly Pick<PieceFigures, 'piece' | 'title'>[],
): ((id: PieceId) => string) => {
  const app = useApp()
  const listed = useSelected(app.library.store, (state) => state.listed)
  return (id) =>
    listed.find((each) => each.id === id)?.title ??
    pieces.find(({ piece }) => piece === id)?.title ??
    piecesText.somePiece
}
