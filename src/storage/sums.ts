import { summedEvents } from '@/journal/block'
import { monthOf, type Day } from '@/journal/day'
import { decodeEvent } from '@/journal/decode'
import { groupBy } from '@/journal/groupBy'
import type { JournalEvent } from '@/journal/journal'
import { compareEvents } from '@/journal/merge'
import { isPlayed, sumDay, type Summed } from '@/journal/sumDays'
import type { ChunkDay, DaySums } from '@/journal/sums'
import type { PieceId } from '@/music/units'
import type { Database, MonthSums } from './connection'
import type { DayRule } from './days'
import { overlapping } from './events'
import type { KeptSums } from './storage'

/**
 * Kept sums: those of a day are always the sums of its packed events. A day that has events in the
 * tail too is summed from both, so that what is read is what all events of each day come to.
 */
export const readSums = async (
  database: Database,
  { dayOf }: DayRule,
  unsaved: readonly JournalEvent[],
): Promise<KeptSums> => {
  const reading = database.transaction(['events', 'monthSums'])
  const [records, months] = await Promise.all([
    reading.objectStore('events').getAll(),
    reading.objectStore('monthSums').getAll(),
  ])
  const kept = joinMonths(months)
  const days = new Set(kept.totals.map(({ day }) => day))
  const fresh = await sumLoose(database, playedOf([...readable(records), ...unsaved]), dayOf, days)
  return {
    totals: replaceDays(
      kept.totals,
      fresh.map(({ total }) => total),
      fresh,
    ),
    pieces: replaceDays(
      kept.pieces,
      fresh.flatMap(({ pieces }) => pieces),
      fresh,
    ),
  }
}

/** The days of each chunk of a piece. */
export const readChunkSums = async (
  database: Database,
  { dayOf }: DayRule,
  unsaved: readonly JournalEvent[],
  piece: PieceId,
): Promise<readonly ChunkDay[]> => {
  const reading = database.transaction(['events', 'monthSums', 'chunkSums'])
  const [records, months, kept] = await Promise.all([
    reading.objectStore('events').getAll(),
    reading.objectStore('monthSums').getAll(),
    reading.objectStore('chunkSums').getAll(ofPiece(piece)),
  ])
  const days = new Set(joinMonths(months).totals.map(({ day }) => day))
  const fresh = await sumLoose(database, playedOf([...readable(records), ...unsaved]), dayOf, days)
  const rows = fresh.flatMap(({ chunks }) => chunks.filter((row) => row.piece === piece))
  return replaceDays(kept.flat(), rows, fresh)
}

/** The sums of the days on which these events fall, with what is packed of the same days. */
export const sumLoose = async (
  database: Database,
  loose: readonly Summed[],
  dayOf: DayRule['dayOf'],
  packedDays: ReadonlySet<Day>,
): Promise<readonly DaySums[]> => {
  const days = [...groupBy(loose, (event) => dayOf(event.atEpochMs))]
  const sums: DaySums[] = []
  for (const [day, events] of days.toSorted(([a], [b]) => (a < b ? -1 : 1))) {
    const packed = packedDays.has(day) ? await packedOf(database, day, events, dayOf) : []
    const byId = new Map<string, Summed>([...packed, ...events].map((event) => [event.id, event]))
    sums.push(sumDay(day, [...byId.values()].toSorted(compareEvents)))
  }
  return sums
}

/** A day has 25 hours at most; one more, so that no border is missed. */
const aroundDayMs = 26 * 3_600_000

const packedOf = async (
  database: Database,
  day: Day,
  events: readonly Summed[],
  dayOf: DayRule['dayOf'],
): Promise<readonly Summed[]> => {
  const at = events[0]?.atEpochMs ?? 0
  const { store } = database.transaction('blocks')
  const found: Summed[] = []
  for (const key of await overlapping(store, at - aroundDayMs, at + aroundDayMs)) {
    const summed = summedEvents(await store.get(key))
    for (const event of summed.ok ? summed.value : [])
      if (dayOf(event.atEpochMs) === day) found.push(event)
  }
  return found
}

const playedOf = (events: readonly JournalEvent[]): readonly Summed[] => events.filter(isPlayed)

/** What this version can read of the tail; `events` tells of the others. */
export const readable = (records: readonly unknown[]): readonly JournalEvent[] =>
  records.flatMap((record) => {
    const event = decodeEvent(record)
    return event.ok ? [event.value] : []
  })

/** Rows with those of some days counted anew, in the order of days. */
export const replaceDays = <T extends { readonly day: Day }>(
  rows: readonly T[],
  fresh: readonly T[],
  sums: readonly DaySums[],
): readonly T[] => {
  const days = new Set(sums.map(({ total }) => total.day))
  return [...rows.filter(({ day }) => !days.has(day)), ...fresh].toSorted((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : 0,
  )
}

const joinMonths = (months: readonly MonthSums[]): MonthSums => ({
  totals: months.flatMap(({ totals }) => totals),
  pieces: months.flatMap(({ pieces }) => pieces),
})

/** All months of a piece: an array as key sorts after every text (Indexed Database API 3.0, keys). */
const ofPiece = (piece: PieceId): IDBKeyRange => IDBKeyRange.bound([piece], [piece, []])

export const monthsOf = (sums: readonly DaySums[]): ReadonlySet<string> =>
  new Set(sums.map(({ total }) => monthOf(total.day)))
