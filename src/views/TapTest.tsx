import { tapKeys, tapTempo, usableLag, type TapTestState } from '@/app/tapTest'
import { useApp, useSelected } from './context'
import { KeyboardStrip } from './KeyboardStrip'
import { keepFocus, useKeys } from './shortcuts'
import { SoundNote } from './SoundNote'
import { TapStrokes } from './TapStrokes'
import { describeLag, describeTapTest } from './words'

/** The lag of person and machine against the metronome's clicks: measured, shown, and used or not. */
export const TapTest = () => {
  const app = useApp()
  const state = useSelected(app.tapTest.store, (now) => now)
  const inUse = useSelected(app.settings, (settings) => settings.lagMs)
  const usable = usableLag(state)
  const use = (lagMs: number | undefined): void => {
    if (lagMs !== undefined) app.changeSettings({ lagMs })
  }
  useKeys({
    Space: () => void app.tapTest.toggle(),
    Enter: () => use(usable),
    Escape: () => app.goBack(),
  })
  return (
    <main className="page tap-test">
      <h1>Tap test</h1>
      <p>
        Your key comes in a little before or after the click, always by about as much: loudspeaker
        and keyboard take their time, and most people strike just before a click. Strike any key
        with each of sixteen clicks, and the judge leaves this lag out when it says early or late.
      </p>
      <p className="tap-message" role="status" aria-live="polite" data-state={state.kind}>
        {describeTapTest(state, tapTempo)}
      </p>
      <TapStrokes
        strokes={state.kind === 'listening' || state.kind === 'done' ? state.strokes : []}
        lag={state.kind === 'done' && state.lag.kind !== 'few' ? state.lag.lag : undefined}
      />
      <div className="row tap-controls" onPointerDown={keepFocus}>
        <button type="button" className="primary" onClick={() => void app.tapTest.toggle()}>
          {toggleWords[state.kind]} <kbd>Space</kbd>
        </button>
        <button
          type="button"
          disabled={usable === undefined || usable === inUse}
          onClick={() => use(usable)}
        >
          Use it <kbd>Enter</kbd>
        </button>
        <button type="button" disabled={inUse === 0} onClick={() => use(0)}>
          Use none
        </button>
        <button type="button" onClick={() => app.goBack()}>
          Back <kbd>Esc</kbd>
        </button>
        <SoundNote />
      </div>
      <KeyboardStrip keys={tapKeys} />
      <p aria-live="polite" className="tap-in-use" data-lag={inUse}>
        In use: {describeLag(inUse)}.{' '}
        <span className="soft">
          Measure again with other loudspeakers, headphones or another keyboard.
        </span>
      </p>
    </main>
  )
}

const toggleWords: Readonly<Record<TapTestState['kind'], string>> = {
  ready: 'Start the clicks',
  starting: 'Stop',
  silent: 'Try again',
  listening: 'Stop',
  done: 'Measure again',
}
