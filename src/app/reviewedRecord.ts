import type { PieceId } from '@/music/units'
import type { Library, OpenPiece } from './library'
import type { StoragePort } from './ports'

/** What of a record is read for its review. */
export type ReviewedRecord = Pick<
  StoragePort,
  'sums' | 'chunkDays' | 'dayOf' | 'ofTime' | 'written'
>

/** The pieces at hand. */
export type Shelf = Pick<Library, 'open' | 'store'>

/** The piece, where its file is at hand. */
export const openListed = async (shelf: Shelf, id: PieceId): Promise<OpenPiece | undefined> =>
  shelf.store.getState().listed.some((piece) => piece.id === id) ? shelf.open(id) : undefined
