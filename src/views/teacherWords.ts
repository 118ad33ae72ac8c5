import type { TaughtPiece } from '@/app/teaching'
import type { Score } from '@/music/music'
import type { PencilMark } from '@/engraving/pencil'
import type { OverruleCount } from '@/review/joinSums'
import type { ChunkFigures } from '@/review/pieceReview'
import type { HardBar, HardChunk, Span } from '@/review/teacherPage'
import { datesText, dateWords } from '@/text/dates'
import { teacherText } from '@/text/teacher'
import { overruleWords } from './Decisions'
import { chunkWords, flawTimes, keyWords, locatedWords, timeWords } from './reviewWords'

/** The sentences of the page for a teacher. */

/** '5 to 11 January 2026' */
export const spanWords = ({ from, to }: Span): string => {
  if (from === to) return dateWords(from)
  const [year = 0, month = 1, day = 1] = from.split('-').map(Number)
  const [toYear, toMonth] = to.split('-').map(Number)
  if (year !== toYear) return teacherText.days(dateWords(from), dateWords(to))
  return month === toMonth
    ? teacherText.daysOfMonth(day, dateWords(to))
    : teacherText.days(datesText.dayAndMonth(day, month), dateWords(to))
}

/** '3 hours 20 minutes on 5 days, 320 repetitions' */
export const practisedWords = ({
  minutes,
  days,
  repetitions,
}: Pick<TaughtPiece, 'minutes' | 'days' | 'repetitions'>): string =>
  teacherText.sheet.practised(timeWords(minutes), days, repetitions)

/** 'a pause not taken, twice; a faster tempo'; empty where nothing was. */
export const overruledWords = (overruled: readonly OverruleCount[]): string =>
  overruled
    // That a sitting ends is no news.
    .filter(({ what }) => what !== 'end')
    .toSorted((a, b) => b.times - a.times)
    .map(({ what, times }) => teacherText.sheet.overruledTimes(overruleWords[what], times))
    .join('; ')

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
    const more = others > 0 ? [teacherText.changes.others(others)] : []
    return [[teacherText.changes[state], [...of.slice(0, mostNamed), ...more].join('; ')] as const]
  })

/** So many flaws are told of one place. */
const mostFlaws = 3

/** 'F♯5: another key, 12 times; stop, 4 times' */
export const barFlawWords = ({ notes }: HardBar, score: Score): string =>
  notes
    .slice(0, mostFlaws)
    .map((flaw) =>
      teacherText.places.flawAt(locatedWords(flaw, score), flawTimes(flaw.kind, flaw.times)),
    )
    .join('; ')

/** The same where no score is at hand. */
export const chunkFlawWords = ({ flaws }: HardChunk): string =>
  flaws
    .slice(0, mostFlaws)
    .map(({ written, kind, times }) => {
      const name = written === undefined ? undefined : keyWords(written, undefined)
      return teacherText.places.flawAt(name, flawTimes(kind, times))
    })
    .join('; ')

/** 'and 7 more: 3 kept, 4 secure' */
export const moreWords = (chunks: readonly ChunkFigures[]): string => {
  const counts = (['slipped', 'practised', 'secure', 'kept'] as const).flatMap((state) => {
    const of = chunks.filter((chunk) => chunk.state === state).length
    return of > 0 ? [teacherText.chunks.counted(of, state)] : []
  })
  return teacherText.chunks.more(chunks.length, counts)
}

/** What the marks on the page mean, those alone that are on it. */
export const legendWords = (shapes: ReadonlySet<PencilMark['shape']>): readonly string[] =>
  Object.entries(teacherText.marks)
    .filter(([shape]) => [...shapes].some((each) => each === shape))
    .map(([, words]) => words)

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
