import type { TaughtPiece } from '@/app/teaching'
import type { Score } from '@/music/music'
import type { PencilMark } from '@/engraving/pencil'
import type { ChunkState } from '@/review/chunkStates'
import type { OverruleCount } from '@/review/joinSums'
import type { ChunkFigures } from '@/review/pieceReview'
import type { HardBar, HardChunk, Span } from '@/review/teacherPage'
import { overruleWords } from './Decisions'
import { chunkWords, dateWords, flawTimes, grouped, keyWords, timeWords } from './reviewWords'
import { plural } from '@/text/plural'

/** The sentences of the page for a teacher. */

/** '5 to 11 January 2026' */
export const spanWords = ({ from, to }: Span): string => {
  if (from === to) return dateWords(from)
  const [year = '', month] = from.split('-')
  const [toYear, toMonth] = to.split('-')
  const long = dateWords(from)
  const begin = year === toYear ? long.replace(` ${year}`, '') : long
  return `${year === toYear && month === toMonth ? begin.split(' ')[0] : begin} to ${dateWords(to)}`
}

/** '3 hours 20 minutes on 5 days, 320 repetitions' */
export const practisedWords = ({
  minutes,
  days,
  repetitions,
}: Pick<TaughtPiece, 'minutes' | 'days' | 'repetitions'>): string =>
  `${timeWords(minutes)} on ${plural(days, 'day')}, ${grouped(repetitions)} ${repetitions === 1 ? 'repetition' : 'repetitions'}`

/** How far a chunk has come, in a word or two. */
export const standingWords: Readonly<Record<ChunkState, string>> = {
  slipped: 'slipped',
  practised: 'not yet secure',
  secure: 'secure',
  kept: 'kept',
}

/** 'a pause not taken, twice; a faster tempo'; empty where nothing was. */
export const overruledWords = (overruled: readonly OverruleCount[]): string =>
  overruled
    // That a sitting ends is no news.
    .filter(({ what }) => what !== 'end')
    .toSorted((a, b) => b.times - a.times)
    .map(({ what, times }) => `${overruleWords[what]}${timesWords(times)}`)
    .join('; ')

const timesWords = (times: number): string =>
  times === 1 ? '' : times === 2 ? ', twice' : `, ${times} times`

const changeWords = {
  slipped: 'Slipped, failed cold',
  kept: 'Kept, clean cold on a later day',
  secure: 'Became secure at the goal tempo',
} as const

/** So many chunks are named in one line. */
const mostNamed = 4

/** What changed in these days: ['Slipped, failed cold', 'bar 9, right hand']. */
export const changeLines = ({
  changes,
  chunks,
}: Pick<TaughtPiece, 'changes' | 'chunks'>): readonly (readonly [string, string])[] =>
  (['slipped', 'kept', 'secure'] as const).flatMap((state) => {
    // Bars are enough here: beats would make two lines of one.
    const of = changes[state].map((id) =>
      chunkWords(
        chunks.find(({ chunk }) => chunk === id),
        undefined,
      ),
    )
    if (of.length === 0) return []
    const others = of.length - mostNamed
    const more = others > 0 ? `; and ${plural(others, 'other')}` : ''
    return [[changeWords[state], of.slice(0, mostNamed).join('; ') + more] as const]
  })

/** So many flaws are told of one place. */
const mostFlaws = 3

/** 'F♯5: another key, 12 times; stop, 4 times' */
export const barFlawWords = ({ notes }: HardBar, score: Score): string =>
  notes
    .slice(0, mostFlaws)
    .map(({ note, kind, times }) => {
      const written = score.notes.find(({ id }) => id === note)
      const name = written ? `${keyWords(written.key, score, written.start)}: ` : ''
      return `${name}${flawTimes(kind, times)}`
    })
    .join('; ')

/** The same where no score is at hand. */
export const chunkFlawWords = ({ flaws }: HardChunk): string =>
  flaws
    .slice(0, mostFlaws)
    .map(({ written, kind, times }) => {
      const name = written === undefined ? '' : `${keyWords(written, undefined)}: `
      return `${name}${flawTimes(kind, times)}`
    })
    .join('; ')

/** 'and 7 more: 3 kept, 4 secure' */
export const moreWords = (chunks: readonly ChunkFigures[]): string => {
  const counts = (['slipped', 'practised', 'secure', 'kept'] as const).flatMap((state) => {
    const of = chunks.filter((chunk) => chunk.state === state).length
    return of > 0 ? [`${of} ${standingWords[state]}`] : []
  })
  return `and ${plural(chunks.length, 'other chunk')}: ${counts.join(', ')}.`
}

/** For a teacher who has never seen the program. */
export const howToRead =
  'Clean: no flaw by the standard chosen (the right keys in order; no stops besides; a steady pulse besides). After a clean share stands where it lies in 95 of 100 cases. Secure: a streak of clean repetitions at the goal tempo; kept: the first one on a later day was clean too; slipped: it was not. Tempi are beats a minute: the last one played, and the goal.'

const markWords: Readonly<Record<PencilMark['shape'], string>> = {
  right: '',
  wrong: 'a ring, another key was struck (the small head is the one struck most)',
  missing: 'a dotted ring, the note was missing',
  extra: 'a cross, a key too many',
  repeated: 'a cross beside the note, struck twice',
  order: 'the sign of exchange, two notes changed places',
  restart: 'a hook, went back',
  hesitation: 'two strokes, a stop',
  early: 'an arrow to the left, early',
  late: 'an arrow to the right, late',
  uneven: 'a wave, uneven',
  spread: 'a wavy line, the chord not together',
  drift: 'a slanted line, the tempo drifts',
}

/** What the marks on the page mean, those alone that are on it. */
export const legendWords = (shapes: ReadonlySet<PencilMark['shape']>): string =>
  Object.entries(markWords)
    .filter(([shape]) => [...shapes].some((each) => each === shape))
    .map(([, words]) => words)
    .join('; ')

/** As a file is named: 'passagework-morning-at-the-mill-2026-05-01'. */
export const fileNameOf = (title: string, day: string): string => {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase()
    .slice(0, 60)
  return ['passagework', ...(plain === '' ? [] : [plain]), day].join('-')
}
