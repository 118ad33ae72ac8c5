import type { ReactNode } from 'react'
import { isFree, reachOf, type DrillCommand } from '@/app/commandKeys'
import type { TimeSignature } from '@/music/music'
import type { Key } from '@/music/units'
import { useApp, useSelected } from './context'
import { keepFocus } from './shortcuts'
import { SoundNote } from './SoundNote'
import { bindingWord, perBeatWord } from './words'

/** What can be asked for in a drill; each has its key, so that the hands need not go to the mouse. */
export const PracticeControls = ({
  keys,
  isItem,
  time,
  onKeys,
  onNotebook,
}: {
  /** The keys of what is drilled. */
  readonly keys: readonly Key[]
  /** It is an item of today: before and after it stand others of the day. */
  readonly isItem: boolean
  readonly time: TimeSignature
  readonly onKeys: () => void
  readonly onNotebook: () => void
}) => {
  const app = useApp()
  const metronome = useSelected(app.practice.store, (state) => state?.metronome ?? 'off')
  const hearing = useSelected(app.practice.store, (state) => state?.hearing ?? false)
  const simulated = useSelected(app.practice.store, (state) => state?.simulated ?? false)
  const commands = useSelected(app.settings, (state) => state.commands)
  const reach = reachOf(keys)
  /** The key of the computer, or the one of the instrument that means the same here. */
  const keyFor = (command: DrillCommand, key: string): ReactNode => {
    const bound = commands[command]
    return bound && isFree(bound, reach) ? (
      <kbd className="bound">{bindingWord(bound)}</kbd>
    ) : (
      <kbd>{key}</kbd>
    )
  }
  return (
    <div className="practice-controls" onPointerDown={keepFocus}>
      <button
        type="button"
        aria-pressed={metronome !== 'off'}
        onClick={() => void app.practice.toggleMetronome()}
      >
        Metronome
        <ClickPattern time={time} /> {keyFor('metronome', 'Space')}
      </button>
      <button type="button" aria-pressed={hearing} onClick={() => void app.practice.hear()}>
        Hear it {keyFor('hear', 'Enter')}
      </button>
      <button type="button" onClick={() => app.practice.again()}>
        Again {keyFor('again', '0')}
      </button>
      <button type="button" onClick={() => app.practice.lower()}>
        Slower <kbd>↓</kbd>
      </button>
      <button type="button" onClick={() => app.practice.raise()}>
        Faster <kbd>↑</kbd>
      </button>
      <button type="button" onClick={() => app.neighbour(-1)}>
        {keyFor('back', '←')} {isItem ? 'Later' : 'Previous'}
      </button>
      <button type="button" onClick={() => app.neighbour(1)}>
        Next {keyFor('next', '→')}
      </button>
      <button
        type="button"
        aria-pressed={simulated}
        onClick={() => void app.practice.toggleSimulated()}
      >
        Simulated<span className="unseen"> player</span>
      </button>
      <button type="button" onClick={onNotebook}>
        Notebook <kbd>9</kbd>
      </button>
      <SoundNote />
      <button type="button" className="all-keys" onClick={onKeys}>
        <span className="unseen">Keys </span>
        <kbd>?</kbd>
      </button>
      <button type="button" onClick={() => app.endSession()}>
        End <kbd>Esc</kbd>
      </button>
    </div>
  )
}

/** How the metronome clicks where it is not simply the beats: short, since the row is full; whole for those who hear it. */
const ClickPattern = ({ time }: { readonly time: TimeSignature }) => {
  const app = useApp()
  const perBeat = useSelected(app.settings, (state) => state.perBeat)
  const silentBars = useSelected(app.settings, (state) => state.silentBars)
  if (perBeat === 1 && !silentBars) return null
  const signs = [...(perBeat > 1 ? [`×${perBeat}`] : []), ...(silentBars ? ['2–2'] : [])]
  const words = [
    ...(perBeat > 1 ? [perBeatWord(perBeat, time)] : []),
    ...(silentBars ? ['two bars of clicks, two silent'] : []),
  ].join(', ')
  return (
    <span className="soft click-pattern" title={words}>
      <span aria-hidden="true">{signs.join(' ')}</span>
      <span className="unseen"> {words}</span>
    </span>
  )
}
