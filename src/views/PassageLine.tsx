import type { ReactNode } from 'react'
import type { Practising } from '@/app/practising'
import { describeRemedy } from '@/app/speech'
import { buildUpText, nameExercise } from '@/text/buildUp'
import { drillText } from '@/text/drill'
import { PassageStrip } from './PassageStrip'
import { phrase } from './phrase'

/** Where in its build-up an exercise is: the passage as a thin line, the exercise on it, and what it is for. */
export const PassageLine = ({ practising }: { readonly practising: Practising }) => {
  const { place, remedy, written } = practising
  if (remedy !== undefined) return <p className="passage-line">{describeRemedy(remedy)}</p>
  if (!place) return null
  const { from, to, number, of, exercise } = place
  const kind = nameExercise(exercise)
  const last = written.start + (written.onsets.at(-1)?.start ?? 0)
  return (
    <div className="passage-line" data-number={number} data-of={of}>
      <PassageStrip passage={{ from, to }} part={{ from: written.start, to: last }} />
      <p>
        {phrase(drillText.exercise<ReactNode>(number, of, kind, (words) => <b>{words}</b>))}
        <span className="soft">{buildUpText.purposes[exercise.why]}</span>
      </p>
    </div>
  )
}
