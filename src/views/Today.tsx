import { useCallback, useEffect, useState } from 'react'
import { currentOf, minutesLeft, type DayRun } from '@/app/dayRun'
import { formatRoute } from '@/app/route'
import { dateWords, weekdayWord } from '@/text/dates'
import { keysText } from '@/text/keys'
import { planText } from '@/text/plan'
import { useApp, useSelected } from './context'
import { DayChoice } from './DayChoice'
import { DayList } from './DayList'
import { PageKeys } from './PageKeys'
import { describeDay, describeDone } from './planWords'
import { useKeys } from './shortcuts'
import { useDay } from './useDay'
import './today.css'

/** What to practise today: the minutes, the list, and a start; then it is played item after item. */
export const Today = () => {
  const app = useApp()
  const run = useSelected(app.today.store, (state) => state.run)
  const problem = useSelected(app.today.store, (state) => state.problem)
  const [isRead, setRead] = useState(false)
  useEffect(() => {
    void app.today.load().then(() => setRead(true))
  }, [app])
  const day = app.plans.today()
  const isOn = run?.day === day
  return (
    <main className="page page-today">
      <h1>
        {planText.today.title}{' '}
        <span className="soft">{planText.today.date(weekdayWord(day), dateWords(day))}</span>
      </h1>
      {problem !== undefined && <p className="notice">{problem}</p>}
      {isRead && (isOn ? <UnderWay run={run} /> : <Ahead />)}
    </main>
  )
}

/** Before it begins: how long, at what, and what that comes to. */
const Ahead = () => {
  const app = useApp()
  const [seed, setSeed] = useState(1)
  const words = planText.today
  const { known, wish, setWish, planned, problem } = useDay(seed)
  const items = planned?.plan.items ?? []
  const start = (): void => {
    if (planned && items.length > 0) app.today.begin(planned)
  }
  useStartKeys(start)
  const another = (): void => setSeed((n) => n + 1)
  if (problem !== undefined) return <p className="notice">{problem}</p>
  if (!known || !wish) return <p className="soft">{words.reading}</p>
  return (
    <>
      <DayChoice {...{ known, wish }} onChange={setWish} />
      <div className="row actions">
        <button type="button" className="primary" disabled={items.length === 0} onClick={start}>
          {words.start} <kbd>{keysText.names.enter}</kbd>
        </button>
        {items.length > 0 && (
          <button type="button" onClick={another}>
            {words.another} <kbd>O</kbd>
          </button>
        )}
        <PageKeys
          keys={[
            { key: 'enter', shown: keysText.names.enter, words: planText.keys.start },
            { key: 'arrowup', shown: '↑', words: planText.keys.more },
            { key: 'arrowdown', shown: '↓', words: planText.keys.less },
            { key: 'o', shown: 'O', words: planText.keys.another, run: another },
          ]}
        />
      </div>
      <section aria-labelledby="items" aria-busy={!planned}>
        <h2 id="items" className="unseen">
          {words.list}
        </h2>
        <p className="today-sum" role="status">
          {!planned
            ? words.making
            : items.length > 0
              ? describeDay(items, planned.plan.minutes, wish.minutes)
              : emptyWords(wish.pieces.length, planned.finished)}
          {planned?.plan.lowered && ` ${words.lowered}`}
        </p>
        {items.length > 0 && <DayList items={items.map((item) => ({ item, outcome: 'ahead' }))} />}
      </section>
    </>
  )
}

const emptyWords = (chosen: number, isFinished: boolean): string => {
  if (chosen === 0) return planText.today.noPiece
  return isFinished ? planText.today.allKept : planText.today.nothingDue
}

/** Begun: what is done, what is on, and the way back to it. */
const UnderWay = ({ run }: { readonly run: DayRun }) => {
  const app = useApp()
  const now = currentOf(run)
  const goOn = useCallback((): void => void app.today.goOn(), [app])
  const isRest = now?.item.kind === 'rest'
  const leave = (): void => (isRest ? app.today.over(run.at + 1) : goOn())
  const planAnew = (): void => app.today.forget()
  useStartKeys(leave)
  return (
    <>
      {isRest && <Rest key={run.at} minutes={now.item.minutes} onOver={leave} />}
      <p className="today-sum" role="status">
        {now ? planText.today.isOn(run.at + 1, run.items.length) : describeDone(run.items)}
      </p>
      <div className="row actions">
        {now ? (
          <button type="button" className="primary" onClick={leave}>
            {planText.today.goOn} <kbd>{keysText.names.enter}</kbd>
          </button>
        ) : (
          <a className="button primary" href={formatRoute({ kind: 'summary' })}>
            {planText.today.toReview} <kbd>{keysText.names.enter}</kbd>
          </a>
        )}
        <button type="button" onClick={planAnew}>
          {planText.today.planAnew} <kbd>N</kbd>
        </button>
        <PageKeys
          keys={[
            {
              key: 'enter',
              shown: keysText.names.enter,
              words: now ? planText.keys.goOn : planText.keys.toReview,
            },
            { key: 'n', shown: 'N', words: planText.keys.planAnew, run: planAnew },
          ]}
        />
      </div>
      <DayList
        items={run.items.map((each, i) => ({
          item: each.item,
          outcome: each.outcome,
          ...(i === run.at ? { isOn: true, left: minutesLeft(each) } : {}),
        }))}
      />
    </>
  )
}

/** Counts down by whole minutes, so that nothing on the page hurries anybody; then it goes on. */
const Rest = ({ minutes, onOver }: { readonly minutes: number; readonly onOver: () => void }) => {
  const [left, setLeft] = useState(minutes)
  useEffect(() => {
    if (left <= 0) return onOver()
    const timer = window.setTimeout(() => setLeft(left - 1), 60_000)
    return () => window.clearTimeout(timer)
  }, [left, onOver])
  return (
    <p className="today-rest">
      {planText.today.rest} <b>{planText.inMinutes(Math.max(1, Math.ceil(left)))}</b>
    </p>
  )
}

/** Enter, the space bar, and whatever of the instrument means next or go on. */
const useStartKeys = (start: () => void): void => {
  const app = useApp()
  useKeys({ Enter: start, Space: start })
  useEffect(
    () =>
      app.listenForCommands([], (command) => {
        if (command === 'next' || command === 'goOn' || command === 'again') start()
      }),
    [app, start],
  )
}
