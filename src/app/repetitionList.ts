import type { Day } from '@/journal/day'
import { spanOf } from '@/journal/daySpan'
import type { JournalEvent } from '@/journal/journal'
import type { ChunkDay } from '@/journal/sums'
import type { Score } from '@/music/music'
import { ok, type Result } from '@/music/result'
import type { PieceId } from '@/music/units'
import { daysOf, needsChunks, type Asked, type AskedSums, type Known } from '@/review/asked'
import { carryEvents, type Carried } from '@/review/carryOver'
import { coldChecksOfAll, standingsOfAll } from '@/review/coldFigures'
import { barsIn, locateIn } from '@/review/flawBars'
import { listRepetitions, type ListedDay } from '@/review/repetitions'
import { readChunkDays } from './chunkRecord'
import { readAllChunkDays } from './reviewing'
import { openListed, type ReviewedRecord, type Shelf } from './reviewedRecord'

/** The repetitions behind a figure of the review, day by day, the last first. */
export interface RepetitionList {
  /** Of the piece asked for, where its file is at hand. */
  readonly score?: Score
  /** The title of each piece, as it stands here or was added last. */
  readonly titles: ReadonlyMap<PieceId, string>
  /** Where each chunk stands and how it was drilled last, as far as the sums were read. */
  readonly chunks: readonly ChunkDay[]
  /** The days on which there may be some. */
  readonly days: readonly Day[]
  /** Reads on from a day of the list until there is a page full. */
  readonly read: (from: number) => Promise<Result<ReadOn, string>>
}

export interface ReadOn {
  /** Those with something asked for. */
  readonly days: readonly ListedDay[]
  /** The day of the list to read on from; as many as there are when all is read. */
  readonly next: number
}

/** Some two screens on a desk; a day is never cut. */
const pageful = 40

/** `sitting`: the events of the sitting under way. */
export const openRepetitions = async (
  record: ReviewedRecord,
  shelf: Shelf,
  asked: Asked,
  sitting: () => readonly JournalEvent[],
): Promise<Result<RepetitionList, string>> => {
  const opened = asked.piece === undefined ? undefined : await openListed(shelf, asked.piece)
  const carried = opened?.carried ?? []
  const read = await readSums(record, asked, carried)
  if (!read.ok) return read
  const sums = read.value
  const known = knownOf(opened?.score, sums.chunks)
  const ofDay = async (day: Day): Promise<Result<readonly ListedDay[], string>> => {
    const events = await record.ofTime(spanOf(day, record.dayOf))
    if (!events.ok) return events
    const own =
      asked.piece === undefined ? events.value : carryEvents(events.value, carried, asked.piece)
    return ok(listRepetitions(own, record.dayOf, asked, known))
  }
  const list = {
    ...(opened ? { score: opened.score } : {}),
    titles: titlesOf(shelf, sums),
    chunks: sums.chunks,
  }
  if (asked.session) {
    const days = listRepetitions(sitting(), record.dayOf, asked, known).filter(hasAny)
    const next = days.length
    return ok({ ...list, days: days.map(({ day }) => day), read: async () => ok({ days, next }) })
  }
  const days = daysOf(asked, sums, known)
  return ok({ ...list, days, read: (from) => readOn(days, from, ofDay) })
}

const readOn = async (
  days: readonly Day[],
  from: number,
  ofDay: (day: Day) => Promise<Result<readonly ListedDay[], string>>,
): Promise<Result<ReadOn, string>> => {
  const found: ListedDay[] = []
  let [next, count] = [from, 0]
  for (const day of days.slice(from)) {
    if (count >= pageful) break
    const read = await ofDay(day)
    if (!read.ok) return read
    found.push(...read.value.filter(hasAny))
    count += read.value.reduce((n, { repetitions }) => n + repetitions.length, 0)
    next++
  }
  return ok({ days: found, next })
}

const hasAny = ({ repetitions, unplayed }: ListedDay): boolean =>
  repetitions.length > 0 || unplayed > 0

const readSums = async (
  record: ReviewedRecord,
  asked: Asked,
  carried: readonly Carried[],
): Promise<Result<AskedSums, string>> => {
  const sums = await record.sums()
  if (!sums.ok || !needsChunks(asked)) return sums.ok ? ok({ ...sums.value, chunks: [] }) : sums
  const chunks =
    asked.piece === undefined
      ? await readAllChunkDays(record, sums.value.pieces)
      : await readChunkDays(record, asked.piece, carried)
  return chunks.ok ? ok({ ...sums.value, chunks: chunks.value }) : chunks
}

const knownOf = (score: Score | undefined, chunks: readonly ChunkDay[]): Known => {
  const drills = new Map(chunks.flatMap(({ chunk, begun }) => (begun ? [[chunk, begun]] : [])))
  return {
    locate: score
      ? locateIn(
          score,
          [...drills].map(([chunk, drill]) => ({ chunk, drill })),
        )
      : (_, { notes }) => (notes?.[0] === undefined ? undefined : { note: notes[0] }),
    barOf: score ? barsIn(score) : () => undefined,
    checks: coldChecksOfAll(chunks),
    standings: standingsOfAll(chunks),
  }
}

const titlesOf = (
  shelf: Shelf,
  { pieces }: Pick<AskedSums, 'pieces'>,
): ReadonlyMap<PieceId, string> =>
  new Map([
    ...pieces.flatMap(({ piece, title }) => (title === undefined ? [] : [[piece, title] as const])),
    ...shelf.store.getState().listed.map(({ id, title }) => [id, title] as const),
  ])
