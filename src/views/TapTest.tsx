import { tapKeys, tapTempo, usableLag } from '@/app/tapTest'
import { keysText } from '@/text/keys'
import { tapTestText } from '@/text/tapTest'
import { useApp, useSelected } from './context'
import { KeyboardStrip } from './KeyboardStrip'
import { PageKeys } from './PageKeys'
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
      <h1>{tapTestText.title}</h1>
      <p>{tapTestText.why}</p>
      <p className="tap-message" role="status" aria-live="polite" data-state={state.kind}>
        {describeTapTest(state, tapTempo)}
      </p>
      <TapStrokes
        strokes={state.kind === 'listening' || state.kind === 'done' ? state.strokes : []}
        lag={state.kind === 'done' && state.lag.kind !== 'few' ? state.lag.lag : undefined}
      />
      <div className="row tap-controls" onPointerDown={keepFocus}>
        <button type="button" className="primary" onClick={() => void app.tapTest.toggle()}>
          {tapTestText.toggle[state.kind]} <kbd>{keysText.names.space}</kbd>
        </button>
        <button
          type="button"
          disabled={usable === undefined || usable === inUse}
          onClick={() => use(usable)}
        >
          {tapTestText.use} <kbd>{keysText.names.enter}</kbd>
        </button>
        <button type="button" disabled={inUse === 0} onClick={() => use(0)}>
          {tapTestText.useNone}
        </button>
        <button type="button" onClick={() => app.goBack()}>
          {tapTestText.back} <kbd>{keysText.names.escape}</kbd>
        </button>
        <PageKeys
          isPlayed
          keys={[
            { key: 'space', shown: keysText.names.space, words: keysText.tapTest.toggle },
            { key: 'enter', shown: keysText.names.enter, words: keysText.tapTest.use },
            { key: 'escape', shown: keysText.names.escape, words: keysText.tapTest.back },
          ]}
        />
        <SoundNote />
      </div>
      <KeyboardStrip keys={tapKeys} />
      <p aria-live="polite" className="tap-in-use" data-lag={inUse}>
        {tapTestText.inUse(describeLag(inUse))}{' '}
        <span className="soft">{tapTestText.measureAgain}</span>
      </p>
    </main>
  )
}
