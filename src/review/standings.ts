import type { Day } from '@/journal/day'
import { groupBy } from '@/journal/groupBy'
import type { ChunkDay, PieceDay, Tally } from '@/journal/sums'
import type { PieceId } from '@/music/units'
import type { StateCounts } from './coldFigures'
import { isPlayed } from './joinSums'
import { reviewPiece, type ChunkFigures } from './pieceReview'
import { estimateShare, type Estimate } from './proportion'

/** What is kept of one piece of a student, so that many stand side by side without reading a record. */
export interface PieceStanding {
  readonly piece: PieceId
  readonly title?: string
  /** In order; days on which nothing was played are left out. */
  readonly days: readonly DayCount[]
  /** Absent where no chunk as written tells its goal. */
  readonly tempo?: TempoReached
  readonly chunks: StateCounts
}

export interface DayCount {
  readonly day: Day
  readonly tally: Tally
  readonly ms: number
}

/** The last tempo as a part of the goal, over the chunks as written. */
export interface TempoReached {
  readonly least: number
  readonly middle: number
  readonly most: number
}

/** Each piece that was played. `chunks` are the days of its chunks, of all pieces or of each. */
export const standPieces = (
  days: readonly PieceDay[],
  chunks: readonly ChunkDay[],
): readonly PieceStanding[] => {
  const rows = groupBy(chunks, ({ piece }) => piece)
  return [...groupBy(days, ({ piece }) => piece)].flatMap(([piece, of]): PieceStanding[] => {
    const played = of.filter(isPlayed)
    if (played.length === 0) return []
    const title = of.findLast((row) => row.title !== undefined)?.title
    const review = reviewPiece(rows.get(piece) ?? [])
    const tempo = tempoReached(review.chunks)
    return [
      {
        piece,
        ...(title === undefined ? {} : { title }),
        days: played.map(({ day, tally, ms }) => ({ day, tally, ms })),
        ...(tempo ? { tempo } : {}),
        chunks: review.states,
      },
    ]
  })
}

const tempoReached = (chunks: readonly ChunkFigures[]): TempoReached | undefined => {
  const parts = chunks
    .flatMap(({ drill, days }) => {
      const last = days.at(-1)?.lastRung
      return drill?.form === 'asWritten' && last !== undefined ? [last / drill.goalTempo] : []
    })
    .toSorted((a, b) => a - b)
  const [least, most] = [parts[0], parts.at(-1)]
  const middle = parts[Math.floor((parts.length - 1) / 2)]
  if (least === undefined || middle === undefined || most === undefined) return undefined
  return { least, middle, most }
}

/** A student's piece since some day, as it stands in the table. */
export interface PieceSince extends Omit<PieceStanding, 'days'> {
  readonly tally: Tally
  /** Absent while nothing was clean or flawed. */
  readonly share?: Estimate
  readonly repetitions: number
  readonly minutes: number
  readonly days: number
  readonly lastDay: Day
}

/** `undefined` where it was not played since then. */
export const standingSince = (
  { days, ...standing }: PieceStanding,
  since: Day | undefined,
): PieceSince | undefined => {
  const counted = since === undefined ? days : days.filter(({ day }) => day >= since)
  const lastDay = counted.at(-1)?.day
  if (lastDay === undefined) return undefined
  const tally = { clean: 0, flawed: 0, brokenOff: 0 }
  let ms = 0
  for (const day of counted) {
    tally.clean += day.tally.clean
    tally.flawed += day.tally.flawed
    tally.brokenOff += day.tally.brokenOff
    ms += day.ms
  }
  const share = estimateShare(tally.clean, tally.clean + tally.flawed)
  return {
    ...standing,
    tally,
    ...(share ? { share } : {}),
    repetitions: tally.clean + tally.flawed + tally.brokenOff,
    minutes: ms / 60_000,
    days: counted.length,
    lastDay,
  }
}
