import type { Said } from '@/app/practiceState'
import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'

/** One sentence at a time: what the coach asks, or the last verdict. It keeps its place when empty. */
export const Message = () => {
  const app = useApp()
  const said = useSelected(app.practice.store, (state) => state?.said)
  const paused = useSelected(app.practice.store, (state) => state?.coach.paused)
  const verdict = useSelected(app.practice.store, (state) => state?.verdict)
  const simulated = useSelected(app.practice.store, (state) => state?.simulated)
  return (
    <div className="practice-message" data-paused={paused !== undefined}>
      <p role="status" aria-live="polite">
        {simulated && <span className="soft">Simulated player, nothing is recorded. </span>}
        {sentenceOf(said, verdict)}
      </p>
      {paused && (
        <button type="button" onPointerDown={keepFocus} onClick={() => app.practice.goOn()}>
          Go on <kbd>Space</kbd>
        </button>
      )}
    </div>
  )
}

const sentenceOf = (said: Said | undefined, verdict: string | undefined): string => {
  switch (said?.kind) {
    case 'reason':
      return said.sentence
    case 'secure':
      return 'Secure for today: the streak is met at the goal tempo.'
    case 'stray':
      return 'That key begins nothing here.'
    case 'unplugged':
      return 'The keyboard was unplugged: that repetition does not count. Plug it in and go on.'
    case undefined:
      return verdict ?? 'Play when you are ready: the first key begins a repetition.'
  }
}
