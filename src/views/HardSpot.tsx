import type { MouseEvent, MouseEventHandler, ReactNode } from 'react'
import type { ListedSpot } from '@/app/spotList'
import type { Score } from '@/music/music'
import { spotsText, tellReason } from '@/text/spots'
import { describeSpot } from './hardSpotsWords'
import type { Passage } from './passageKeys'

interface SpotProps {
  readonly score: Score
  readonly spot: ListedSpot
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly canSay: boolean
  readonly onWord: (word: 'accepted' | 'rejected') => void
  readonly onMove: (by: 1 | -1) => void
  readonly onChoose: (passage: Passage) => void
  readonly onBuild: (spot: ListedSpot) => void
}

/** A hard spot in the list: where, why, and what can be done with it. */
export const HardSpot = (props: SpotProps) => {
  const { score, spot, canSay } = props
  const where = describeSpot(score, spot)
  const { reasons, word, depth, played } = spot
  const { buttons, named } = spotsText
  // The row goes elsewhere with its button; the focus stays on it.
  const move = (by: 1 | -1) => (event: MouseEvent<HTMLButtonElement>) => {
    const button = event.currentTarget
    props.onMove(by)
    window.requestAnimationFrame(() => button.focus())
  }
  return (
    <li className="spot" aria-label={where} tabIndex={-1}>
      <i className="spot-depth" data-depth={depth} data-passage={word === 'accepted'} />
      <div className="spot-words">
        <p>
          <b>{where}</b>
          {word === 'accepted' && <span className="soft"> · {spotsText.aPassage}</span>}
        </p>
        {played && <p className="spot-played">{spotsText.played(played.flawed, played.of)}</p>}
        {reasons.length > 0 ? (
          <details>
            <summary>{reasons.map(tellReason).join('; ')}</summary>
            <ul>
              {reasons.map((reason) => (
                <li key={reason.kind}>
                  {tellReason(reason)}: {spotsText.ways[reason.kind]}
                </li>
              ))}
            </ul>
          </details>
        ) : (
          !played && <p className="soft">{spotsText.byYourWord}</p>
        )}
      </div>
      <span className="row tight spot-buttons">
        <button type="button" aria-label={named.build(where)} onClick={() => props.onBuild(spot)}>
          <Label wide={buttons.build} narrow={buttons.buildShort} />
        </button>
        <Plain name={named.choose(where)} onClick={() => props.onChoose(barsOf(score, spot))}>
          {buttons.choose}
        </Plain>
        <Plain
          name={named.accept(where)}
          isOn={word === 'accepted'}
          isOff={!canSay}
          onClick={() => props.onWord('accepted')}
        >
          <Label wide={buttons.accept} narrow="✓" />
        </Plain>
        <Plain name={named.reject(where)} isOff={!canSay} onClick={() => props.onWord('rejected')}>
          <Label wide={buttons.reject} narrow="✕" />
        </Plain>
        <Plain name={named.up(where)} isOff={!canSay || props.isFirst} onClick={move(-1)}>
          ↑
        </Plain>
        <Plain name={named.down(where)} isOff={!canSay || props.isLast} onClick={move(1)}>
          ↓
        </Plain>
      </span>
    </li>
  )
}

interface PlainProps {
  /** For who does not see which spot it is about. */
  readonly name: string
  readonly isOn?: boolean
  readonly isOff?: boolean
  readonly onClick: MouseEventHandler<HTMLButtonElement>
  readonly children: ReactNode
}

/** What can be done with a spot besides practising it. */
const Plain = ({ name, isOn, isOff = false, onClick, children }: PlainProps) => (
  <button
    type="button"
    className="plain"
    aria-label={name}
    aria-pressed={isOn}
    disabled={isOff}
    onClick={onClick}
  >
    {children}
  </button>
)

/** On a narrow screen all that can be done with a spot stands in one row. */
const Label = ({ wide, narrow }: { readonly wide: string; readonly narrow: string }) => (
  <>
    <span className="wide">{wide}</span>
    <span className="narrow" aria-hidden="true">
      {narrow}
    </span>
  </>
)

const barsOf = ({ bars }: Score, { from, to }: ListedSpot): Passage => ({
  from: Math.max(
    0,
    bars.findLastIndex(({ start }) => start <= from),
  ),
  to: Math.max(
    0,
    bars.findLastIndex(({ start }) => start < to),
  ),
})
