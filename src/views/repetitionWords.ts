import type { RepetitionList } from '@/app/repetitionList'
import type { RecordedVerdict } from '@/journal/words'
import type { Score } from '@/music/music'
import type { ChunkId, Tempo } from '@/music/units'
import type { Asked } from '@/review/asked'
import type { ChunkState } from '@/review/chunkStates'
import type { Located } from '@/review/flawBars'
import type { ChunkFigures } from '@/review/pieceReview'
import { overruleWords } from './Decisions'
import { chunkWords, dateWords, keyWords, locatedWords, tempoWords } from './reviewWords'
import { describePlace, flawWords } from './words'

/** The words of the list of repetitions. */

export const verdictWords: Readonly<Record<RecordedVerdict, string>> = {
  clean: 'clean',
  flawed: 'flawed',
  brokenOff: 'broken off',
}

/** Of each chunk that stands so the one repetition that made it so. */
const settledWords: Readonly<Record<ChunkState, string>> = {
  secure: 'made a chunk secure',
  kept: 'confirmed a chunk cold',
  slipped: 'with which a chunk slipped',
  practised: 'the last one of a chunk that is only practised',
}

/** One thing that was asked for, and what is asked for without it. */
export interface Condition {
  readonly words: string
  readonly without: Asked
}

/** What was asked for, one thing after the other, in words. */
export const conditionsOf = (asked: Asked, list: RepetitionList): readonly Condition[] => {
  const { score } = list
  const { session, piece, chunk, verdict, ended, rung, flaw, note, until, bar, written, played } =
    asked
  const { cold, state, streak, overruled } = asked
  const when = daysWords(asked)
  const without = (...names: readonly (keyof Asked)[]): Asked =>
    Object.fromEntries(
      Object.entries(asked).filter(([name]) => !names.some((each) => each === name)),
    )
  const all: readonly (readonly [string | undefined, readonly (keyof Asked)[]])[] = [
    [session && 'this session', ['session']],
    // Chunks and notes are of a piece.
    [
      piece && (list.titles.get(piece) ?? 'a piece'),
      ['piece', 'chunk', 'note', 'until', 'bar', 'flaw'],
    ],
    [chunk && chunkWords(figuresOf(chunk, list), score), ['chunk']],
    [when, ['from', 'to']],
    [verdict && verdictWords[verdict], ['verdict']],
    [ended && 'clean or flawed', ['ended']],
    [rung && `at ${rungWords(rung, chunk, list)}`, ['rung']],
    [flaw && flawWords[flaw].toLowerCase(), ['flaw']],
    [note && noteWords({ note, ...(until ? { until } : {}) }, score), ['note', 'until']],
    [bar === undefined ? undefined : barWords(bar, score), ['bar']],
    [
      written === undefined
        ? undefined
        : `${played === undefined ? 'another key' : keyWords(played, score)} for ${keyWords(written, score)}`,
      ['written', 'played'],
    ],
    [cold && 'cold, on a later day', ['cold']],
    [state && settledWords[state], ['state']],
    [streak && 'the longest streak', ['streak']],
    [overruled && `then ${overruleWords[overruled]}`, ['overruled']],
  ]
  return all.flatMap(([words, names]) =>
    words === undefined ? [] : [{ words, without: without(...names) }],
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
  if (from !== undefined && from === to) return dateWords(from)
  if (from !== undefined && to !== undefined) return `${dateWords(from)} to ${dateWords(to)}`
  if (from !== undefined) return `from ${dateWords(from)} on`
  return to === undefined ? undefined : `until ${dateWords(to)}`
}

const noteWords = ({ note, until }: Located, score: Score | undefined): string => {
  const written = score?.notes.find(({ id }) => id === note)
  if (!written || !score) return 'at one note'
  return until === undefined
    ? `at ${keyWords(written.key, score, written.start)} in ${describePlace(score, written.start)}`
    : `over ${locatedWords({ note, until }, score)}`
}

/** In the beat of the chunk, where one is asked for. */
const rungWords = (rung: Tempo, chunk: ChunkId | undefined, list: RepetitionList): string =>
  tempoWords(rung, chunk === undefined ? {} : figuresOf(chunk, list))

const barWords = (bar: number, score: Score | undefined): string => {
  const number = score?.bars[bar]?.number
  return number === undefined ? 'with a flaw in one bar' : `with a flaw in bar ${number}`
}

/** '18:04', on this machine's clock. */
export const clockWords = (epochMs: number): string => {
  const time = new Date(epochMs)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${two(time.getHours())}:${two(time.getMinutes())}`
}
