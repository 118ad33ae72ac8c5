import { tempo, type ChunkId, type Tempo } from '@/music/units'
import type { Day, DayOf } from './day'
import { countPlaces, isCounted } from './flawCounts'
import { groupBy, type Some } from './groupBy'
import type { DrillBegun, JournalEvent, RepetitionRecorded } from './journal'
import { compareEvents } from './merge'
import { practisedMs } from './practised'
import type {
  ChunkDay,
  ColdRepetition,
  DaySums,
  DrillSum,
  Overruled,
  PieceDay,
  RungSum,
  Sum,
} from './sums'
import type { RecordedFlawKind, RecordedOverrule, RecordedVerdict } from './words'
import { isWritten, type Written } from './written'

/** A repetition without what no sum needs. */
type SummedRepetition = Omit<
  RepetitionRecorded,
  'take' | 'figures' | 'standard' | 'forgiveBrushed' | 'clickMs'
>
/** What sums are made of: whole events will do, but for what the person wrote, which is no practice. */
export type Summed = Exclude<JournalEvent, RepetitionRecorded | Written> | SummedRepetition

/** The sums of each day on which something happened, in order; the events may come in any order. */
export const sumDays = (events: readonly (Summed | Written)[], dayOf: DayOf): readonly DaySums[] =>
  [...groupBy(events.filter(isPlayed).toSorted(compareEvents), (e) => dayOf(e.atEpochMs))]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([day, of]) => sumDay(day, of))

export const isPlayed = <E extends Summed | Written>(event: E): event is Exclude<E, Written> =>
  !isWritten(event)

/** The sums of one day from all its events, sorted. */
export const sumDay = (day: Day, events: readonly Summed[]): DaySums => {
  const timed = timeRepetitions(events)
  const ofChunk = groupBy(timed, ({ repetition }) => nameOf(repetition))
  const placed = events.filter((event) => 'chunk' in event)
  const chunks = [...groupBy(placed, nameOf)].map(([name, of]) =>
    sumChunk(day, of, ofChunk.get(name) ?? []),
  )
  return {
    total: {
      day,
      ...sumOf(timed, longestOf(chunks)),
      ...overruledIn(events),
    },
    pieces: sumPieces(day, events, timed, chunks),
    chunks,
  }
}

const nameOf = ({ piece, chunk }: Pick<ChunkEvent, 'piece' | 'chunk'>): string =>
  `${piece} ${chunk}`

/** A repetition and the time that it took with the pause before it. */
interface Timed {
  readonly repetition: SummedRepetition
  readonly ms: number
}

const timeRepetitions = (events: readonly Summed[]): readonly Timed[] => {
  const repetitions = events.filter((event) => event.kind === 'repetition')
  const took = practisedMs(repetitions)
  return repetitions.map((repetition, i) => ({ repetition, ms: took[i] ?? 0 }))
}

type ChunkEvent = Extract<Summed, { readonly chunk: ChunkId }>

const sumChunk = (day: Day, events: Some<ChunkEvent>, timed: readonly Timed[]): ChunkDay => {
  const repetitions = timed.map(({ repetition }) => repetition)
  const [first, last] = [repetitions[0], repetitions.at(-1)]
  const drills = events.filter((event) => event.kind === 'drillBegun')
  const begun = drills.at(-1)
  const secure = events.findLast((event) => event.kind === 'secure')
  const done = events.flatMap((event) =>
    event.kind === 'secure' || event.kind === 'exerciseDone' ? [event.rung] : [],
  )
  return {
    day,
    piece: events[0].piece,
    chunk: events[0].chunk,
    ...sumOf(timed, longestStreak(repetitions)),
    ...(first ? { cold: coldOf(first, drills) } : {}),
    rungs: sumRungs(timed),
    ...(last ? { lastRung: last.rung } : {}),
    ...(secure ? { secureAt: secure.rung } : {}),
    ...(done.length > 0 ? { doneAt: tempo(Math.max(...done)) } : {}),
    ...(begun ? { begun: drillOf(begun) } : {}),
    places: countPlaces(repetitions),
  }
}

const sumPieces = (
  day: Day,
  events: readonly Summed[],
  timed: readonly Timed[],
  chunks: readonly ChunkDay[],
): readonly PieceDay[] => {
  const placed = events.filter((event) => 'piece' in event)
  const ofPiece = groupBy(timed, ({ repetition }) => repetition.piece)
  return [...groupBy(placed, (event) => event.piece)].map(([piece, of]) => {
    const title = of.findLast((event) => event.kind === 'pieceAdded')?.title
    const longest = longestOf(chunks.filter((row) => row.piece === piece))
    return {
      day,
      piece,
      ...sumOf(ofPiece.get(piece) ?? [], longest),
      ...overruledIn(of),
      ...(title === undefined ? {} : { title }),
    }
  })
}

const sumOf = (timed: readonly Timed[], longestStreak: number): Sum => ({
  tally: countVerdicts(timed.map(({ repetition }) => repetition)),
  ms: timed.reduce((total, { ms }) => total + ms, 0),
  longestStreak,
  flaws: countWords<RecordedFlawKind>(
    timed.flatMap(({ repetition }) => repetition.flaws.filter(isCounted).map(({ kind }) => kind)),
  ),
})

const sumRungs = (timed: readonly Timed[]): readonly RungSum[] =>
  [...groupBy(timed, ({ repetition }) => repetition.rung)]
    .toSorted(([a], [b]) => a - b)
    .map(([rung, of]: readonly [Tempo, Some<Timed>]) => ({
      rung,
      tally: countVerdicts(of.map(({ repetition }) => repetition)),
      ms: of.reduce((total, { ms }) => total + ms, 0),
    }))

const coldOf = (
  { atEpochMs, rung, verdict, drill }: SummedRepetition,
  drills: readonly DrillBegun[],
): ColdRepetition => {
  const goalTempo = drills.find((begun) => begun.drill === drill)?.goalTempo
  return { atEpochMs, rung, ...(goalTempo === undefined ? {} : { goalTempo }), verdict }
}

const drillOf = ({ place, form, time, goalTempo }: DrillBegun): DrillSum => ({
  place,
  form,
  time,
  goalTempo,
})

/** How many of each verdict. */
export const countVerdicts = (
  repetitions: readonly { readonly verdict: RecordedVerdict }[],
): Readonly<Record<RecordedVerdict, number>> => {
  const tally = { clean: 0, flawed: 0, brokenOff: 0 }
  for (const { verdict } of repetitions) tally[verdict]++
  return tally
}

/** The most clean repetitions in a row. */
export const longestStreak = (
  repetitions: readonly { readonly verdict: RecordedVerdict }[],
): number => {
  let longest = 0
  let streak = 0
  for (const { verdict } of repetitions) {
    streak = verdict === 'clean' ? streak + 1 : 0
    longest = Math.max(longest, streak)
  }
  return longest
}

const longestOf = (rows: readonly { readonly longestStreak: number }[]): number =>
  rows.reduce((longest, row) => Math.max(longest, row.longestStreak), 0)

const overruledIn = (events: readonly Summed[]): Overruled => ({
  overruled: countWords(events.flatMap((e) => (e.kind === 'overruled' ? [e.what] : []))),
})

const countWords = <W extends RecordedFlawKind | RecordedOverrule>(
  words: readonly W[],
): Readonly<Partial<Record<W, number>>> => {
  const counts: Partial<Record<W, number>> = {}
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1
  return counts
}
