import type { RecordedPlace } from '@/journal/journal'
import type { RecordedFlawKind } from '@/journal/words'
import { formatBeats } from '@/music/beat'
import { parseFraction } from '@/music/fraction'
import type { Note, Score } from '@/music/music'
import { nameKey, signatureAt } from '@/music/spelling'
import { tick, type Key, type Tempo } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import type { Located } from '@/review/flawBars'
import type { AllPage } from '@/review/pages'
import type { Period, PeriodStep } from '@/review/periods'
import type { ChunkFigures } from '@/review/pieceReview'
import type { Estimate, ShareTrend } from '@/review/proportion'
import { dateWords } from '@/text/dates'
import { flawsText } from '@/text/flaws'
import { musicText } from '@/text/music'
import { grouped } from '@/text/numbers'
import { reviewText } from '@/text/review'
import { barAndBeat, describePlace, formWords, handWords, percent } from './words'

/** What the review says of its figures: which sentence, and how sure it is. The words are in `src/text`. */

const whole = (share: number): number => Math.round(share * 100)

/** '71 % (68 to 74)' */
export const shareWords = (share: Estimate | undefined): string =>
  share ? `${percent(share.value)} (${rangeWords(share)})` : '–'

/** In percent: '68 to 74'. */
export const rangeWords = ({ low, high }: Estimate): string =>
  reviewText.share.range(whole(low), whole(high))

/** The bounds as figures of a sentence, in whole percent. */
export const boundsOf = ({ low, high }: Estimate): readonly [low: number, high: number] => [
  whole(low),
  whole(high),
]

/** What the picture of the clean share shows; each share with the way to what it is made of. */
export const describeShares = <N>(
  periods: readonly Period[],
  step: PeriodStep,
  link: (period: Period, words: string) => N,
): readonly (string | N)[] => {
  const { none, only, within, all } = reviewText.shares
  const shared = periods.flatMap((period) =>
    period.share ? [{ ...period, share: period.share }] : [],
  )
  const sorted = shared.toSorted((a, b) => a.share.value - b.share.value)
  const [lowest, highest, first, last] = [sorted[0], sorted.at(-1), shared[0], shared.at(-1)]
  if (!lowest || !highest || !first || !last) return [none]
  if (lowest === highest)
    return only(step, link(lowest, shareWords(lowest.share)), dateWords(lowest.from))
  const shareIn = (period: (typeof shared)[number]): N =>
    link(period, within(percent(period.share.value), step, dateWords(period.from)))
  return all(
    step,
    dateWords(first.from),
    dateWords(last.from),
    shareIn(lowest),
    shareIn(highest),
    shareIn(last),
  )
}

/** No trend is claimed where its interval holds zero. */
export const describeTrend = <N>(
  trend: ShareTrend | undefined,
  link: (side: 'before' | 'after', words: string) => N,
): readonly (string | N)[] => {
  const words = reviewText.trend
  if (!trend) return [words.tooFew]
  const [low, high] = boundsOf(trend.rise)
  const after = link('after', percent(trend.after.value))
  const before = link('before', percent(trend.before.value))
  switch (trend.verdict) {
    case 'better':
      return words.better(after, before, low, high)
    case 'worse':
      return words.worse(after, before, -high, -low)
    case 'unclear':
      return words.unclear(after, before, signed(low), signed(high))
  }
}

const signed = (n: number): string => (n < 0 ? `−${-n}` : n > 0 ? `+${n}` : '0')

/** What needs work first. */
export const stateOrder: readonly ChunkState[] = ['slipped', 'secure', 'kept', 'practised']

/** 'bar 9, beats 1–3, right hand, long–short'; without the score the bars alone. */
export const chunkWords = (
  chunk: Pick<ChunkFigures, 'drill'> | undefined,
  score: Score | undefined,
): string => {
  const drill = chunk?.drill
  if (!drill) return reviewText.chunks.some
  const { place, form } = drill
  return [
    (score && placeWords(score, place)) ?? musicText.bars(place.fromBar, place.toBar),
    handWords[place.hand],
    ...(form === 'asWritten' ? [] : [formWords[form]]),
  ].join(', ')
}

const placeWords = (score: Score, place: RecordedPlace): string | undefined => {
  const first = parseFraction(place.from, score.ticksPerQuarter)
  const last = parseFraction(place.to, score.ticksPerQuarter)
  return first === undefined || last === undefined ? undefined : stretchWords(score, first, last)
}

/** From beat to beat, so that chunks of one bar can be told apart. */
const stretchWords = (score: Score, first: number, last: number): string => {
  const [[bar, beat], [toBar, toBeat]] = [barAndBeat(score, first), barAndBeat(score, last)]
  const { stretch, beats } = reviewText.chunks
  if (bar !== toBar) return stretch(describePlace(score, first), describePlace(score, last))
  return beat === toBeat ? describePlace(score, first) : beats(bar, beat, toBeat)
}

/** A tempo in the beat of the chunk's time signature. */
export const tempoWords = (tempo: Tempo, chunk: Pick<ChunkFigures, 'drill'>): string =>
  chunk.drill ? formatBeats(tempo, chunk.drill.time) : String(Math.round(tempo))

/** As it is named where it stands in the score, or at its beginning; 'F♯5'. */
export const keyWords = (key: Key, score: Score | undefined, at = tick(0)): string =>
  nameKey(key, signatureAt(score?.keys ?? [], at))

/** The note at which a flaw stands, or the stretch: 'F♯5', 'bar 9, beats 1–4'. */
export const locatedWords = ({ note, until }: Located, score: Score): string => {
  const noteOf = (wanted: Located['note']): Note | undefined =>
    score.notes.find(({ id }) => id === wanted)
  const [from, to] = [noteOf(note), until === undefined ? undefined : noteOf(until)]
  if (!from) return ''
  return to ? stretchWords(score, from.start, to.start) : keyWords(from.key, score, from.start)
}

/** 'another key, 12 times' */
export const flawTimes = (kind: RecordedFlawKind, times: number): string =>
  reviewText.where.flaw(flawsText.inSentence[kind], flawsText.times(times))

/** '3 hours 20 minutes' */
export const timeWords = (minutes: number): string => {
  const all = Math.round(minutes)
  const { little, hours, minutes: ofHour } = reviewText.time
  if (all < 1) return little
  const [full, rest] = [Math.floor(all / 60), all % 60]
  return [...(full > 0 ? [hours(full)] : []), ...(rest > 0 ? [ofHour(rest)] : [])].join(' ')
}

/** Last of all. */
export const amountWords = ({
  repetitions,
  minutes,
  days,
}: Pick<AllPage, 'repetitions' | 'minutes' | 'days'>): string =>
  reviewText.amount(repetitions, grouped(repetitions), timeWords(minutes), days)
