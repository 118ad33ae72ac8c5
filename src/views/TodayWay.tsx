import { useEffect, useState } from 'react'
import type { DayRun } from '@/app/dayRun'
import { formatRoute } from '@/app/route'
import type { PieceId } from '@/music/units'
import { planText } from '@/text/plan'
import { useApp, useSelected } from './context'
import { useKeysByName } from './pieceKeys'
import { describeDone } from './planWords'

/** Who has practised is one press from today's plan. */
export const TodayWay = () => {
  const app = useApp()
  const [isKnown, setKnown] = useState(false)
  const run = useRun()
  useEffect(() => void app.hasPractised().then(setKnown), [app])
  if (!isKnown) return null
  const words = run ? planText.today.goOnWith : planText.today.open
  return (
    <p className="row today-way">
      <a className="button primary" href={formatRoute({ kind: 'today' })}>
        {words} <kbd>T</kbd>
      </a>
    </p>
  )
}

/** What was begun of this day's plan. */
const useRun = (): DayRun | undefined => {
  const app = useApp()
  const run = useSelected(app.today.store, (state) => state.run)
  useEffect(() => void app.today.load(), [app])
  return run?.day === app.plans.today() ? run : undefined
}

/** From the page of a piece to its weeks. */
export const WeeksWay = ({ piece }: { readonly piece: PieceId }) => {
  const app = useApp()
  useKeysByName({ w: () => app.go({ kind: 'plan', piece }) })
  return (
    <a className="button" href={formatRoute({ kind: 'plan', piece })}>
      {planText.weeks.title} <kbd>W</kbd>
    </a>
  )
}

/** In the review of a session: how today's plan went, and the way back to what is left of it. */
export const TodayDone = () => {
  const run = useRun()
  if (!run) return null
  const isOver = run.at >= run.items.length
  return (
    <p className="today-done">
      {isOver ? describeDone(run.items) : planText.today.isOnOfPlan(run.at + 1, run.items.length)}{' '}
      {!isOver && <a href={formatRoute({ kind: 'today' })}>{planText.today.goOnWithIt}</a>}
    </p>
  )
}
