import type { JournalEvent } from '@/journal/journal'
import { compareEvents } from '@/journal/merge'
import type { Score } from '@/music/music'
import { failed, ok, type Result } from '@/music/result'
import type { ChunkId } from '@/music/units'
import { carryEvents, compareEditions, type Carried, type CarryOver } from '@/review/carryOver'
import type { StoragePort } from './ports'

type Record = Result<readonly JournalEvent[], string>
type Reading = Pick<StoragePort, 'ofChunk' | 'ofPiece'>
type Edition = { readonly score: Score; readonly carried?: readonly Carried[] }

/** What was played of a chunk, in the older editions of its piece too, in the order of time. */
export const recordOfChunk = async (
  storage: Reading,
  { score, carried = [] }: Edition,
  chunk: ChunkId,
): Promise<Record> => {
  const former = carried.filter(({ to }) => to === chunk)
  const read = await Promise.all([
    storage.ofChunk(chunk),
    ...former.map(({ from }) => storage.ofChunk(from)),
  ])
  const events: JournalEvent[] = []
  for (const each of read) {
    if (!each.ok) return each
    events.push(...each.value)
  }
  return ok(carryEvents(events, former, score.id).toSorted(compareEvents))
}

/** How much of the record of a piece holds for a better edition, what came from still older ones included. */
export const compareWith = async (
  storage: Reading,
  old: Edition,
  better: Score,
): Promise<Result<CarryOver, string>> => {
  const own = await storage.ofPiece(old.score.id)
  if (!own.ok) return failed(own.reason)
  const earlier = old.carried ?? []
  const former = await Promise.all(earlier.map(({ from }) => storage.ofChunk(from)))
  const events = [...own.value]
  for (const each of former) {
    if (!each.ok) return failed(each.reason)
    events.push(...carryEvents(each.value, earlier, old.score.id))
  }
  const { practised, carried } = compareEditions(events, old.score, better)
  const through = earlier.flatMap(({ from, to }) => {
    const next = carried.find((each) => each.from === to)
    return next ? [{ from, to: next.to }] : []
  })
  return ok({ practised, carried: [...carried, ...through] })
}
