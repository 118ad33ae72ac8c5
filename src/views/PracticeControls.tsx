import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'

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

/** Why nothing sounds, or not yet. */
const SoundNote = () => {
  const app = useApp()
  const sound = useSelected(app.sound, (state) => state)
  switch (sound.kind) {
    case 'asleep':
    case 'ready':
      return null
    case 'off':
      return <p className="sound-note soft">Sound is off: see Options.</p>
    case 'blocked':
      return <p className="sound-note soft">The browser holds the sound back: click once more.</p>
    case 'loading':
      return (
        <p className="sound-note soft">
          Fetching the piano: {sound.loaded} of {sound.wanted}
        </p>
      )
    case 'failed':
      return <p className="sound-note soft">{sound.message}</p>
  }
}
