/** What tests/bench/inBrowser.ts runs in the browser: a journal of any length in a real database, and what it costs. */
import { openDB } from 'idb'
import { packBlock } from '@/journal/block'
import { monthOf } from '@/journal/day'
import { isPlayed, sumDay } from '@/journal/sumDays'
import { eventId } from '@/journal/ids'
import type { JournalEvent, RepetitionRecorded } from '@/journal/journal'
import type { ChunkDay, DaySums } from '@/journal/sums'
import { reviewAllTime } from '@/review/allTime'
import { openStorage } from '@/storage/indexedDb'
import type { Storage } from '@/storage/storage'
import { dayOf, eventsOf } from './tenYears'

const days = { name: 'UTC', dayOf }
const open = async (name: string): Promise<Storage> => {
  const opened = await openStorage(name, days)
  if (!opened.ok) throw new Error(opened.reason.kind)
  return opened.value
}

/** Puts blocks and sums of so many days where packing would have put them. */
const fill = async (name: string, dayCount: number): Promise<number> => {
  ;(await open(name)).close()
  const database = await openDB(name)
  let repetitions = 0
  let month: DaySums[] = []
  const flush = async (): Promise<void> => {
    const key = monthOf(month[0]?.total.day ?? dayOf(0))
    const rows = month.flatMap(({ chunks }) => chunks)
    const change = database.transaction(['monthSums', 'chunkSums'], 'readwrite')
    const pieces = month.flatMap((sums) => sums.pieces)
    const byPiece = new Map<string, ChunkDay[]>()
    for (const row of rows) byPiece.set(row.piece, [...(byPiece.get(row.piece) ?? []), row])
    await Promise.all([
      change.objectStore('monthSums').put({ totals: month.map(({ total }) => total), pieces }, key),
      ...[...byPiece].map(([piece, of]) => change.objectStore('chunkSums').put(of, [piece, key])),
      change.done,
    ])
    month = []
  }
  for (let day = 0; day < dayCount; day += 2) {
    const both = [eventsOf(day), eventsOf(day + 1)]
    const block = packBlock(both.flat())
    repetitions += block.at.length
    await database.add('blocks', block)
    for (const events of both) {
      const sums = sumDay(dayOf(events[0]?.atEpochMs ?? 0), events.filter(isPlayed))
      const [first] = month
      if (first && monthOf(first.total.day) !== monthOf(sums.total.day)) await flush()
      month.push(sums)
    }
  }
  if (month.length > 0) await flush()
  database.close()
  return repetitions
}

/** So many repetitions are appended to each journal. */
const appends = 300

/**
 * Milliseconds of each append to journals of so many days, one to each in turn, so that whatever else
 * the machine does meets all of them alike.
 */
const append = async (
  journals: readonly { readonly name: string; readonly days: number }[],
): Promise<readonly (readonly number[])[]> => {
  const desks = await Promise.all(
    journals.map(async ({ name, days }) => ({
      storage: await open(name),
      sample: eventsOf(days + 1).find(isRepetition),
      times: [] as number[],
    })),
  )
  for (let i = 0; i < appends; i++)
    for (const { storage, sample, times } of desks) {
      if (!sample) throw new Error('a day without a repetition')
      const event = { ...sample, id: eventId(`new ${i}`), atEpochMs: sample.atEpochMs + i * 6_000 }
      const start = performance.now()
      const stored = await storage.append(event)
      times.push(performance.now() - start)
      if (!stored.ok) throw new Error(stored.reason.kind)
    }
  for (const { storage } of desks) storage.close()
  return desks.map(({ times }) => times)
}

const isRepetition = (event: JournalEvent): event is RepetitionRecorded =>
  event.kind === 'repetition'

/** What a page that shows the review holds in memory. */
let held: unknown

/** From the database that is opened to the figures of all time, milliseconds. */
const openReview = async (name: string): Promise<{ ms: number; repetitions: number }> => {
  const start = performance.now()
  const storage = await open(name)
  const sums = await storage.sums()
  if (!sums.ok) throw new Error(sums.reason.kind)
  const review = reviewAllTime(sums.value.totals, sums.value.pieces)
  const ms = performance.now() - start
  held = [sums, review]
  storage.close()
  return { ms, repetitions: review.repetitions }
}

Object.assign(window, { keptJournal: { fill, append, openReview, held: () => held } })

declare global {
  interface Window {
    readonly keptJournal: {
      readonly fill: typeof fill
      readonly append: typeof append
      readonly openReview: typeof openReview
    }
  }
}
