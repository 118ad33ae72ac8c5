import { useEffect, useState } from 'react'
import { defaultSettings, isReach, spanChoices } from '@/app/settings'
import type { Key } from '@/music/units'
import { fingeringText } from '@/text/fingering'
import { useApp, useSelected } from './context'

/** How far the hand reaches: by its size, or as measured at the keys. */
export const HandSpan = () => {
  const app = useApp()
  const words = fingeringText.span
  const span = useSelected(app.settings, (state) => state.span)
  const [isMeasuring, setMeasuring] = useState(false)
  const measured = typeof span === 'number'
  return (
    <>
      <label>
        {words.title}
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
              {words.sizes[size]}
            </option>
          ))}
          {measured && <option value="measured">{words.measured(span)}</option>}
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
          {words.measure}
        </button>
      )}
    </>
  )
}

/** The widest interval that is held at one time. */
const Measure = ({ onDone }: { readonly onDone: (reach: number | undefined) => void }) => {
  const app = useApp()
  const words = fingeringText.span
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
    <div role="group" aria-label={words.measuring} className="row">
      <p role="status">{widest === 0 ? words.play : words.soFar(widest)}</p>
      <span className="row tight">
        <button type="button" disabled={widest === 0} onClick={() => onDone(widest)}>
          {words.keep}
        </button>
        <button type="button" onClick={() => onDone(undefined)}>
          {words.leave}
        </button>
      </span>
    </div>
  )
}
