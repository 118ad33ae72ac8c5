import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'
import { SoundNote } from './SoundNote'

/** What can be asked for in a drill; each has its key, so that the hands need not go to the mouse. */
export const PracticeControls = () => {
  const app = useApp()
  const metronome = useSelected(app.practice.store, (state) => state?.metronome ?? 'off')
  const hearing = useSelected(app.practice.store, (state) => state?.hearing ?? false)
  const simulated = useSelected(app.practice.store, (state) => state?.simulated ?? false)
  return (
    <div className="practice-controls" onPointerDown={keepFocus}>
      <button
        type="button"
        aria-pressed={metronome !== 'off'}
        onClick={() => void app.practice.toggleMetronome()}
      >
        Metronome <kbd>Space</kbd>
      </button>
      <button type="button" aria-pressed={hearing} onClick={() => void app.practice.hear()}>
        Hear it <kbd>Enter</kbd>
      </button>
      <button type="button" onClick={() => app.practice.lower()}>
        Slower <kbd>↓</kbd>
      </button>
      <button type="button" onClick={() => app.practice.raise()}>
        Faster <kbd>↑</kbd>
      </button>
      <button type="button" onClick={() => app.neighbour(-1)}>
        <kbd>←</kbd> Previous
      </button>
      <button type="button" onClick={() => app.neighbour(1)}>
        Next <kbd>→</kbd>
      </button>
      <button
        type="button"
        aria-pressed={simulated}
        onClick={() => void app.practice.toggleSimulated()}
      >
        Simulated player
      </button>
      <SoundNote />
      <button type="button" onClick={() => app.endSession()}>
        End <kbd>Esc</kbd>
      </button>
    </div>
  )
}
