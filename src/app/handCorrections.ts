import {
  correctHands,
  countCorrectable,
  decodeCorrections,
  handCorrection,
  type HandCorrection,
} from '@/hands/correctHands'
import type { Hand } from '@/music/music'
import type { Key, PieceId, Tick } from '@/music/units'
import type { Library, OpenPiece } from './library'
import type { StoragePort } from './ports'

/** A piece with what the person said of its hands. */
export interface CorrectedPiece extends OpenPiece {
  readonly corrections: readonly HandCorrection[]
}

/** Which notes: from the onset at one tick to that at another, on all keys or on some. */
export interface Region {
  readonly from: Tick
  readonly to: Tick
  readonly keys?: readonly Key[]
}

export interface Change {
  readonly piece: CorrectedPiece
  /** How many notes it was about. */
  readonly notes: number
  /** Why it holds only until the page is closed. */
  readonly problem?: string
}

/** The person's word on hands that the file does not tell, kept under the piece's name. */
export interface HandCorrections {
  readonly apply: (piece: OpenPiece) => Promise<CorrectedPiece>
  /** A piece of the library with its corrections. */
  readonly open: (id: PieceId) => Promise<CorrectedPiece | undefined>
  /** `undefined` where the file says of each note whose it is. */
  readonly add: (id: PieceId, region: Region, hand: Hand) => Promise<Change | undefined>
  /** Takes the latest one back; `undefined` when there is none. */
  readonly undo: (id: PieceId) => Promise<Change | undefined>
}

export const createHandCorrections = (
  storage: Pick<StoragePort, 'hands' | 'saveHands'>,
  library: Pick<Library, 'open'>,
  /** Called with each piece whose hands have changed. */
  show: (piece: CorrectedPiece) => void,
): HandCorrections => {
  const known = new Map<PieceId, readonly HandCorrection[]>()

  const of = async (id: PieceId): Promise<readonly HandCorrection[]> => {
    const all = known.get(id) ?? decodeCorrections(await storage.hands(id))
    known.set(id, all)
    return all
  }
  const corrected = (piece: OpenPiece, corrections: readonly HandCorrection[]): CorrectedPiece => ({
    ...piece,
    score: correctHands(piece.score, corrections),
    corrections,
  })
  const change = async (
    asRead: OpenPiece,
    corrections: readonly HandCorrection[],
    about: HandCorrection,
  ): Promise<Change> => {
    const { id } = asRead.score
    const piece = corrected(asRead, corrections)
    known.set(id, corrections)
    show(piece)
    const saved = await storage.saveHands(id, corrections)
    const notes = countCorrectable(asRead.score, about)
    return { piece, notes, ...(saved.ok ? {} : { problem: saved.reason }) }
  }
  const apply = async (piece: OpenPiece): Promise<CorrectedPiece> =>
    corrected(piece, await of(piece.score.id))

  return {
    apply,
    open: async (id) => {
      const piece = await library.open(id)
      return piece && apply(piece)
    },
    add: async (id, { from, to, keys }, hand) => {
      const asRead = await library.open(id)
      if (!asRead) return undefined
      const correction = handCorrection(asRead.score, from, to, hand, keys)
      if (countCorrectable(asRead.score, correction) === 0) return undefined
      return change(asRead, [...(await of(id)), correction], correction)
    },
    undo: async (id) => {
      const asRead = await library.open(id)
      const all = await of(id)
      const last = all.at(-1)
      return asRead && last && change(asRead, all.slice(0, -1), last)
    },
  }
}
