import { describeRemedy } from '@/app/speech'
import { drillText } from '@/text/drill'
import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'

/** What can be done about a problem: one key each. They take the place of the tray, which stands still meanwhile. */
export const Remedies = () => {
  const app = useApp()
  const problem = useSelected(app.practice.store, (state) => state?.problem)
  return (
    <div
      className="remedies"
      role="group"
      aria-label={drillText.remedies}
      onPointerDown={keepFocus}
    >
      {problem ? (
        problem.remedies.map((remedy, i) => (
          <button
            key={remedy.kind}
            type="button"
            data-chosen={i === problem.chosen}
            onClick={() => app.practice.remedy(i)}
          >
            <kbd>{i + 1}</kbd>
            <span>{describeRemedy(remedy)}</span>
          </button>
        ))
      ) : (
        <button type="button" data-chosen="true" onClick={() => app.buildUpHere()}>
          <kbd>1</kbd>
          <span>{drillText.buildUp}</span>
        </button>
      )}
    </div>
  )
}
