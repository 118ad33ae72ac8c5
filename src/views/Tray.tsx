import type { ReactNode } from 'react'
import { drillText } from '@/text/drill'
import { phrase } from './phrase'

/** The streak: as many counters as the goal, in a tray. Each clean repetition moves one across. */
export const Tray = ({ streak, goal }: { readonly streak: number; readonly goal: number }) => {
  const gap = 2
  const width = 2 * goal + gap
  const counters = Array.from({ length: goal }, (_, i) => i)
  // The counter nearest the gap crosses first and lies farthest out, as on a music desk.
  const placeOf = (i: number): number => (i < streak ? width - 1 - i : goal - 1 - (i - streak))
  return (
    <div
      className="tray"
      role="img"
      aria-label={drillText.streak(streak, goal)}
      data-streak={streak}
    >
      <svg
        viewBox={`0 0 ${width * 10 + 4} 16`}
        style={{ aspectRatio: `${width * 10 + 4} / 16` }}
        aria-hidden="true"
      >
        <rect className="tray-bed" x="0.5" y="0.5" width={width * 10 + 3} height="15" rx="3" />
        <path className="tray-bar" d={`M${goal * 10 + 12} 3v10`} />
        {counters.map((i) => (
          <g
            key={i}
            className="counter"
            style={{ transform: `translateX(${placeOf(i) * 10 + 7}px)` }}
          >
            <circle cy="8" r="4.3" />
            <circle className="counter-rim" cy="8" r="2.9" />
          </g>
        ))}
      </svg>
      <p className="tray-figure" aria-hidden="true">
        {phrase(drillText.figureOf<ReactNode>(<b>{streak}</b>, goal))}
      </p>
    </div>
  )
}
