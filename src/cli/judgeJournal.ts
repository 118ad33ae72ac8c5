import type { RepetitionRecorded } from '@/journal/journal'
import { parseJournal, type ReadJournal } from '@/journal/lines'
import { decodeTake } from '@/journal/take'
import type { JudgeSettings } from '@/judge/judge'
import { replayTake } from '@/judge/replay'
import type { Verdict } from '@/judge/repetition'
import type { Score } from '@/music/music'
import { chunkAt, type Place } from '@/music/place'
import { ok, type Result } from '@/music/result'
import { ms, quarterMs } from '@/music/units'
import { loadPiece, loadText } from './files'
import { wordOf, type Options } from './options'
import type { Answer } from './verb'

/** A recorded repetition, judged again by this version's judge. */
interface JudgedAgain {
  readonly id: string
  readonly atEpochMs: number
  readonly recorded: Verdict
  /** `undefined` when the take holds no single repetition any more. */
  readonly judged: Verdict | undefined
  /** Kinds and places of the flaws: 'wrong@2 hesitation@4'. */
  readonly recordedFlaws: string
  readonly judgedFlaws: string
}

/**
 * `judge --journal FILE --piece FILE`: judges the stored takes of the piece again, each by the
 * settings that it was judged by, and says where this judge differs from the record.
 */
export const judgeJournal = (options: Options): Result<Answer, string> => {
  const journalPath = wordOf(options, 'journal')
  const text = journalPath.ok ? loadText(journalPath.value) : journalPath
  if (!text.ok) return text
  const piecePath = wordOf(options, 'piece')
  const piece = piecePath.ok ? loadPiece(piecePath.value) : piecePath
  if (!piece.ok) return piece
  const journal = parseJournal(text.value)
  const { score } = piece.value
  const repetitions = journal.events.filter((event) => event.kind === 'repetition')
  const mine = repetitions.filter((event) => event.piece === score.id)
  const places = placesOf(journal)
  const again = mine.map((event) => judgeAgain(event, places.get(event.drill), score))
  const different = again.filter((each) => !isSame(each))
  const sums = {
    same: again.length - different.length,
    different: different.length,
    otherPieces: repetitions.length - mine.length,
    unread: journal.unread.length,
  }
  return ok({
    json: { repetitions: again.map((each) => ({ ...each, judged: each.judged ?? null })), ...sums },
    text: () => describe(different, sums),
  })
}

const placesOf = ({ events }: ReadJournal): ReadonlyMap<string, Place> =>
  new Map(
    events.flatMap((event) =>
      event.kind === 'drillBegun' ? [[event.drill, event.place] as const] : [],
    ),
  )

const judgeAgain = (
  event: RepetitionRecorded,
  place: Place | undefined,
  score: Score,
): JudgedAgain => {
  const chunk = place && chunkAt(score, place)
  const take = decodeTake(event.take, ms(0))
  const judged =
    chunk && take.ok ? replayTake(chunk, settingsOf(event), take.value).repetitions : []
  const [only, ...others] = judged
  const found = only && others.length === 0 ? only : undefined
  return {
    id: event.id,
    atEpochMs: event.atEpochMs,
    recorded: event.verdict,
    judged: found?.verdict,
    recordedFlaws: describeFlaws(event.flaws),
    judgedFlaws: describeFlaws(found?.flaws ?? []),
  }
}

const settingsOf = (event: RepetitionRecorded): JudgeSettings => ({
  standard: event.standard,
  forgiveBrushed: event.forgiveBrushed,
  quarter: quarterMs(event.rung),
  ...(event.clickMs === undefined ? {} : { click: ms(event.clickMs) }),
})

const describeFlaws = (flaws: readonly { kind: string; onset: number }[]): string =>
  flaws.map(({ kind, onset }) => `${kind}@${onset + 1}`).join(' ')

const isSame = (each: JudgedAgain): boolean =>
  each.recorded === each.judged && each.recordedFlaws === each.judgedFlaws

const describe = (
  different: readonly JudgedAgain[],
  sums: { readonly same: number; readonly otherPieces: number; readonly unread: number },
): string => {
  const lines = different.map((each) => {
    const at = new Date(each.atEpochMs).toISOString().slice(0, 19).replace('T', ' ')
    const was = [each.recorded, each.recordedFlaws].filter(Boolean).join(' ')
    const is = [each.judged ?? 'no single repetition', each.judgedFlaws].filter(Boolean).join(' ')
    return `${at}  recorded: ${was}; this judge: ${is}`
  })
  const left = [
    sums.otherPieces > 0 ? `${sums.otherPieces} of other pieces left out` : '',
    sums.unread > 0 ? `${sums.unread} lines could not be read` : '',
  ].filter(Boolean)
  const total = `${sums.same} judged as recorded, ${different.length} otherwise`
  return [...lines, [total, ...left].join('; ')].join('\n')
}
