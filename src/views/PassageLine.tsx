import type { ReactNode } from 'react'
import type { Practising } from '@/app/practising'
import { describeRemedy } from '@/app/speech'
import { buildUpText, nameExercise } from '@/text/buildUp'
import { drillText } from '@/text/drill'
import { phrase } from './phrase'

/** Where in its build-up an exercise is: the passage as a thin line, the exercise on it, and what it is for. */
export const PassageLine = ({ practising }: { readonly practising: Practising }) => {
  const { place, remedy, written } = practising
  if (remedy !== undefined) return <p className="passage-line">{describeRemedy(remedy)}</p>
  if (!place) return null
  const { from, to, number, of, exercise } = place
  const kind = nameExercise(exercise)
  const length = Math.max(1, to - from)
  const begin = (written.start - from) / length
  const end = (written.start + (written.onsets.at(-1)?.start ?? 0) - from) / length
  return (
    <div className="passage-line" data-number={number} data-of={of}>
      <svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <path className="passage-whole" d="M0 3h100" />
        <path
          className="passage-part"
          d={`M${100 * begin} 3H${Math.max(100 * end, 100 * begin + 1)}`}
        />
      </svg>
      <p>
        {phrase(drillText.exercise<ReactNode>(number, of, kind, (words) => <b>{words}</b>))}
        <span className="soft">{buildUpText.purposes[exercise.why]}</span>
      </p>
    </div>
  )
}
