import type { RepetitionList } from '@/app/repetitionList'
import type { RecordedVerdict } from '@/journal/words'
import type { Score } from '@/music/music'
import type { ChunkId, Key, Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { Located } from '@/review/flawBars'
import type { ChunkFigures } from '@/review/pieceReview'
import { flawsText } from '@/text/flaws'
import { repetitionsText } from '@/text/repetitions'
import { dateWords } from '@/text/dates'
import { overruleWords } from './Decisions'
import { chunkWords, keyWords, locatedWords, tempoWords } from './reviewWords'
import { describePlace } from './words'

/** The words of the list of repetitions. */

export const verdictWords: Readonly<Record<RecordedVerdict, string>> = repetitionsText.verdicts

/** One thing that was asked for, and what is asked for without it. */
export interface Condition {
  readonly words: string
  readonly without: Asked
}

/** What was asked for, one thing after the other, in words. */
export const conditionsOf = (asked: Asked, list: RepetitionList): readonly Condition[] => {
  const { score } = list
  const { session, piece, chunk, verdict, ended, rung, flaw, note, until, bar, written } = asked
  const { cold, state, streak, overruled } = asked
  const without = (...names: readonly (keyof Asked)[]): Asked =>
    Object.fromEntries(
      Object.entries(asked).filter(([name]) => !names.some((each) => each === name)),
    )
  const words = repetitionsText.conditions
  const all: readonly (readonly [string | undefined, readonly (keyof Asked)[]])[] = [
    [session && words.session, ['session']],
    // Chunks and notes are of a piece.
    [
      piece && (list.titles.get(piece) ?? words.piece),
      ['piece', 'chunk', 'note', 'until', 'bar', 'flaw'],
    ],
    [chunk && chunkWords(figuresOf(chunk, list), score), ['chunk']],
    [daysWords(asked), ['from', 'to']],
    [verdict && verdictWords[verdict], ['verdict']],
    [ended && words.ended, ['ended']],
    [rung && words.rung(rungWords(rung, chunk, list)), ['rung']],
    [flaw && flawsText.inSentence[flaw], ['flaw']],
    [note && noteWords({ note, ...(until ? { until } : {}) }, score), ['note', 'until']],
    [bar === undefined ? undefined : barWords(bar, score), ['bar']],
    [
      written === undefined ? undefined : keysWords(written, asked.played, score),
      ['written', 'played'],
    ],
    [cold && words.cold, ['cold']],
    [state && words.made[state], ['state']],
    [streak && words.streak, ['streak']],
    [overruled && words.decided(overruleWords[overruled]), ['overruled']],
  ]
  return all.flatMap(([told, names]) =>
    told === undefined ? [] : [{ words: told, without: without(...names) }],
  )
}

/** What `chunkWords` needs of a chunk, from the sums that the list has read. */
export const figuresOf = (
  chunk: ChunkId,
  { chunks }: RepetitionList,
): Pick<ChunkFigures, 'drill'> => {
  const drill = chunks.findLast((row) => row.chunk === chunk && row.begun)?.begun
  return drill ? { drill } : {}
}

const daysWords = ({ from, to }: Asked): string | undefined => {
  const words = repetitionsText.conditions
  if (from !== undefined && from === to) return words.day(dateWords(from))
  if (from !== undefined && to !== undefined) return words.days(dateWords(from), dateWords(to))
  if (from !== undefined) return words.from(dateWords(from))
  return to === undefined ? undefined : words.until(dateWords(to))
}

const noteWords = ({ note, until }: Located, score: Score | undefined): string => {
  const words = repetitionsText.conditions
  const written = score?.notes.find(({ id }) => id === note)
  if (!written || !score) return words.someNote
  return until === undefined
    ? words.note(keyWords(written.key, score, written.start), describePlace(score, written.start))
    : words.stretch(locatedWords({ note, until }, score))
}

const keysWords = (written: Key, played: Key | undefined, score: Score | undefined): string => {
  const words = repetitionsText.conditions
  return played === undefined
    ? words.another(keyWords(written, score))
    : words.played(keyWords(played, score), keyWords(written, score))
}

/** In the beat of the chunk, where one is asked for. */
const rungWords = (rung: Tempo, chunk: ChunkId | undefined, list: RepetitionList): string =>
  tempoWords(rung, chunk === undefined ? {} : figuresOf(chunk, list))

const barWords = (bar: number, score: Score | undefined): string => {
  const { bar: ofBar, someBar } = repetitionsText.conditions
  const number = score?.bars[bar]?.number
  return number === undefined ? someBar : ofBar(number)
}

/** '18:04', on this machine's clock. */
export const clockWords = (epochMs: number): string => {
  const time = new Date(epochMs)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${two(time.getHours())}:${two(time.getMinutes())}`
}
