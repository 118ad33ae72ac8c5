import type { Tempo } from '@/music/units'
import { drillText } from '@/text/drill'

/** The tempo ladder as marks on an upright scale; the weight stands at the present rung. */
export const TempoScale = ({
  rungs,
  rung,
  goal,
  beat,
}: {
  readonly rungs: readonly Tempo[]
  readonly rung: Tempo
  readonly goal: Tempo
  /** Formats a tempo in the beat of the time signature. */
  readonly beat: (tempo: Tempo) => string
}) => {
  const height = 100
  const place = (tempo: Tempo): number => {
    const i = rungs.indexOf(tempo)
    return rungs.length < 2 ? height / 2 : height - (i / (rungs.length - 1)) * height
  }
  const number = rungs.indexOf(rung) + 1
  const label = drillText.ladder(beat(rung), number, rungs.length, beat(goal))
  return (
    <div className="scale" role="img" aria-label={label} data-rung={rung}>
      <div className="scale-rod" aria-hidden="true">
        {rungs.map((tempo) => (
          <i
            key={tempo}
            className={tempo === goal ? 'mark mark-goal' : 'mark'}
            style={{ top: `${place(tempo)}%` }}
          />
        ))}
        <b className="goal" style={{ top: `${place(goal)}%` }} data-here={rung === goal}>
          {beat(goal)}
        </b>
        <b className="weight" style={{ translate: `0 ${place(rung)}cqh` }}>
          {beat(rung)}
        </b>
      </div>
    </div>
  )
}
