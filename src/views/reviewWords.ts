import type { RecordedFlawKind } from '@/journal/words'
import type { RecordedPlace } from '@/journal/journal'
import { formatBeats } from '@/music/beat'
import { parseFraction } from '@/music/fraction'
import type { Note, Score } from '@/music/music'
import { nameKey, signatureAt } from '@/music/spelling'
import { tick, type Key, type Tempo } from '@/music/units'
import type { ChunkState } from '@/review/chunkStates'
import type { StateCounts } from '@/review/coldFigures'
import type { Located } from '@/review/flawBars'
import type { LearningCurve } from '@/review/learningCurve'
import type { AllPage } from '@/review/pages'
import type { Period, PeriodStep } from '@/review/periods'
import type { ChunkFigures } from '@/review/pieceReview'
import type { Estimate, ShareTrend } from '@/review/proportion'
import { describePlace, flawWords, formWords, handWords, percent } from './words'
import { dateWords } from '@/text/dates'
import { grouped } from '@/text/numbers'
import { plural } from '@/text/plural'

export { dateWords, grouped }

/** The sentences of the review: what a figure or a picture says, and how sure it is. */

const periodWords = (from: string, step: PeriodStep): string =>
  step === 'week' ? `the week of ${dateWords(from)}` : dateWords(from)

/** 'on 3 May 2026', 'in May 2026' */
const inPeriod = (from: string, step: PeriodStep): string =>
  `${step === 'day' ? 'on' : 'in'} ${periodWords(from, step)}`

/** '71 % (68 to 74)' */
export const shareWords = (share: Estimate | undefined): string =>
  share ? `${percent(share.value)} (${rangeWords(share)})` : '–'

/** In percent: '68 to 74'. */
export const rangeWords = ({ low, high }: Estimate, word: 'to' | 'and' = 'to'): string =>
  `${Math.round(low * 100)} ${word} ${Math.round(high * 100)}`

/** What the picture of the clean share shows. */
export const describeShares = (periods: readonly Period[], step: PeriodStep): string => {
  const shared = periods.filter(({ share }) => share)
  const sorted = shared.toSorted((a, b) => (a.share?.value ?? 0) - (b.share?.value ?? 0))
  const [lowest, highest] = [sorted[0], sorted.at(-1)]
  const [first, last] = [shared[0], shared.at(-1)]
  if (!lowest?.share || !highest?.share || !first || !last)
    return 'No repetition came to its end yet.'
  const word = ({ from, share }: Period): string =>
    `${share ? percent(share.value) : '–'} ${inPeriod(from, step)}`
  if (lowest === highest)
    return `Only one ${step} so far: ${shareWords(lowest.share)} clean ${inPeriod(lowest.from, step)}.`
  return `Clean share by ${step}, from ${periodWords(first.from, step)} to ${periodWords(last.from, step)}: lowest ${word(lowest)}, highest ${word(highest)}, last ${word(last)}.`
}

/** No trend is claimed where its interval holds zero. */
export const describeTrend = (trend: ShareTrend | undefined): string => {
  if (!trend) return 'Not enough days yet to say whether the clean share changes.'
  const { before, after, rise, verdict } = trend
  const [low, high] = [Math.round(rise.low * 100), Math.round(rise.high * 100)]
  const figures = `${percent(after.value)} clean on the last 28 days with practice, ${percent(before.value)} on those before`
  switch (verdict) {
    case 'better':
      return `${figures}: better, by ${low} to ${high} of 100 repetitions.`
    case 'worse':
      return `${figures}: worse, by ${-high} to ${-low} of 100 repetitions.`
    case 'unclear':
      return `${figures}: unclear whether it changed (between ${signed(low)} and ${signed(high)} of 100 repetitions).`
  }
}

const signed = (n: number): string => (n < 0 ? `−${-n}` : n > 0 ? `+${n}` : '0')

export const stateWords: Readonly<Record<ChunkState, string>> = {
  slipped: 'Slipped: was kept, and failed cold',
  secure: 'Secure: to be confirmed cold on a later day',
  kept: 'Kept: confirmed cold on a later day',
  practised: 'Practised',
}

/** What needs work first. */
export const stateOrder: readonly ChunkState[] = ['slipped', 'secure', 'kept', 'practised']

/** '12 chunks: 1 slipped, 2 secure, 5 kept, 4 practised.' */
export const statesWords = (states: StateCounts): string => {
  const all = stateOrder.reduce((sum, state) => sum + states[state], 0)
  return `${plural(all, 'chunk')}: ${stateOrder.map((state) => `${states[state]} ${state}`).join(', ')}.`
}

export const curveWords: Readonly<Record<LearningCurve['verdict'], string>> = {
  improving: 'fewer flaws',
  worsening: 'more flaws',
  plateau: 'stands still',
  unclear: 'unclear',
}

/** 'bar 9, beats 1–3, right hand, long–short'; without the score the bars alone. */
export const chunkWords = (
  chunk: Pick<ChunkFigures, 'drill'> | undefined,
  score: Score | undefined,
): string => {
  const drill = chunk?.drill
  if (!drill) return 'a chunk'
  const { place, form } = drill
  return [
    (score && placeWords(score, place)) ?? barWords(place),
    handWords[place.hand],
    ...(form === 'asWritten' ? [] : [formWords[form]]),
  ].join(', ')
}

const barWords = ({ fromBar, toBar }: RecordedPlace): string =>
  fromBar === toBar ? `bar ${fromBar}` : `bars ${fromBar}–${toBar}`

const placeWords = (score: Score, place: RecordedPlace): string | undefined => {
  const first = parseFraction(place.from, score.ticksPerQuarter)
  const last = parseFraction(place.to, score.ticksPerQuarter)
  return first === undefined || last === undefined ? undefined : stretchWords(score, first, last)
}

/** From beat to beat, so that chunks of one bar can be told apart. */
const stretchWords = (score: Score, first: number, last: number): string => {
  const [from, to] = [describePlace(score, first), describePlace(score, last)]
  const [bar, beat] = from.split(', beat ')
  const [toBar, toBeat] = to.split(', beat ')
  if (bar !== toBar) return `${from} to ${to}`
  return beat === toBeat ? from : `${bar}, beats ${beat}–${toBeat}`
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
  `${flawWords[kind].toLowerCase()}, ${times === 1 ? 'once' : `${times} times`}`

/** '3 hours 20 minutes' */
export const timeWords = (minutes: number): string => {
  const whole = Math.round(minutes)
  if (whole < 1) return 'less than a minute'
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  return [
    ...(hours > 0 ? [plural(hours, 'hour')] : []),
    ...(rest > 0 ? [plural(rest, 'minute')] : []),
  ].join(' ')
}

/** Last of all. */
export const amountWords = ({
  repetitions,
  minutes,
  days,
}: Pick<AllPage, 'repetitions' | 'minutes' | 'days'>): string =>
  `${grouped(repetitions)} repetition${repetitions === 1 ? '' : 's'} in ${timeWords(minutes)}, on ${plural(days, 'day')}.`
