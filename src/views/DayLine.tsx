import type { ItemOnDesk } from '@/app/practising'
import { isOnce, minutesLeft } from '@/app/dayRun'
import { useApp, useSelected } from './context'
import { itemWords } from './planWords'

/** Which item of today is on the desk, and what time is left of it; it hurries nobody. */
export const DayLine = ({ item: { item, number, of } }: { readonly item: ItemOnDesk }) => {
  const app = useApp()
  const run = useSelected(app.today.store, (state) => state.run)
  const now = run?.items[number - 1]
  const left = isOnce(item) ? 'once through' : now ? `${minutesLeft(now)} min left` : ''
  return (
    <p className="day-line" data-number={number} data-of={of} data-kind={item.kind}>
      <b>
        {number} of {of}
      </b>{' '}
      today, {itemWords[item.kind].toLowerCase()} <span className="soft">· {left}</span>
    </p>
  )
}
