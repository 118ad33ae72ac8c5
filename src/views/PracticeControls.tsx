import type { ReactNode } from 'react'
import { isFree, reachOf, type DrillCommand } from '@/app/commandKeys'
import type { TimeSignature } from '@/music/music'
import type { Key } from '@/music/units'
import { drillText } from '@/text/drill'
import { keysText } from '@/text/keys'
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
        {drillText.controls.metronome}
        <ClickPattern time={time} /> {keyFor('metronome', keysText.names.space)}
      </button>
      <button type="button" aria-pressed={hearing} onClick={() => void app.practice.hear()}>
        {drillText.controls.hear} {keyFor('hear', keysText.names.enter)}
      </button>
      <button type="button" onClick={() => app.practice.again()}>
        {drillText.controls.again} {keyFor('again', '0')}
      </button>
      <button type="button" onClick={() => app.practice.lower()}>
        {drillText.controls.slower} <kbd>↓</kbd>
      </button>
      <button type="button" onClick={() => app.practice.raise()}>
        {drillText.controls.faster} <kbd>↑</kbd>
      </button>
      <button type="button" onClick={() => app.neighbour(-1)}>
        {keyFor('back', '←')} {isItem ? drillText.controls.later : drillText.controls.previous}
      </button>
      <button type="button" onClick={() => app.neighbour(1)}>
        {drillText.controls.next} {keyFor('next', '→')}
      </button>
      <button
        type="button"
        aria-pressed={simulated}
        aria-keyshortcuts="8"
        onClick={() => void app.practice.toggleSimulated()}
      >
        {drillText.controls.simulated.shown}
        <span className="unseen">{drillText.controls.simulated.rest}</span>
      </button>
      <button type="button" onClick={onNotebook}>
        {drillText.controls.notebook} <kbd>9</kbd>
      </button>
      <SoundNote />
      <button type="button" className="all-keys" onClick={onKeys}>
        <span className="unseen">{drillText.controls.keys} </span>
        <kbd>?</kbd>
      </button>
      <button type="button" onClick={() => app.endSession()}>
        {drillText.controls.end} <kbd>{keysText.names.escape}</kbd>
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
    ...(silentBars ? [drillText.controls.silentBars] : []),
  ].join(', ')
  return (
    <span className="soft click-pattern" title={words}>
      <span aria-hidden="true">{signs.join(' ')}</span>
      <span className="unseen"> {words}</span>
    </span>
  )
}
