import { useCallback, useState, useSyncExternalStore, type ReactNode } from 'react'
import type { RepetitionList } from '@/app/repetitionList'
import type { Asked } from '@/review/asked'
import type { Listed, ListedDay } from '@/review/repetitions'
import { useApp } from './context'
import { Opened } from './Opened'
import { PageKeys, type PageKey } from './PageKeys'
import { RepetitionRow } from './RepetitionRow'
import { conditionsOf } from './repetitionWords'
import { useReviewed, useReviewedRoutes } from './reviewed'
import { dateWords } from './reviewWords'
import { SeenRepetition } from './SeenRepetition'
import { useLoaded } from './useLoaded'
import { useReadOn } from './useReadOn'
import { useSeen } from './useSeen'
import { plural } from '@/text/plural'
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
      <h1>Repetitions</h1>
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
  const keys: readonly PageKey[] = [
    { key: 'arrowup', shown: '↑', words: 'the one above', run: () => step(-1) },
    { key: 'arrowdown', shown: '↓', words: 'the one below', run: () => step(1) },
    { key: 'h', shown: 'H', words: 'hear it again, and stop', run: toggle },
    { key: 'm', shown: 'M', words: 'more: earlier days', run: readOn },
    { key: 'escape', shown: 'Esc', words: 'back', run: app.goBack },
  ]
  return (
    <>
      <p className="row no-print">
        <button type="button" onClick={app.goBack}>
          Back <kbd>Esc</kbd>
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
              Earlier days could not be read. {problem}
            </p>
          )}
          <p className="soft" role="status">
            {all.length > 0 && countWords(all.length, days, isWhole)}
          </p>
          {!isWhole && (
            <button type="button" className="no-print" onClick={readOn}>
              Earlier days <kbd>M</kbd>
            </button>
          )}
        </div>
      </div>
    </>
  )
}

const countWords = (count: number, days: readonly ListedDay[], isWhole: boolean): string => {
  const last = days.at(-1)
  const until = isWhole || !last ? '' : `, back to ${dateWords(last.day)}`
  return `${plural(count, 'repetition')}${until}.`
}

const Nothing = ({ days }: { readonly days: readonly ListedDay[] }) => {
  const unplayed = days.reduce((n, day) => n + day.unplayed, 0)
  return (
    <p>
      {unplayed > 0
        ? 'That was decided where nothing had been played yet: there is no repetition to show.'
        : 'There is no such repetition in the record. Take away one of the conditions above, or go back.'}
    </p>
  )
}

/** Each can be taken away. */
const Conditions = ({ asked, list }: { readonly asked: Asked; readonly list: RepetitionList }) => {
  const routes = useReviewedRoutes()
  const conditions = conditionsOf(asked, list)
  if (conditions.length === 0) return <p>All repetitions, the last one first.</p>
  return (
    <ul className="conditions" aria-label="Only these">
      {conditions.map(({ words, without }) => (
        <li key={words}>
          {words}
          {conditions.length > 1 && (
            <a
              className="no-print"
              href={routes.repetitions(without)}
              aria-label={`Not only: ${words}`}
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
    {unplayed > 0 && (
      <p className="soft">
        {unplayed === 1 ? 'Once' : `${unplayed} times`} where nothing had been played yet.
      </p>
    )}
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
