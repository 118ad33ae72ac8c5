import { failed, ok, type Result } from '@/music/result'
import { storageText } from '@/text/storage'
import { decodeEvent, type JournalProblem } from './decode'
import type { JournalEvent } from './journal'
import { decodePieceLine, isPieceLine, type PieceLine } from './pieceLines'

/** A line that could not be read; its text is kept, so that nothing is lost. */
export interface UnreadLine {
  /** Counted from 1. */
  readonly line: number
  readonly text: string
  readonly reason: JournalProblem
}

export interface ReadJournal {
  readonly events: readonly JournalEvent[]
  /** What is kept of pieces beside the events. */
  readonly pieces: readonly PieceLine[]
  readonly unread: readonly UnreadLine[]
}

/** One event a line as JSON (JSON Lines: UTF-8, each line ended by a line feed). */
export const formatJournal = (events: readonly JournalEvent[]): string =>
  events.map((event) => `${JSON.stringify(event)}\n`).join('')

/** The inverse. Empty lines and a byte order mark are passed over, whatever else cannot be read is told. */
export const parseJournal = (text: string): ReadJournal => {
  const events: JournalEvent[] = []
  const pieces: PieceLine[] = []
  const unread: UnreadLine[] = []
  for (const [i, line] of text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .entries()) {
    if (line.trim() === '') continue
    const read = parseLine(line)
    if (!read.ok) unread.push({ line: i + 1, text: line, reason: read.reason })
    else if ('session' in read.value) events.push(read.value)
    else pieces.push(read.value)
  }
  return { events, pieces, unread }
}

const parseLine = (line: string): Result<JournalEvent | PieceLine, JournalProblem> => {
  const json = parseJson(line)
  if (!json.ok) return json
  return isPieceLine(json.value) ? decodePieceLine(json.value) : decodeEvent(json.value)
}

const parseJson = (text: string): Result<unknown, JournalProblem> => {
  try {
    return ok(JSON.parse(text))
  } catch (error) {
    return failed({
      kind: 'notJson',
      message: error instanceof Error ? error.message : storageText.shapes.unreadable,
    })
  }
}
