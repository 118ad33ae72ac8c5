import type { Day, DayOf } from '@/journal/day'
import { isCounted } from '@/journal/flawCounts'
import { groupBy } from '@/journal/groupBy'
import type {
  JournalEvent,
  OverruledRecorded,
  RecordedFlaw,
  RepetitionRecorded,
} from '@/journal/journal'
import { compareEvents } from '@/journal/merge'
import type { DrillSum } from '@/journal/sums'
import type { RecordedOverrule } from '@/journal/words'
import type { ChunkId, PieceId } from '@/music/units'
import type { ChunkStanding } from './chunkStates'
import { has, isAt, isWithin, kindAsked, type Asked, type Known } from './asked'

/** A repetition with what stands around it. */
export interface Listed {
  readonly repetition: RepetitionRecorded
  readonly day: Day
  /** The first of its chunk on its day. */
  readonly isCold: boolean
  /** How its drill was begun, where that is of the same day. */
  readonly drill?: DrillSum
  /** What the person decided otherwise after it. */
  readonly overruled: readonly RecordedOverrule[]
}

export interface ListedDay {
  readonly day: Day
  /** The last played first. */
  readonly repetitions: readonly Listed[]
  /** Decisions as asked for, in drills in which nothing was played. */
  readonly unplayed: number
}

/** Those asked for among the events of whole days, the last first; a day may have none. */
export const listRepetitions = (
  events: readonly JournalEvent[],
  dayOf: DayOf,
  asked: Asked,
  known: Known,
): readonly ListedDay[] => {
  const sorted = events.toSorted(compareEvents)
  return [...groupBy(sorted, ({ atEpochMs }) => dayOf(atEpochMs))]
    .filter(([day]) => isWithin(asked, day))
    .map(([day, of]) => {
      const { after, loose } = decisionsIn(of)
      const listed = list(day, of, after)
      const repetitions = chosenIn(day, of, listed, asked, known).filter((each) =>
        isAsked(asked, each, known),
      )
      return {
        day,
        repetitions: repetitions.toReversed(),
        unplayed: loose.filter(({ what }) => what === asked.overruled).length,
      }
    })
    .toReversed()
}

const list = (
  day: Day,
  events: readonly JournalEvent[],
  after: Decisions['after'],
): readonly Listed[] => {
  const played = new Set<string>()
  const drills = new Map<string, DrillSum>()
  return events.flatMap((event): Listed[] => {
    if (event.kind === 'drillBegun') {
      const { place, form, time, goalTempo } = event
      drills.set(event.drill, { place, form, time, goalTempo })
    }
    if (event.kind !== 'repetition') return []
    const isCold = !played.has(event.chunk)
    played.add(event.chunk)
    const drill = drills.get(event.drill)
    const overruled = after.get(event.id) ?? []
    return [{ repetition: event, day, isCold, ...(drill ? { drill } : {}), overruled }]
  })
}

/** What is asked for by its place among the others of its day. */
const chosenIn = (
  day: Day,
  events: readonly JournalEvent[],
  listed: readonly Listed[],
  asked: Asked,
  { standings }: Known,
): readonly Listed[] => {
  if (asked.streak) return streakIn(listed, asked)
  if (asked.state === undefined) return listed
  const settled = standings
    .filter((standing) => standing.day === day && standing.state === asked.state)
    .flatMap((standing) => settling(standing, events, listed) ?? [])
  return listed.filter((each) => settled.includes(each))
}

/**
 * The repetition that made a chunk what it is: the last of the streak, the cold one that confirmed it or
 * failed; of what is only practised, the last one played.
 */
const settling = (
  standing: ChunkStanding,
  events: readonly JournalEvent[],
  listed: readonly Listed[],
): Listed | undefined => {
  const of = listed.filter(({ repetition }) => isOf(standing, repetition))
  switch (standing.state) {
    case 'kept':
    case 'slipped':
      return of[0]
    case 'practised':
      return of.at(-1)
    case 'secure': {
      const met = events.findLast((event) => event.kind === 'secure' && isOf(standing, event))
      return of.findLast(({ repetition }) => !met || compareEvents(repetition, met) < 0)
    }
  }
}

/** The most clean repetitions in a row of one chunk. */
const streakIn = (
  listed: readonly Listed[],
  { piece, chunk }: Pick<Asked, 'piece' | 'chunk'>,
): readonly Listed[] => {
  const of = listed.filter(({ repetition: at }) => has(piece, at.piece) && has(chunk, at.chunk))
  return [...groupBy(of, ({ repetition: at }) => `${at.piece} ${at.chunk}`).values()]
    .flatMap(streaksOf)
    .reduce((longest, streak) => (streak.length >= longest.length ? streak : longest), [])
}

const streaksOf = (ofChunk: readonly Listed[]): readonly (readonly Listed[])[] => {
  const streaks: Listed[][] = []
  let streak: Listed[] = []
  for (const each of ofChunk) {
    if (each.repetition.verdict !== 'clean') streak = []
    else if (streak.push(each) === 1) streaks.push(streak)
  }
  return streaks
}

interface Decisions {
  /** By the repetition of the drill that went before, or, at its beginning, the one that followed. */
  readonly after: ReadonlyMap<string, readonly RecordedOverrule[]>
  readonly loose: readonly OverruledRecorded[]
}

const decisionsIn = (sorted: readonly JournalEvent[]): Decisions => {
  const drills = groupBy(
    sorted.filter((event) => event.kind === 'repetition'),
    ({ drill }) => drill,
  )
  const after = new Map<string, readonly RecordedOverrule[]>()
  const loose: OverruledRecorded[] = []
  for (const event of sorted) {
    if (event.kind !== 'overruled') continue
    const of = drills.get(event.drill)
    const nearest = of?.findLast((each) => compareEvents(each, event) < 0) ?? of?.[0]
    if (nearest) after.set(nearest.id, [...(after.get(nearest.id) ?? []), event.what])
    else loose.push(event)
  }
  return { after, loose }
}

const isAsked = (asked: Asked, { repetition, overruled }: Listed, known: Known): boolean => {
  const { piece, chunk, verdict, ended, rung, flaw, note, bar, written, cold } = asked
  const { atEpochMs, flaws } = repetition
  const asksFlaw = [flaw, note, bar, written].some((each) => each !== undefined)
  return (
    has(piece, repetition.piece) &&
    has(chunk, repetition.chunk) &&
    has(verdict, repetition.verdict) &&
    (!ended || repetition.verdict !== 'brokenOff') &&
    has(rung, repetition.rung) &&
    (!asksFlaw || flaws.some((each) => isAskedFlaw(asked, repetition, each, known))) &&
    (!cold ||
      known.checks.some((check) => isOf(check, repetition) && check.atEpochMs === atEpochMs)) &&
    (asked.overruled === undefined || overruled.includes(asked.overruled))
  )
}

interface Placed {
  readonly piece: PieceId
  readonly chunk: ChunkId
}

const isOf = (a: Placed, b: Placed): boolean => a.piece === b.piece && a.chunk === b.chunk

const isAskedFlaw = (
  asked: Asked,
  { chunk }: RepetitionRecorded,
  each: RecordedFlaw,
  known: Known,
): boolean => {
  return (
    isCounted(each) &&
    has(kindAsked(asked), each.kind) &&
    has(asked.written, each.written) &&
    has(asked.played, each.played) &&
    isAt(asked, chunk, each, known)
  )
}
