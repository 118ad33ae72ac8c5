import type { ItemOnDesk } from '@/app/practising'
import { isOnce, minutesLeft } from '@/app/dayRun'
import { planText } from '@/text/plan'
import { useApp, useSelected } from './context'
import { phrase } from './phrase'

/** Which item of today is on the desk, and what time is left of it; it hurries nobody. */
export const DayLine = ({ item: { item, number, of } }: { readonly item: ItemOnDesk }) => {
  const app = useApp()
  const run = useSelected(app.today.store, (state) => state.run)
  const now = run?.items[number - 1]
  const left = isOnce(item)
    ? planText.onceThrough
    : now
      ? planText.minutesLeft(minutesLeft(now))
      : ''
  return (
    <p className="day-line" data-number={number} data-of={of} data-kind={item.kind}>
      {phrase(planText.onDesk(<b>{planText.countOf(number, of)}</b>, item.kind))}{' '}
      <span className="soft">· {left}</span>
    </p>
  )
}
