import type { Said } from '@/app/practiceState'
import type { Practising } from '@/app/practising'
import type { Repetition } from '@/judge/repetition'
import { nameKey } from '@/music/spelling'
import type { Key } from '@/music/units'
import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'
import { describeRepetition } from './words'

/** One sentence at a time: what the coach asks, or the last verdict. It keeps its place when empty. */
export const Message = ({ signature }: Pick<Practising, 'signature'>) => {
  const app = useApp()
  const said = useSelected(app.practice.store, (state) => state?.said)
  const paused = useSelected(app.practice.store, (state) => state?.coach.paused)
  const last = useSelected(app.practice.store, (state) => state?.last)
  const simulated = useSelected(app.practice.store, (state) => state?.simulated)
  return (
    <div
      className="practice-message"
      data-said={said?.kind ?? last?.verdict ?? 'ready'}
      data-paused={paused !== undefined}
    >
      <p role="status" aria-live="polite">
        {simulated && <span className="soft">Simulated player, nothing is recorded. </span>}
        {sentenceOf(said, last, (key) => nameKey(key, signature))}
      </p>
      {paused && (
        <button type="button" onPointerDown={keepFocus} onClick={() => app.practice.goOn()}>
          Go on <kbd>Space</kbd>
        </button>
      )}
    </div>
  )
}

const sentenceOf = (
  said: Said | undefined,
  last: Repetition | undefined,
  nameOf: (key: Key) => string,
): string => {
  switch (said?.kind) {
    case 'reason':
      return said.sentence
    case 'secure':
      return 'Secure for today: the streak is met at the goal tempo.'
    case 'stray':
      return 'That key begins nothing here.'
    case undefined:
      return last
        ? describeRepetition(last, nameOf)
        : 'Play when you are ready: the first key begins a repetition.'
  }
}
