import { parseJournal, type ReadJournal } from '@/journal/lines'
import { explainJournalProblem } from '@/journal/decode'
import { mergeJournals } from '@/journal/merge'
import { previewImport } from '@/journal/previewImport'
import { sumDays } from '@/journal/sumDays'
import { formatRepetitionTable } from '@/journal/table'
import { ok, type Result } from '@/music/result'
import { loadText } from './files'
import { checkNames, choiceOf, wordOf, type Options } from './options'
import { figuresOf } from './reviewFigures'
import { describePreview, describeReview } from './reviewText'
import type { Answer } from './verb'
import { daysOf } from './zone'

const known = ['journal', 'import', 'zone', 'as']

/**
 * `review --journal FILE`: the figures of the review, by the days of `--zone`; `--as table` the
 * repetitions as comma-separated values; with `--import FILE` what that file would bring.
 */
export const review = (options: Options): Result<Answer, string> => {
  const names = checkNames(options, known)
  const as = names.ok ? choiceOf(options, 'as', ['figures', 'table']) : names
  if (!as.ok) return as
  const days = daysOf(options)
  if (!days.ok) return days
  const journal = loadJournal(options, 'journal')
  if (!journal.ok) return journal
  if (options.has('import')) {
    const other = loadJournal(options, 'import')
    if (!other.ok) return other
    const ids = new Set(journal.value.events.map(({ id }) => id))
    const preview = previewImport(other.value, (id) => ids.has(id), days.value)
    return ok({ json: preview, text: () => describePreview(preview) })
  }
  if (as.value === 'table') {
    const table = formatRepetitionTable(journal.value.events, days.value)
    return ok({ json: { table }, text: () => table.trimEnd() })
  }
  const figures = figuresOf(sumDays(mergeJournals(journal.value.events), days.value))
  const unread = journal.value.unread.map(({ line, reason }) => ({
    line,
    why: explainJournalProblem(reason),
  }))
  return ok({ json: { ...figures, unread }, text: () => describeReview(figures, unread) })
}

const loadJournal = (options: Options, name: string): Result<ReadJournal, string> => {
  const path = wordOf(options, name)
  const text = path.ok ? loadText(path.value) : path
  return text.ok ? ok(parseJournal(text.value)) : text
}
