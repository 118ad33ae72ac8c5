import type { RunItem } from '@/app/dayRun'
import { sayReason } from '@/app/planWords'
import type { DayItem } from '@/plan/items'
import { planText } from '@/text/plan'
import { itemLine, itemPlace, whereWords } from './planWords'

interface ListedItem {
  readonly item: DayItem
  readonly outcome: RunItem['outcome']
  /** It is the one that is on, and so many minutes of it are left. */
  readonly isOn?: boolean
  readonly left?: number
}

interface Again {
  /** A turn at a place that had one before: why is said there. */
  readonly isAgain: boolean
}

const isSecondTurn = (items: readonly ListedItem[], at: number): boolean => {
  const item = items[at]?.item
  return (
    item !== undefined &&
    items
      .slice(0, at)
      .some(
        ({ item: other }) =>
          other.reason.kind === item.reason.kind && itemLine(other) === itemLine(item),
      )
  )
}

/** The items of a day in the order of playing, to be read from the bench. */
export const DayList = ({ items }: { readonly items: readonly ListedItem[] }) => (
  <ol className="day-list">
    {items.map((each, i) => (
      // Their order is all that tells turns at one place apart.
      <Item key={i} {...each} isAgain={isSecondTurn(items, i)} />
    ))}
  </ol>
)

const Item = ({ item, outcome, isOn = false, isAgain, left }: ListedItem & Again) => {
  const why = outcome === 'ahead' && !isAgain ? sayReason(item.reason) : undefined
  return (
    <li
      data-kind={item.kind}
      data-outcome={outcome}
      data-on={isOn}
      aria-current={isOn ? 'step' : undefined}
    >
      <span className="day-sign" aria-hidden="true">
        <ItemSign outcome={outcome} isOn={isOn} />
      </span>
      <span className="day-minutes-of">
        {Math.max(1, Math.round(left ?? item.minutes))}
        <span className="soft"> {planText.minuteSign}</span>
      </span>
      <span className="day-what">
        <b>{planText.items[item.kind]}</b>
        {item.kind !== 'rest' && (
          <>
            {' '}
            {item.title}, {whereWords(itemPlace(item))}
          </>
        )}
        {outcome !== 'ahead' && (
          <span className="soft day-outcome">{planText.outcomes[outcome]}</span>
        )}
        {why !== undefined && <span className="soft day-why">{why}</span>}
      </span>
    </li>
  )
}

/** Known by its shape: a tick, half a ring, a ring, a dot; the one that is on a full one. */
const ItemSign = ({ outcome, isOn }: Pick<ListedItem, 'outcome'> & { readonly isOn: boolean }) => (
  <svg viewBox="0 0 20 20">
    {outcome === 'done' ? (
      <path d="M3 11l5 6L17 3" />
    ) : outcome === 'begun' ? (
      <path d="M10 4a6 6 0 0 0 0 12z" />
    ) : (
      <circle
        cx="10"
        cy="10"
        r={isOn || outcome === 'left' ? 6.5 : 2.5}
        className={isOn ? 'full' : outcome === 'left' ? '' : 'dot'}
      />
    )}
  </svg>
)
