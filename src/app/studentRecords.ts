import { groupBy } from '@/journal/groupBy'
import type { SessionId, StudentId } from '@/journal/ids'
import type { JournalEvent } from '@/journal/journal'
import type { ChunkDay } from '@/journal/sums'
import { ok, type Result } from '@/music/result'
import { standPieces, type PieceStanding } from '@/review/standings'
import { studentsText } from '@/text/students'
import type { StoragePort, StudentListing } from './ports'
import { longestName } from './settings'

/** A student whose record stands beside one's own; it is read, and only a newer file adds to it. */
export interface Student {
  readonly id: StudentId
  readonly name: string
  readonly fileName: string
  readonly takenAtEpochMs: number
  readonly pieces: readonly PieceStanding[]
}

export const studentOf = (listing: StudentListing, dayRule: string): Student => {
  const { id, name, fileName, takenAtEpochMs } = listing
  return { id, name, fileName, takenAtEpochMs, pieces: keptIn(listing, dayRule) ?? [] }
}

/** What each piece of a record comes to, from its kept sums. */
export const standingsOf = async (
  record: Pick<StoragePort, 'sums' | 'chunkDays'>,
): Promise<Result<readonly PieceStanding[], string>> => {
  const sums = await record.sums()
  if (!sums.ok) return sums
  const { pieces } = sums.value
  const chunks: ChunkDay[] = []
  for (const piece of new Set(pieces.map((row) => row.piece))) {
    const days = await record.chunkDays(piece)
    if (!days.ok) return days
    for (const day of days.value) chunks.push(day)
  }
  return ok(standPieces(pieces, chunks))
}

/** Raised when what is kept gets another shape: it is then counted anew from the record. */
const keptVersion = 1

interface Kept {
  readonly version: typeof keptVersion
  /** By what time zone the days were told. */
  readonly dayRule: string
  readonly pieces: readonly PieceStanding[]
}

export const keep = (dayRule: string, pieces: readonly PieceStanding[]): Kept => ({
  version: keptVersion,
  dayRule,
  pieces,
})

/** `undefined` where nothing was counted, or by another rule. */
export const keptIn = (
  { kept }: Pick<StudentListing, 'kept'>,
  dayRule: string,
): readonly PieceStanding[] | undefined =>
  isKept(kept) && kept.dayRule === dayRule ? kept.pieces : undefined

/** Written by `keep` of this very version. */
const isKept = (kept: unknown): kept is Kept =>
  typeof kept === 'object' && kept !== null && 'version' in kept && kept.version === keptVersion

export const sessionsOf = (events: readonly JournalEvent[]): readonly SessionId[] => [
  ...new Set(events.map(({ session }) => session)),
]

/** The first event of each session. */
export const firstsOf = (events: readonly JournalEvent[]): readonly JournalEvent[] =>
  [...groupBy(events, ({ session }) => session).values()].map(([first]) => first)

/** Whose older record shares most sessions with these events. */
export const knownBy = (
  listings: readonly Pick<StudentListing, 'id' | 'sessions'>[],
  events: readonly JournalEvent[],
): StudentId | undefined => {
  const sessions = new Set(sessionsOf(events))
  const shared = listings
    .map(({ id, sessions: of }) => ({ id, of: of.filter((each) => sessions.has(each)).length }))
    .toSorted((a, b) => b.of - a.of)
  return shared[0] && shared[0].of > 0 ? shared[0].id : undefined
}

/** The name as typed, in one line; where nothing was typed the other one. */
export const cleanName = (typed: string, otherwise: string): string => {
  const name = typed.replace(/\s+/g, ' ').trim().slice(0, longestName)
  return name === '' ? otherwise : name
}

/** 'ada-week_3.jsonl' -> 'ada week 3'; a file under the name that the program gave it tells nobody's. */
export const nameFrom = (fileName: string, place: number): string => {
  const bare = fileName.replace(/\.[^.]*$/, '')
  const words = /^passagework\b/i.test(bare) ? '' : bare.replace(/[-_.]+/g, ' ')
  return cleanName(words, studentsText.nameless(place))
}
