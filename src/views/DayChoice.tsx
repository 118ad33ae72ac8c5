import { minuteBounds } from '@/app/dayWish'
import type { PractisedPiece } from '@/app/plans'
import type { PieceId } from '@/music/units'
import { planText } from '@/text/plan'
import { useApp, useSelected } from './context'
import { phrase } from './phrase'
import { useKeys } from './shortcuts'
import type { Wish } from './useDay'

/** Minutes of one step. */
const step = 5

interface ChoiceProps {
  readonly known: readonly PractisedPiece[]
  readonly wish: Wish
  readonly onChange: (wish: Wish) => void
}

/** How long today, and at which pieces; the first is the main one. */
export const DayChoice = ({ known, wish, onChange }: ChoiceProps) => {
  const { minutes } = wish
  const set = (wanted: number): void =>
    onChange({
      ...wish,
      minutes: Math.min(minuteBounds.most, Math.max(minuteBounds.least, wanted)),
    })
  useKeys({ ArrowUp: () => set(minutes + step), ArrowDown: () => set(minutes - step) })
  return (
    <div className="row day-choice">
      <div className="row tight day-minutes" role="group" aria-label={planText.choice.minutesToday}>
        <button
          type="button"
          aria-label={planText.choice.less(step)}
          disabled={minutes <= minuteBounds.least}
          onClick={() => set(minutes - step)}
        >
          −
        </button>
        <p aria-live="polite">{phrase(planText.choice.minutes(<b>{minutes}</b>))}</p>
        <button
          type="button"
          aria-label={planText.choice.more(step)}
          disabled={minutes >= minuteBounds.most}
          onClick={() => set(minutes + step)}
        >
          +
        </button>
        <span className="soft">
          <kbd>↓</kbd> <kbd>↑</kbd>
        </span>
      </div>
      <PiecesChoice {...{ known, wish, onChange }} />
    </div>
  )
}

const PiecesChoice = ({ known, wish, onChange }: ChoiceProps) => {
  const app = useApp()
  const listed = useSelected(app.library.store, (state) => state.listed)
  const isKnown = (id: PieceId): boolean => known.some((each) => each.id === id)
  const others = listed.filter(({ id }) => !isKnown(id))
  const boxes = (pieces: readonly Pick<PractisedPiece, 'id' | 'title' | 'decision'>[]) =>
    pieces.map(({ id, title, decision }) => (
      <label key={id} className="row tight">
        <input
          type="checkbox"
          checked={wish.pieces.includes(id)}
          onChange={({ target }) =>
            onChange({
              ...wish,
              pieces: target.checked
                ? [...wish.pieces, id]
                : wish.pieces.filter((each) => each !== id),
            })
          }
        />
        {title}
        {decision === 'laidAside' && <span className="soft">{planText.choice.laidAside}</span>}
        {wish.pieces.length > 1 && wish.pieces[0] === id && (
          <span className="soft">{planText.choice.main}</span>
        )}
      </label>
    ))
  return (
    <fieldset className="row day-pieces">
      <legend>{planText.choice.pieces}</legend>
      {boxes(known)}
      {known.length === 0 ? (
        boxes(others)
      ) : others.length > 0 ? (
        <details>
          <summary>{planText.choice.others(others.length)}</summary>
          <div className="row">{boxes(others)}</div>
        </details>
      ) : null}
    </fieldset>
  )
}
