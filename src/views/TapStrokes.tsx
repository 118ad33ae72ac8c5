import type { ReactNode } from 'react'
import { tapsWanted } from '@/app/tapTest'
import type { TapStroke } from '@/judge/tapTest'
import { tapTestText } from '@/text/tapTest'
import { phrase } from './phrase'

/** Milliseconds from the line of the clicks to the edge; farther strokes stand at the edge. */
const edge = 150
const middle = 50
const step = 20

/** The strikes one after another as pencil strokes: on the line with the click, above it early, below it late. */
export const TapStrokes = ({
  strokes,
  lag,
}: {
  readonly strokes: readonly TapStroke[]
  /** What was measured, drawn through them all. */
  readonly lag: number | undefined
}) => {
  const places = Array.from({ length: tapsWanted }, (_, i) => x(i))
  return (
    <div className="taps">
      <p className="taps-words soft" aria-hidden="true">
        <span>{tapTestText.early}</span>
        <span>{tapTestText.click}</span>
        <span>{tapTestText.late}</span>
      </p>
      <svg viewBox={`0 0 ${tapsWanted * step} 100`} role="img" aria-label={describe(strokes)}>
        <path className="taps-line" d={`M0 ${middle}H${tapsWanted * step}`} />
        {places.map((at) => (
          <path key={at} className="taps-line" d={`M${at} ${middle - 4}v8`} />
        ))}
        {lag !== undefined && <path className="taps-lag" d={`M0 ${y(lag)}H${tapsWanted * step}`} />}
        {strokes.map(({ click, by, counted }, i) => (
          <g key={click} className={counted ? 'tap' : 'tap tap-aside'} data-by={Math.round(by)}>
            <path className="tap-stem" d={`M${x(i)} ${middle}V${y(by)}`} />
            <path d={`M${x(i) - 5} ${y(by) + 0.5}l10 -1`} />
          </g>
        ))}
      </svg>
      <p className="taps-count" aria-hidden="true">
        {phrase(tapTestText.counted<ReactNode>(<b>{strokes.length}</b>, tapsWanted))}
      </p>
    </div>
  )
}

const x = (i: number): number => (i + 0.5) * step
const y = (by: number): number =>
  middle + (Math.min(edge, Math.max(-edge, by)) / edge) * (middle - 4)

const describe = (strokes: readonly TapStroke[]): string => {
  const early = strokes.filter(({ by }) => by < 0).length
  return tapTestText.strikes(strokes.length, tapsWanted, early, strokes.length - early)
}
