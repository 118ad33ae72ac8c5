import type { StoreApi } from 'zustand/vanilla'
import { chunkAt } from '@/music/place'
import type { Chunk } from '@/music/chunk'
import type { Tempo } from '@/music/units'
import type { PlanItem } from '@/plan/items'
import type { CorrectedPiece, HandCorrections } from './handCorrections'
import type { PieceRecords } from './pieceRecord'
import type { StoragePort } from './ports'
import type { Upcoming } from './practising'
import type { BuildUpPlan } from './route'
import type { Settings } from './settings'

interface House {
  readonly hands: Pick<HandCorrections, 'open'>
  readonly records: PieceRecords
  readonly storage: Pick<StoragePort, 'dayOf'>
  readonly wallClock: () => number
  readonly settings: StoreApi<Settings>
}

/** Forms and build-ups come when they are wanted. */
const loadBuildUps = () => import('./buildUps')

/**
 * What is to be played of an item of today, as the record stands by now: of a place the first exercise
 * that is left, else the whole, else nothing. A piece that is gone has nothing to play.
 */
export const findWork =
  (house: House) =>
  async (item: PlanItem, goalTempo: Tempo): Promise<Upcoming | undefined> => {
    const piece = await house.hands.open(item.piece)
    if (!piece) return undefined
    switch (item.kind) {
      case 'warmUp':
      case 'coldCheck':
      case 'runThrough':
        return asItStands(piece, item)
      case 'problemSpot':
      case 'newGroup':
        return (await exerciseLeft(house, piece, item, goalTempo)) ?? wholeLeft(house, piece, item)
      case 'join':
        return wholeLeft(house, piece, item)
    }
  }

const asItStands = async (
  { score }: CorrectedPiece,
  { place, form }: PlanItem,
): Promise<Upcoming | undefined> => {
  const written = chunkAt(score, place)
  if (!written) return undefined
  const sheet =
    form === 'asWritten'
      ? { score, chunk: written }
      : (await loadBuildUps()).variantOf(score, written, form)
  return (
    sheet && {
      route: { kind: 'practice', piece: score.id, place, form },
      sheet: { score: sheet.score, chunk: sheet.chunk },
      written,
      form,
    }
  )
}

const exerciseLeft = async (
  { records, settings }: House,
  piece: CorrectedPiece,
  { passage }: PlanItem,
  goalTempo: Tempo,
): Promise<Upcoming | undefined> => {
  if (!passage) return undefined
  const { firstLeft } = await loadBuildUps()
  const { from, to, hand } = passage
  const plan: BuildUpPlan = {
    passage: { from, to, hand },
    thoroughness: 'brisk',
    direction: 'forward',
  }
  const { events } = await records.of(piece)
  const { span: reach } = settings.getState()
  return firstLeft({ score: piece.score, plan, goalTempo, reach, events })
}

/** The whole place, unless it was met in full today. */
const wholeLeft = async (
  house: House,
  piece: CorrectedPiece,
  { passage, place }: PlanItem,
): Promise<Upcoming | undefined> => {
  const { score } = piece
  const { from, to, hand } = passage ?? place
  const written = chunkAt(score, { from, to, hand })
  if (!written || (await isSecureToday(house, piece, written))) return undefined
  return {
    route: { kind: 'practice', piece: score.id, place: { from, to, hand } },
    sheet: { score, chunk: written },
    written,
  }
}

const isSecureToday = async (
  { records, storage, wallClock }: House,
  piece: CorrectedPiece,
  { id }: Chunk,
): Promise<boolean> => {
  const today = storage.dayOf(wallClock())
  const { events } = await records.of(piece)
  return events.some(
    (event) =>
      event.kind === 'secure' && event.chunk === id && storage.dayOf(event.atEpochMs) === today,
  )
}
