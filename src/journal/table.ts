import type { Day, DayOf } from './day'
import { groupBy } from './groupBy'
import type { DrillBegun, JournalEvent, RepetitionRecorded } from './journal'
import { compareEvents } from './merge'

const columns = [
  'id',
  'day',
  'milliseconds since 1970',
  'title',
  'piece',
  'from bar',
  'to bar',
  'hand',
  'form',
  'tempo asked',
  'tempo played',
  'standard',
  'verdict',
  'seconds',
  'flaws',
]

/**
 * The repetitions as a table for a spreadsheet, in the order of time: comma-separated values as
 * RFC 4180 has them, the names of the columns in the first line.
 */
export const formatRepetitionTable = (events: readonly JournalEvent[], dayOf: DayOf): string => {
  const sorted = events.toSorted(compareEvents)
  const drills = groupBy(
    sorted.filter((event) => event.kind === 'drillBegun'),
    ({ drill }) => drill,
  )
  const titles = new Map(
    sorted.flatMap((e) => (e.kind === 'pieceAdded' ? [[e.piece, e.title] as const] : [])),
  )
  const rows = sorted
    .filter((event) => event.kind === 'repetition')

    .map((each) =>
      rowOf(
        each,
        dayOf(each.atEpochMs),
        titles.get(each.piece) ?? '',
        drills.get(each.drill)?.at(-1),
      ),
    )
  return formatTable([columns, ...rows])
}

/** Fields with a comma, a quote or a line end in quotes, a quote in them doubled (RFC 4180, section 2). */
export const formatTable = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(formatField).join(',')}\r\n`).join('')

const formatField = (field: string): string =>
  /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field

const rowOf = (
  repetition: RepetitionRecorded,
  day: Day,
  title: string,
  drill: DrillBegun | undefined,
): readonly string[] => [
  harmless(repetition.id),
  day,
  String(repetition.atEpochMs),
  harmless(title),
  harmless(repetition.piece),
  drill ? String(drill.place.fromBar) : '',
  drill ? String(drill.place.toBar) : '',
  drill?.place.hand ?? '',
  drill?.form ?? '',
  String(repetition.rung),
  String(repetition.figures.tempo ?? ''),
  repetition.standard,
  repetition.verdict,
  String(repetition.tookMs / 1000),
  // 'wrong at 3': the third onset of the chunk.
  repetition.flaws.map(({ kind, onset }) => `${kind} at ${onset + 1}`).join('; '),
]

/** A spreadsheet would run a text that begins like a formula; titles come from files of others. */
const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)
