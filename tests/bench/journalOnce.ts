/**
 * Packs and sums ten years of practice, day by day as the database does, and opens the review from the
 * kept sums, in a process of its own, so that its memory is its own. The database itself is not here:
 * in place of its reading and writing stands the structured clone of Node, from and to memory outside
 * the heap, which a browser does too.
 */
import { deserialize, serialize } from 'node:v8'
import { packBlock, summedEvents, type PackedBlock } from '@/journal/block'
import { monthOf } from '@/journal/day'
import { isPlayed, sumDay, sumDays } from '@/journal/sumDays'
import type { ChunkDay, DayTotal, PieceDay } from '@/journal/sums'
import { reviewAllTime } from '@/review/allTime'
import { reviewPiece } from '@/review/pieceReview'
import { dayCount, dayOf, eventsOf } from './tenYears'

/** Two days make about a thousand events: one block. */
const daysABlock = 2

let repetitions = 0
let [packMs, sumMs, countMs, bytes, peak] = [0, 0, 0, 0, 0]
/** Processor time, so that what else the machine does counts less. */
const timed = <T>(add: (ms: number) => void, work: () => T): T => {
  const start = process.cpuUsage()
  const value = work()
  const { user, system } = process.cpuUsage(start)
  add((user + system) / 1000)
  return value
}
interface Month {
  readonly totals: DayTotal[]
  readonly pieces: PieceDay[]
}
/** What the database would hold. */
const months = new Map<string, Buffer>()
const chunkMonths = new Map<string, Buffer>()
const put = <T>(store: Map<string, Buffer>, name: string, change: (known: T | undefined) => T) => {
  const known = store.get(name)
  store.set(name, serialize(change(known && (deserialize(known) as T))))
}

for (let day = 0; day < dayCount; day += daysABlock) {
  const days = [eventsOf(day), eventsOf(day + 1)]
  const block = timed(
    (ms) => (packMs += ms),
    () => packBlock(days.flat()),
  )
  repetitions += block.at.length
  const stored = serialize(block)
  bytes += stored.length
  const sums = timed(
    (ms) => (sumMs += ms),
    () => days.map((events) => sumDay(dayOf(events[0]?.atEpochMs ?? 0), events.filter(isPlayed))),
  )
  for (const { total, pieces, chunks } of sums) {
    const month = monthOf(total.day)
    put<Month>(months, month, (known = { totals: [], pieces: [] }) => ({
      totals: [...known.totals, total],
      pieces: [...known.pieces, ...pieces],
    }))
    for (const { piece } of pieces)
      put<ChunkDay[]>(chunkMonths, `${piece} ${month}`, (known = []) => [
        ...known,
        ...chunks.filter((row) => row.piece === piece),
      ])
  }
  timed(
    (ms) => (countMs += ms),
    () => {
      const summed = summedEvents(deserialize(stored) as PackedBlock)
      if (!summed.ok) throw new Error(summed.reason.kind)
      return sumDays(summed.value, dayOf)
    },
  )
  if (day % 100 === 0) peak = Math.max(peak, process.memoryUsage().heapUsed)
}

globalThis.gc?.()
const before = process.memoryUsage().heapUsed
let [openMs, pieceMs] = [0, 0]
const review = timed(
  (ms) => (openMs = ms),
  () => {
    const rows = [...months.values()].map((month) => deserialize(month) as Month)
    return reviewAllTime(
      rows.flatMap(({ totals }) => totals),
      rows.flatMap(({ pieces }) => pieces),
    )
  },
)
const openBytes = process.memoryUsage().heapUsed - before
if (review.repetitions !== repetitions) throw new Error(`${review.repetitions} of ${repetitions}`)

const [longest] = review.pieces.toSorted((a, b) => b.repetitions - a.repetitions)
const piece = timed(
  (ms) => (pieceMs = ms),
  () =>
    reviewPiece(
      [...chunkMonths]
        .filter(([name]) => name.startsWith(longest?.piece ?? ''))
        .flatMap(([, month]) => deserialize(month) as ChunkDay[]),
    ),
)
if (piece.repetitions !== longest?.repetitions) throw new Error('the piece does not add up')

console.log(
  JSON.stringify({
    repetitions,
    packMs,
    sumMs,
    countMs,
    openMs,
    pieceMs,
    bytes: bytes / repetitions,
    peakMb: peak / 1e6,
    openMb: openBytes / 1e6,
  }),
)
