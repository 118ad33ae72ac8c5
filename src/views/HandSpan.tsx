import { useEffect, useState } from 'react'
import { defaultSettings, isReach, spanChoices } from '@/app/settings'
import type { HandSpan as Size } from '@/fingering/spans'
import type { Key } from '@/music/units'
import { useApp, useSelected } from './context'

const sizeWords: Readonly<Record<Size, string>> = {
  small: 'small: an octave',
  medium: 'medium: a ninth',
  large: 'large: a tenth',
}

/** From a fifth to an octave and a fifth, by semitones. */
const intervalWords: Readonly<Record<number, string>> = {
  7: 'a fifth',
  8: 'a minor sixth',
  9: 'a sixth',
  10: 'a minor seventh',
  11: 'a major seventh',
  12: 'an octave',
  13: 'a minor ninth',
  14: 'a ninth',
  15: 'a minor tenth',
  16: 'a tenth',
  17: 'an eleventh',
  18: 'a wide eleventh',
  19: 'a twelfth',
}

/** How far the hand reaches: by its size, or as measured at the keys. */
export const HandSpan = () => {
  const app = useApp()
  const span = useSelected(app.settings, (state) => state.span)
  const [isMeasuring, setMeasuring] = useState(false)
  const measured = typeof span === 'number'
  return (
    <>
      <label>
        Hand
        <select
          value={measured ? 'measured' : span}
          onChange={({ target }) =>
            app.changeSettings({
              span: spanChoices.find((size) => size === target.value) ?? defaultSettings.span,
            })
          }
        >
          {spanChoices.map((size) => (
            <option key={size} value={size}>
              {sizeWords[size]}
            </option>
          ))}
          {measured && <option value="measured">measured: {intervalWords[span]}</option>}
        </select>
      </label>
      {isMeasuring ? (
        <Measure
          onDone={(reach) => {
            setMeasuring(false)
            if (reach !== undefined) app.changeSettings({ span: reach })
          }}
        />
      ) : (
        <button type="button" onClick={() => setMeasuring(true)}>
          Measure my hand …
        </button>
      )}
    </>
  )
}

/** The widest interval that is held at one time. */
const Measure = ({ onDone }: { readonly onDone: (reach: number | undefined) => void }) => {
  const app = useApp()
  const [widest, setWidest] = useState(0)
  useEffect(() => {
    const held = new Set<Key>()
    return app.instrument.borrow((event) => {
      if (event.kind === 'pedal') return
      if (event.kind === 'up') held.delete(event.key)
      else held.add(event.key)
      const reach = held.size < 2 ? 0 : Math.max(...held) - Math.min(...held)
      if (isReach(reach)) setWidest((now) => Math.max(now, reach))
    })
  }, [app])
  return (
    <div role="group" aria-label="Measure my hand" className="row">
      <p role="status">
        {widest === 0
          ? 'Play the widest interval that one hand reaches without strain, both keys held together.'
          : `So far ${intervalWords[widest]}.`}
      </p>
      <button type="button" disabled={widest === 0} onClick={() => onDone(widest)}>
        Keep it
      </button>
      <button type="button" onClick={() => onDone(undefined)}>
        Leave it
      </button>
    </div>
  )
}
