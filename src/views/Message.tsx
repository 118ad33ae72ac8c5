import type { PracticeState, Said, Sign as SignKind } from '@/app/practiceState'
import type { Practising } from '@/app/practising'
import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'
import { Sign } from './Sign'
import { describeChunk } from './words'

/** One sentence at a time: what the coach asks, or the last verdict. It keeps its place when empty. */
export const Message = ({ practising }: { readonly practising: Practising }) => {
  const app = useApp()
  const state = useSelected(app.practice.store, (now) => now)
  if (!state) return <div className="practice-message" />
  const { breath, resting, simulated } = state
  const stands = state.coach.paused !== undefined || resting
  const sign = signOf(state)
  return (
    <div className="practice-message" data-paused={stands}>
      {sign && <Sign kind={sign} />}
      <p role="status" aria-live="polite">
        {simulated && <span className="soft">Simulated player, nothing is recorded. </span>}
        {sentenceOf(state)}
        {breath && practising.next && (
          <span className="next soft">
            Next: {describeChunk(practising.score, practising.next.chunk)}
          </span>
        )}
      </p>
      {(stands || breath) && (
        <button
          type="button"
          onPointerDown={keepFocus}
          onClick={() => app.practice.goOnOrMetronome()}
        >
          Go on <kbd>Space</kbd>
        </button>
      )}
      {breath && (
        <i className="breath" style={{ animationDuration: `${breath.until - breath.since}ms` }} />
      )}
    </div>
  )
}

const signOf = ({ breath, resting, said }: PracticeState): SignKind | 'breath' | undefined => {
  if (breath) return 'breath'
  if (resting) return 'pause'
  return said?.kind === 'secure' ? 'done' : said?.kind === 'reason' ? said.sign : undefined
}

const sentenceOf = ({ resting, said, verdict }: PracticeState): string =>
  resting ? 'A pause: whatever you play now is not judged.' : wordsOf(said, verdict)

const wordsOf = (said: Said | undefined, verdict: string | undefined): string => {
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
