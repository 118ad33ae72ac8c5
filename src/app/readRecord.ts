import type { DayOf } from '@/journal/day'
import { explainJournalProblem } from '@/journal/decode'
import type { EventId } from '@/journal/ids'
import { parseJournal, type ReadJournal } from '@/journal/lines'
import { previewImport, type ImportPreview } from '@/journal/previewImport'
import { failed, ok, type Result } from '@/music/result'
import { recordsText } from '@/text/records'
import type { ChosenFile } from './library'

/** A text larger than this cannot be had in one piece in every browser. */
const largestRecord = 400_000_000

/** Lines read in one go, some 20 ms of work; between them the page can breathe. */
const linesAtOnce = 400

/**
 * Reads the file of a record in parts. `progress` is told the share that is read, and says whether to
 * go on. A file of which no line is a record is refused with the reason of its first line.
 */
export const readRecord = async (
  file: ChosenFile,
  progress: (done: number) => boolean,
): Promise<Result<ReadJournal, string>> => {
  const { problems } = recordsText.incoming
  if (file.size > largestRecord) return failed(problems.tooLarge)
  const text = decodeUtf8(await file.read())
  if (text === undefined) return failed(problems.noText)
  const lines = text.split('\n')
  const events: ReadJournal['events'][number][] = []
  const pieces: ReadJournal['pieces'][number][] = []
  const unread: ReadJournal['unread'][number][] = []
  for (let begin = 0; begin < lines.length; begin += linesAtOnce) {
    const part = parseJournal(lines.slice(begin, begin + linesAtOnce).join('\n'))
    for (const event of part.events) events.push(event)
    pieces.push(...part.pieces)
    for (const each of part.unread) unread.push({ ...each, line: each.line + begin })
    if (!progress(Math.min(1, (begin + linesAtOnce) / lines.length))) break
    await new Promise((resolve) => setTimeout(resolve))
  }
  const [first] = unread
  if (events.length + pieces.length > 0) return ok({ events, pieces, unread })
  return failed(
    first ? problems.noRecord(first.line, explainJournalProblem(first.reason)) : problems.empty,
  )
}

export const previewOf = (
  read: Pick<ReadJournal, 'events' | 'unread'>,
  known: ReadonlySet<EventId>,
  dayOf: DayOf,
): ImportPreview => previewImport(read, (id) => known.has(id), dayOf)

const decodeUtf8 = (bytes: Uint8Array): string | undefined => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    // Told to the person by the caller.
    return undefined
  }
}
