import type { PieceId } from '@/music/units'
import type { HandCorrections } from './handCorrections'
import type { FingeredPiece, Fingerings } from './fingerings'
import type { HardSpots } from './hardSpots'
import type { BetterEdition, ChosenFile, Library, OpenPiece } from './library'
import type { Notebook } from './notebook'
import type { Session } from './session'

/** Files are brought in, and what the person said of the old goes over to the new. */
export interface Bringing {
  readonly addFile: (file: ChosenFile) => Promise<void>
  /** Takes other parts of the piece's file, and opens what they make. */
  readonly takeParts: (piece: OpenPiece, parts: readonly number[]) => Promise<void>
  /** Puts a better edition in the place of a piece, and opens it. */
  readonly replaceEdition: (edition: BetterEdition) => Promise<void>
}

interface House {
  readonly library: Pick<Library, 'add' | 'open' | 'replace' | 'takeParts'>
  readonly session: Pick<Session, 'pieceAdded'>
  readonly hands: Pick<HandCorrections, 'apply' | 'carry'>
  readonly notebook: Pick<Notebook, 'carry'>
  readonly fingerings: Pick<Fingerings, 'apply' | 'carry'>
  readonly hardSpots: Pick<HardSpots, 'carry'>
  /** To the page of a piece. */
  readonly goTo: (piece: PieceId) => void
  /** Shows a piece anew whose page stands. */
  readonly show: (piece: FingeredPiece) => void
}

export const createBringing = (house: House): Bringing => {
  const { library, session, hands, fingerings, notebook, hardSpots, goTo, show } = house
  return {
    addFile: async (file) => {
      const piece = await library.add(file)
      if (!piece) return
      await session.pieceAdded(piece.score, file.name)
      goTo(piece.score.id)
    },
    takeParts: async ({ score }, parts) => {
      const { piece, fileName } = (await library.takeParts(score.id, parts)) ?? {}
      if (!piece || !fileName) return
      await session.pieceAdded(piece.score, fileName)
      const taken = await fingerings.apply(await hands.apply(piece))
      await fingerings.carry(score, piece.score)
      await notebook.carry(score, taken.score)
      await hardSpots.carry(score, taken.score)
      if (piece.score.id === score.id) show(taken)
      else goTo(piece.score.id)
    },
    replaceEdition: async (edition) => {
      const { piece, open } = edition
      const old = await library.open(edition.replaces)
      if (!(await library.replace(edition))) return
      if (old) {
        await hands.carry(old, open)
        const [was, is] = [await hands.apply(old), await hands.apply(open)]
        await fingerings.carry(was.score, is.score)
        await notebook.carry(was.score, is.score)
        await hardSpots.carry(was.score, is.score)
      }
      await session.pieceAdded(open.score, piece.fileName)
      goTo(piece.id)
    },
  }
}
