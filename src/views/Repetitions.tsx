import { useCallback, useState, useSyncExternalStore, type ReactNode } from 'react'
import type { RepetitionList } from '@/app/repetitionList'
import type { Asked } from '@/review/asked'
import type { Listed, ListedDay } from '@/review/repetitions'
import { keysText } from '@/text/keys'
import { repetitionsText } from '@/text/repetitions'
import { dateWords } from '@/text/dates'
import { useApp } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { phrase } from './phrase'
import { RepetitionRow } from './RepetitionRow'
import { conditionsOf } from './repetitionWords'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { SeenRepetition } from './SeenRepetition'
import { useLoaded } from './useLoaded'
import { useReadOn } from './useReadOn'
import { useSeen } from './useSeen'
import './review.css'
import './repetitions.css'

/** The repetitions behind a figure of the review: chosen in a list, seen on the notation, heard again. */
export const Repetitions = ({ asked }: { readonly asked: Asked }) => {
  const { reviews } = useReviewed()
  const { loaded, again } = useLoaded(
    useCallback(() => reviews.repetitions(asked), [reviews, asked]),
  )
  return (
    <main className="page review repetitions">
      <h1>{repetitionsText.title}</h1>
      <Opened loaded={loaded} again={again}>
        {(list) => <Listing asked={asked} list={list} />}
      </Opened>
    </main>
  )
}

const Listing = ({ asked, list }: { readonly asked: Asked; readonly list: RepetitionList }) => {
  const app = useApp()
  const { days, isWhole, problem, readOn } = useReadOn(list)
  const all = days.flatMap(({ repetitions }) => repetitions)
  const [chosen, choose] = useState<string>()
  const index = Math.max(
    0,
    all.findIndex(({ repetition: { id } }) => id === chosen),
  )
  const now = all[index]
  const step = (by: 1 | -1): void => {
    const next = all[index + by]
    if (next) choose(next.repetition.id)
    else if (by === 1) readOn()
  }
  const { seen, isHeard, toggle } = useSeen(now)
  const isWide = useIsWide()
  const panel = now && (
    <SeenRepetition listed={now} list={list} seen={seen} isHeard={isHeard} toggle={toggle} />
  )
  const words = repetitionsText.keys
  const keys: readonly PageKey[] = [
    { key: 'arrowup', shown: '↑', words: words.above, run: () => step(-1) },
    { key: 'arrowdown', shown: '↓', words: words.below, run: () => step(1) },
    { key: 'h', shown: 'H', words: words.hear, run: toggle },
    { key: 'm', shown: 'M', words: words.more, run: readOn },
    { key: 'escape', shown: keysText.names.escape, words: words.back, run: app.goBack },
  ]
  return (
    <>
      <p className="row no-print">
        <button type="button" onClick={app.goBack}>
          {phrase(repetitionsText.back<ReactNode>(<kbd>{keysText.names.escape}</kbd>))}
        </button>
        <PageKeys keys={keys} />
      </p>
      <Conditions asked={asked} list={list} />
      {all.length === 0 && isWhole && <Nothing days={days} />}
      <div className="repetitions-body">
        {isWide && panel}
        <div className="repetitions-list">
          {days.map((day) => (
            <DayRows key={day.day} day={day} asked={asked} list={list} now={now} choose={choose}>
              {!isWide && panel}
            </DayRows>
          ))}
          {problem !== undefined && (
            <p className="notice" role="alert">
              {repetitionsText.unread(problem)}
            </p>
          )}
          <p className="soft" role="status">
            {all.length > 0 && countWords(all.length, days, isWhole)}
          </p>
          {!isWhole && (
            <button type="button" className="no-print" onClick={readOn}>
              {phrase(repetitionsText.earlier<ReactNode>(<kbd>M</kbd>))}
            </button>
          )}
        </div>
      </div>
    </>
  )
}

const countWords = (count: number, days: readonly ListedDay[], isWhole: boolean): string => {
  const last = days.at(-1)
  return isWhole || !last
    ? repetitionsText.count(count)
    : repetitionsText.countBackTo(count, dateWords(last.day))
}

const Nothing = ({ days }: { readonly days: readonly ListedDay[] }) => {
  const unplayed = days.reduce((n, day) => n + day.unplayed, 0)
  return <p>{unplayed > 0 ? repetitionsText.onlyUnplayed : repetitionsText.none}</p>
}

/** Each can be taken away. */
const Conditions = ({ asked, list }: { readonly asked: Asked; readonly list: RepetitionList }) => {
  const routes = useReviewedRoutes()
  const conditions = conditionsOf(asked, list)
  if (conditions.length === 0) return <p>{repetitionsText.all}</p>
  return (
    <ul className="conditions" aria-label={repetitionsText.conditions.title}>
      {conditions.map(({ words, without }) => (
        <li key={words}>
          {words}
          {conditions.length > 1 && (
            <a
              className="no-print"
              href={routes.repetitions(without)}
              aria-label={repetitionsText.conditions.without(words)}
            >
              ×
            </a>
          )}
        </li>
      ))}
    </ul>
  )
}

const DayRows = ({
  day: { day, repetitions, unplayed },
  asked,
  list,
  now,
  choose,
  children,
}: {
  readonly day: ListedDay
  readonly asked: Asked
  readonly list: RepetitionList
  readonly now: Listed | undefined
  readonly choose: (id: string) => void
  /** Stands under the chosen one. */
  readonly children: ReactNode
}) => (
  <section aria-label={dateWords(day)}>
    <h2>{dateWords(day)}</h2>
    <ol>
      {repetitions.map((listed) => (
        <li key={listed.repetition.id}>
          <RepetitionRow
            listed={listed}
            list={list}
            asked={asked}
            isChosen={listed.repetition.id === now?.repetition.id}
            choose={choose}
          />
          {listed.repetition.id === now?.repetition.id && children}
        </li>
      ))}
    </ol>
    {unplayed > 0 && <p className="soft">{repetitionsText.unplayed(unplayed)}</p>}
  </section>
)

/** From here on the chosen one stands beside the list. */
const wide = '(min-width: 64rem)'

const watchWidth = (see: () => void): (() => void) => {
  const query = window.matchMedia(wide)
  query.addEventListener('change', see)
  return () => query.removeEventListener('change', see)
}

const useIsWide = (): boolean =>
  useSyncExternalStore(watchWidth, () => window.matchMedia(wide).matches)
