import {
  correctHands,
  countCorrectable,
  decodeCorrections,
  handCorrection,
  type HandCorrection,
} from '@/hands/correctHands'
import type { Hand } from '@/music/music'
import type { Key, PieceId, Tick } from '@/music/units'
import { carryHands, type CarriedHands } from './carryHands'
import type { Library, OpenPiece } from './library'
import type { StoragePort } from './ports'

/** A piece with what the person said of its hands. */
export interface CorrectedPiece extends OpenPiece {
  readonly corrections: readonly HandCorrection[]
  /** Of a better edition that has just taken the place of a piece: what became of that one's corrections. */
  readonly carriedHands?: CarriedHands & {
    /** Why they hold only until the page is closed. */
    readonly problem?: string
  }
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
  /** What was said has come in from elsewhere: it is read anew. */
  readonly refresh: (pieces: readonly PieceId[]) => void
  /** To the edition that takes the place of a piece; what became of them is told when it is opened next. */
  readonly carry: (old: OpenPiece, better: OpenPiece) => Promise<void>
}

export const createHandCorrections = (
  storage: Pick<StoragePort, 'hands' | 'saveHands'>,
  library: Pick<Library, 'open'>,
  /** Called with each piece whose hands have changed. */
  show: (piece: CorrectedPiece) => void,
): HandCorrections => {
  const known = new Map<PieceId, readonly HandCorrection[]>()
  const toTell = new Map<PieceId, NonNullable<CorrectedPiece['carriedHands']>>()

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
      const carriedHands = toTell.get(id)
      toTell.delete(id)
      return piece && { ...(await apply(piece)), ...(carriedHands ? { carriedHands } : {}) }
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
    refresh: (pieces) => {
      for (const id of pieces) known.delete(id)
    },
    carry: async (old, better) => {
      const [from, to] = [old.score.id, better.score.id]
      const former = await of(from)
      // Of the same music they are kept under the same name already.
      if (former.length === 0 || from === to) return
      const carried = carryHands(former, old.score, better.score)
      const own = await of(to)
      const added = carried.corrections.filter((one) => !own.some((other) => isSame(one, other)))
      // What was said of this very edition stands above what comes from the older one.
      const corrections = [...added, ...own]
      known.set(to, corrections)
      const saved = await storage.saveHands(to, corrections)
      toTell.set(to, { ...carried, ...(saved.ok ? {} : { problem: saved.reason }) })
    },
  }
}

const isSame = (one: HandCorrection, other: HandCorrection): boolean =>
  one.from === other.from &&
  one.to === other.to &&
  one.hand === other.hand &&
  one.keys?.join() === other.keys?.join()
