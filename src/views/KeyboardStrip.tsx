import { useEffect, useRef, type PointerEvent } from 'react'
import { isBlackKey } from '@/music/pitch'
import { nameKey } from '@/music/spelling'
import { key, ms, type Key } from '@/music/units'
import { drillText } from '@/text/drill'
import { useApp, useSelected } from './context'

/** Only the stretch of the keyboard that holds these keys, with the pressed ones. It can be played. */
export const KeyboardStrip = ({ keys }: { readonly keys: readonly Key[] }) => {
  const { screenKeys, instrument, letters } = useApp()
  const hasKeyboard = useSelected(
    instrument.store,
    ({ midi }) => midi.kind === 'ready' && midi.inputs.some(({ standing }) => standing === 'there'),
  )
  const printed = hasKeyboard ? nothingPrinted : letters()
  const box = useRef<HTMLDivElement>(null)
  const { white, black } = stretchOf(keys)
  useEffect(
    () =>
      instrument.watchKeys((pressed, down) => {
        const element = box.current?.querySelector(`[data-key="${pressed}"]`)
        element?.classList.toggle('down', down)
      }),
    [instrument],
  )
  const keyUnder = (event: PointerEvent): Key | undefined => {
    const hit = document.elementFromPoint(event.clientX, event.clientY)
    const name = hit instanceof Element ? hit.getAttribute('data-key') : null
    return name === null ? undefined : key(Number(name))
  }
  const press = (event: PointerEvent): void => {
    const pressed = keyUnder(event)
    if (pressed === undefined) return
    event.preventDefault()
    box.current?.setPointerCapture(event.pointerId)
    screenKeys.press(pressed, ms(event.timeStamp), event.pointerId)
  }
  const release = (event: PointerEvent): void =>
    screenKeys.release(ms(event.timeStamp), event.pointerId)
  return (
    <div
      ref={box}
      className="strip"
      role="img"
      aria-label={drillText.keyboard(
        nameKey(white[0] ?? key(60)),
        nameKey(white.at(-1) ?? key(72)),
      )}
      onPointerDown={press}
      onPointerUp={release}
      onPointerCancel={release}
    >
      {white.map((k) => (
        <i key={k} className="white" data-key={k}>
          <span>{printed.get(k) ?? (k % 12 === 0 ? nameKey(k) : '')}</span>
        </i>
      ))}
      {black.map((k) => (
        <i
          key={k}
          className="black"
          data-key={k}
          style={{
            left: `${(white.filter((w) => w < k).length / white.length) * 100}%`,
            width: `${62 / white.length}%`,
          }}
        >
          <span>{printed.get(k)}</span>
        </i>
      ))}
    </div>
  )
}

/** With a real keyboard the computer's letters would only distract. */
const nothingPrinted: ReadonlyMap<Key, string> = new Map()

/** At least an octave and a half, so that a short chunk does not get keys like doors. */
const leastWhite = 11

const stretchOf = (
  keys: readonly Key[],
): { readonly white: readonly Key[]; readonly black: readonly Key[] } => {
  let low = whiteAt(Math.min(...keys) - 2, -1)
  let high = whiteAt(Math.max(...keys) + 2, 1)
  while (countWhite(low, high) < leastWhite) {
    high = whiteAt(high + 1, 1)
    if (countWhite(low, high) < leastWhite) low = whiteAt(low - 1, -1)
  }
  const all = Array.from({ length: high - low + 1 }, (_, i) => key(low + i))
  return { white: all.filter((k) => !isBlackKey(k)), black: all.filter(isBlackKey) }
}

const whiteAt = (k: number, step: 1 | -1): number => {
  const inRange = Math.min(108, Math.max(21, k))
  return isBlackKey(key(inRange)) ? inRange + step : inRange
}

const countWhite = (low: number, high: number): number => {
  let n = 0
  for (let k = low; k <= high; k++) if (!isBlackKey(key(k))) n++
  return n
}
