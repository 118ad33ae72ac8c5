import type { Verdict } from '@/judge/repetition'
import { drillText } from '@/text/drill'

/** As many as can be told apart from the music desk. */
const shown = 25
const gate = 5
const step = 9
const gap = 9

/** The last repetitions as pencil strokes, five to a gate; the flawed ones crossed, broken off ones half. */
export const Strokes = ({ verdicts }: { readonly verdicts: readonly Verdict[] }) => {
  // Whole gates leave at the left, so that a stroke keeps its place until its gate goes.
  const first = Math.max(0, Math.ceil((verdicts.length - shown) / gate) * gate)
  const last = verdicts.slice(first)
  const width = (shown / gate) * (gate * step + gap)
  const x = (i: number): number => 5 + i * step + Math.floor(i / gate) * gap
  return (
    <svg
      className="strokes"
      viewBox={`0 0 ${width} 30`}
      preserveAspectRatio="xMinYMid meet"
      role="img"
      aria-label={describe(verdicts)}
    >
      {last.map((verdict, i) => (
        <g key={first + i} className={`stroke-${verdict}`} data-verdict={verdict}>
          <path d={verdict === 'brokenOff' ? `M${x(i)} 16v11` : `M${x(i) + 0.6} 3l-1.2 24`} />
          {verdict === 'flawed' && <path d={`M${x(i) - 4} 19l8 -8`} />}
        </g>
      ))}
    </svg>
  )
}

const describe = (verdicts: readonly Verdict[]): string => {
  const count = (verdict: Verdict): number => verdicts.filter((v) => v === verdict).length
  return drillText.verdicts(count('clean'), count('flawed'), count('brokenOff'))
}
