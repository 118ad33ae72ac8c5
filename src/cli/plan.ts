import { explainJournalProblem } from '@/journal/decode'
import { parseDay, type Day } from '@/journal/day'
import { parseJournal } from '@/journal/lines'
import { mergeJournals } from '@/journal/merge'
import { decisionsOf } from '@/journal/notebook'
import { failed, ok, type Result } from '@/music/result'
import { analyse } from '@/plan/analyse'
import { planDay, type DayPlan } from '@/plan/day'
import { honestWord } from '@/plan/honest'
import { layOutPiece, type PieceLayout } from '@/plan/layOut'
import { paceFrom } from '@/plan/pace'
import { planPiece } from '@/plan/plan'
import { layOutRecord } from '@/plan/fromRecord'
import { isBelowFloor, recordOf, type PracticeRecord } from '@/plan/record'
import { spanOf } from '@/plan/span'
import { loadPiece, loadText } from './files'
import { spanOf as handSpanOf } from './finger'
import { checkNames, numberOf, wordOf, type Options } from './options'
import { dayJson, describePlan, pieceJson, type PlannedPiece } from './planText'
import type { Answer } from './verb'
import { daysOf } from './zone'

const known = ['journal', 'minutes', 'day', 'piece', 'zone', 'seed', 'days', 'span']
/** Less than five minutes is no plan, more than ten hours no day. */
const minuteBounds = { from: 5, to: 600 }
const weekBounds = { from: 1, to: 7 }
const seedBounds = { from: 0, to: 2 ** 31, whole: true }

/**
 * `plan --journal FILE --minutes N --day YYYY-MM-DD [--piece FILE,FILE ...]`: today, and for each piece
 * its places with their states, the work left, the weeks, and an honest word. The first piece is the main
 * one. Without files only what was played is known: nothing new is planned, and there are no weeks.
 */
export const plan = (options: Options): Result<Answer, string> => {
  const names = checkNames(options, known)
  if (!names.ok) return names
  const choices = chooseDay(options)
  if (!choices.ok) return choices
  const dayOf = daysOf(options)
  if (!dayOf.ok) return dayOf
  const path = wordOf(options, 'journal')
  const text = path.ok ? loadText(path.value) : path
  if (!text.ok) return text
  const journal = parseJournal(text.value)
  const { day, minutes, seed, daysPerWeek } = choices.value
  // What was played after the day of the plan is no part of it.
  const events = mergeJournals(journal.events).filter(
    ({ atEpochMs }) => dayOf.value(atEpochMs) <= day,
  )
  const record = recordOf(events, dayOf.value)
  const layouts = layOutPieces(options, record)
  if (!layouts.ok) return layouts
  const pace = paceFrom(record, layouts.value)
  const decisions = decisionsOf(events)
  const plans = layouts.value.map((layout) =>
    planPiece(layout, record, pace, decisions.get(layout.piece)),
  )
  const week = { minutesPerDay: minutes, ...(daysPerWeek === undefined ? {} : { daysPerWeek }) }
  const pieces = plans.map((piece): PlannedPiece => ({
    plan: piece,
    ...(options.has('piece')
      ? { span: spanOf(piece, record, pace, day, week), word: honestWord(piece, plans) }
      : {}),
  }))
  const today = planDay({ day, minutes, seed, pieces: plans, lowered: isBelowFloor(record) })
  const unread = journal.unread.map(({ line, reason }) => ({
    line,
    why: explainJournalProblem(reason),
  }))
  return ok({
    json: { ...dayJson(today), pieces: pieces.map(pieceJson), exercises: pace.exercises, unread },
    text: () => describePlan(today, pieces, pace, unread),
  })
}

interface Choices {
  readonly day: DayPlan['day']
  readonly minutes: number
  readonly seed: number
  readonly daysPerWeek: number | undefined
}

const chooseDay = (options: Options): Result<Choices, string> => {
  const word = wordOf(options, 'day')
  if (!word.ok) return word
  const day: Day | undefined = parseDay(word.value)
  if (day === undefined)
    return failed(`--day must be a day such as 2026-05-01, not “${word.value}”.`)
  if (!options.has('minutes')) return failed('--minutes is missing.')
  const minutes = numberOf(options, 'minutes', minuteBounds)
  if (!minutes.ok) return minutes
  const seed = numberOf(options, 'seed', seedBounds)
  if (!seed.ok) return seed
  const days = numberOf(options, 'days', weekBounds)
  if (!days.ok) return days
  return ok({ day, minutes: minutes.value ?? 0, seed: seed.value ?? 0, daysPerWeek: days.value })
}

/** The pieces in the files; without files what the journal alone tells of its pieces. */
const layOutPieces = (
  options: Options,
  record: PracticeRecord,
): Result<readonly PieceLayout[], string> => {
  if (!options.has('piece')) return ok(layOutRecord(record))
  const paths = wordOf(options, 'piece')
  if (!paths.ok) return paths
  const span = handSpanOf(options)
  if (!span.ok) return span
  const layouts: PieceLayout[] = []
  for (const path of paths.value.split(',')) {
    const piece = loadPiece(path)
    if (!piece.ok) return piece
    const { score } = piece.value
    const layout = layOutPiece(score, analyse(score, undefined, span.value))
    if (!layouts.some((other) => other.piece === layout.piece)) layouts.push(layout)
  }
  return ok(layouts)
}
