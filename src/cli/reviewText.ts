import type { ImportPreview } from '@/journal/previewImport'
import { formatKey } from '@/music/pitch'
import type { Figures, OverruleCount } from '@/review/joinSums'
import type { PiecePage } from '@/review/pages'
import type { Estimate, ShareTrend } from '@/review/proportion'
import type { ChunkFigures } from '@/review/pieceReview'
import type { ReviewFigures } from './reviewFigures'

interface Unread {
  readonly line: number
  readonly why: string
}

/** The figures of the review for people. */
export const describeReview = (review: ReviewFigures, unread: readonly Unread[]): string =>
  [
    `${describeFigures(review)}, on ${counted(review.days, 'day')}`,
    ...(review.trend ? [describeTrend(review.trend)] : []),
    ...describeChunks(review.ofChunks),
    ...review.overruled.map(describeOverruled),
    ...review.pieces.flatMap(describePiece),
    ...describeUnread(unread),
  ].join('\n')

export const describePreview = ({ events, known, fresh, unread }: ImportPreview): string =>
  [
    `${counted(events, 'event')}, ${known} of them here already`,
    `new: ${counted(fresh.events, 'event')}, ${counted(fresh.repetitions, 'repetition')}, ${counted(fresh.sessions, 'session')}, ${counted(fresh.days, 'day')}${fresh.firstDay === undefined ? '' : ` (${fresh.firstDay} to ${fresh.lastDay})`}`,
    ...fresh.pieces.map(({ piece, title }) => `  ${title ?? piece}`),
    ...describeUnread(unread),
  ].join('\n')

const describePiece = (piece: ReviewFigures['pieces'][number]): readonly string[] => [
  '',
  `${piece.title ?? piece.piece}: ${describeFigures(piece)}, ${counted(piece.days, 'day')}, last ${piece.lastDay}`,
  ...(piece.trend ? [`  ${describeTrend(piece.trend)}`] : []),
  ...describeChunks(piece).map((line) => `  ${line}`),
  ...piece.chunks.map((chunk) => `  ${describeChunk(chunk)}`),
  ...piece.places
    .slice(0, mostFlaws)
    .map(({ chunk, kind, onset, written, times }) =>
      [
        `  ${counted(times, 'time')} ${kind}`,
        written === undefined ? '' : `, written ${formatKey(written)}`,
        `, onset ${onset + 1} of ${placeOf(piece.chunks.find((each) => each.chunk === chunk))}`,
      ].join(''),
    ),
  ...piece.substitutions
    .slice(0, mostFlaws)
    .map(
      ({ written, played, times }) =>
        `  ${formatKey(played)} for ${formatKey(written)}, ${counted(times, 'time')}`,
    ),
  ...piece.overruled.map((each) => `  ${describeOverruled(each)}`),
  ...piece.coldChecks.map(
    ({ day, chunk, verdict, after }) =>
      `  cold on ${day}: ${placeOf(piece.chunks.find((each) => each.chunk === chunk))}, ${verdict}, ${after}`,
  ),
]

/** How far the chunks have come, and what held cold. */
const describeChunks = ({
  states,
  cold,
}: Pick<PiecePage, 'states' | 'cold'>): readonly string[] => [
  `chunks: ${states.slipped} slipped, ${states.secure} secure, ${states.kept} kept, ${states.practised} practised`,
  ...(cold.checks > 0
    ? [
        `cold checks: ${cold.held} held, ${cold.failed} failed, ${cold.brokenOff} broken off${cold.share ? `, held ${percent(cold.share.value)} (${percentRange(cold.share)})` : ''}`,
      ]
    : []),
]

const describeOverruled = ({ what, times }: OverruleCount): string =>
  `overruled: ${what}, ${counted(times, 'time')}`

/** As many places as a page holds; the JSON has them all. */
const mostFlaws = 10

const describeChunk = (chunk: ChunkFigures): string => {
  const [first, last] = [chunk.days[0], chunk.days.at(-1)]
  const rungs = first && last ? `, tempo ${first.lowestRung} to ${last.highestRung}` : ''
  const curve = chunk.curve ? `, ${chunk.curve.verdict} (slope ${range(chunk.curve.slope, 2)})` : ''
  return `${placeOf(chunk)}: ${chunk.state}, ${describeFigures(chunk)}${rungs}${curve}`
}

const placeOf = (chunk: ChunkFigures | undefined): string => {
  if (!chunk?.drill) return chunk?.chunk ?? 'a chunk'
  const { place, form } = chunk.drill
  const bars =
    place.fromBar === place.toBar
      ? `bar ${place.fromBar}`
      : `bars ${place.fromBar} to ${place.toBar}`
  const shape = form === 'asWritten' ? '' : `, ${form}`
  return `${bars} (${place.from} to ${place.to}, ${place.hand}${shape})`
}

/** The clean share first, broken off apart, minutes and repetitions last. */
const describeFigures = ({ share, tally, longestStreak, minutes, repetitions }: Figures): string =>
  [
    share ? `clean ${percent(share.value)} (${percentRange(share)})` : 'nothing clean or flawed',
    `${tally.brokenOff} broken off`,
    `longest streak ${longestStreak}`,
    `${Math.round(minutes)} min`,
    counted(repetitions, 'repetition'),
  ].join(', ')

const describeTrend = ({ before, after, rise, verdict }: ShareTrend): string =>
  `clean ${percent(before.value)} before, ${percent(after.value)} lately: ${verdict} (${range({ value: rise.value * 100, low: rise.low * 100, high: rise.high * 100 }, 0)} points)`

const describeUnread = (unread: readonly Unread[]): readonly string[] =>
  unread.map(({ line, why }) => `line ${line} was not read: ${why}`)

const percent = (share: number): string => `${Math.round(share * 100)} %`
const percentRange = ({ low, high }: Estimate): string =>
  `${Math.round(low * 100)} to ${Math.round(high * 100)}`
const range = ({ low, high }: Estimate, digits: number): string =>
  `${low.toFixed(digits)} to ${high.toFixed(digits)}`
const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`
