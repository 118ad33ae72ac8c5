import type { PieceId } from '@/music/units'
import { createFingerings, fingered, none, type FingeredPiece, type Fingerings } from './fingerings'
import { createHandCorrections, type CorrectedPiece, type HandCorrections } from './handCorrections'
import type { Library } from './library'
import type { Ports } from './ports'
import type { Screen } from './screens'
import type { Session } from './session'

/** Pieces of the library, with the person's word on their hands and fingers. */
export interface OpenedPieces {
  readonly hands: HandCorrections
  readonly fingerings: Fingerings
  readonly open: (id: PieceId) => Promise<FingeredPiece | undefined>
  /** Files of these pieces, or words on them, have come in from elsewhere. */
  readonly refresh: (pieces: readonly PieceId[]) => Promise<void>
}

export const createOpenedPieces = (house: {
  readonly ports: Ports
  readonly library: Library
  readonly session: Session
  readonly screen: () => Screen
  /** Shows a piece anew whose page stands. */
  readonly show: (piece: FingeredPiece) => void
}): OpenedPieces => {
  const { ports, library, session, screen, show } = house
  const withDigits = (piece: CorrectedPiece): FingeredPiece =>
    fingered(piece, fingerings.store.getState().pieces.get(piece.score.id) ?? none)
  const hands = createHandCorrections(ports.storage, library, (piece) => {
    const now = screen()
    if (now.kind === 'piece' && now.piece.score.id === piece.score.id) show(withDigits(piece))
  })
  const fingerings = createFingerings(ports, session, (id) => {
    const now = screen()
    if (now.kind === 'piece' && now.piece.score.id === id) show(withDigits(now.piece))
  })
  return {
    hands,
    fingerings,
    open: async (id) => {
      const piece = await hands.open(id)
      return piece && fingerings.apply(piece)
    },
    refresh: async (pieces) => {
      hands.refresh(pieces)
      await library.refresh(pieces)
    },
  }
}
