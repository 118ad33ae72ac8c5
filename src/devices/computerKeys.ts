import { key, ms, type Key } from '@/music/units'
import { isBlackKey } from '@/music/pitch'
import type { Device } from './devices'
import { createHolding } from './holding'

/** The computer's keyboard as piano keys. */
export interface ComputerKeys extends Device {
  /** Puts the leftmost white key elsewhere: see `layOut`. Keys that are down go up. */
  readonly place: (base: Key) => void
  /** Which physical key (`KeyboardEvent.code`) plays which piano key. */
  readonly layout: () => ReadonlyMap<string, Key>
}

/** The row under the fingers at rest holds the white keys, */
const homeRow = 'KeyA KeyS KeyD KeyF KeyG KeyH KeyJ KeyK KeyL Semicolon Quote'.split(' ')
/** and the row above it the black ones: the n-th lies between the white keys n - 1 and n. */
const upperRow = 'KeyQ KeyW KeyE KeyR KeyT KeyY KeyU KeyI KeyO KeyP BracketLeft BracketRight'.split(
  ' ',
)

/** From A3, so that the key marked A is an A, and middle C and the octave above it are in reach. */
export const defaultBase = key(57)

/** A key press of the computer tells no force; a middle one lies clear of brushed and struck hard. */
const pressVelocity = 72

/**
 * Eleven white keys from `base` (the next white key down where it is black) with the black ones
 * between them: `layOut(key(60))` puts C4 on the first key of the home row and C#4 above and to its right.
 */
export const layOut = (base: Key): ReadonlyMap<string, Key> => {
  const layout = new Map<string, Key>()
  let white = isBlackKey(base) ? base - 1 : base
  for (const [i, code] of homeRow.entries()) {
    put(layout, code, white)
    if (isBlackKey(key(white - 1))) put(layout, upperRow[i], white - 1)
    if (isBlackKey(key(white + 1))) put(layout, upperRow[i + 1], white + 1)
    white += isBlackKey(key(white + 1)) ? 2 : 1
  }
  return layout
}

/** The base from which all the keys are in reach, starting at the lowest; `undefined` when they lie too far apart. */
export const baseFor = (keys: readonly Key[]): Key | undefined => {
  if (keys.length === 0) return defaultBase
  const lowest = Math.min(...keys)
  const base = key(isBlackKey(key(lowest)) ? lowest - 1 : lowest)
  const inReach = new Set(layOut(base).values())
  return keys.every((k) => inReach.has(k)) ? base : undefined
}

/** Hears `window`, or whatever target gets its key, focus and blur events. */
export const createComputerKeys = (
  target: Pick<EventTarget, 'addEventListener' | 'removeEventListener'>,
  base: Key = defaultBase,
): ComputerKeys => {
  const holding = createHolding()
  let layout = layOut(base)
  const onDown = (event: Event): void => {
    if (!isKeyPress(event)) return
    const pressed = layout.get(event.code)
    if (pressed === undefined || event.ctrlKey || event.altKey || event.metaKey) return
    if (isTyping(event.target)) return
    event.preventDefault()
    if (event.repeat) return
    const at = ms(event.timeStamp)
    holding.feed(event.code, { kind: 'down', key: pressed, velocity: pressVelocity, at })
  }
  const onUp = (event: Event): void => {
    if (!isKeyPress(event)) return
    const at = ms(event.timeStamp)
    // While the command key is down macOS keeps the ups of the other keys back: let go of all.
    if (event.key === 'Meta') holding.letGoAll(at)
    else holding.letGo(event.code, at)
  }
  const onBlur = (event: Event): void => holding.letGoAll(ms(event.timeStamp))
  let listening = 0
  return {
    listen: (hear) => {
      const stop = holding.listen(hear)
      if (listening++ === 0) {
        target.addEventListener('keydown', onDown)
        target.addEventListener('keyup', onUp)
        target.addEventListener('blur', onBlur)
      }
      let ended = false
      return () => {
        if (ended) return
        ended = true
        if (--listening === 0) {
          holding.letGoAll()
          target.removeEventListener('keydown', onDown)
          target.removeEventListener('keyup', onUp)
          target.removeEventListener('blur', onBlur)
        }
        stop()
      }
    },
    place: (next) => {
      holding.letGoAll()
      layout = layOut(next)
    },
    layout: () => layout,
  }
}

const put = (layout: Map<string, Key>, code: string | undefined, k: number): void => {
  if (code !== undefined && k >= 0 && k <= 127) layout.set(code, key(k))
}

const isKeyPress = (event: Event): event is KeyboardEvent => 'code' in event

/** Boxes that take no text leave the letters to the piano. */
const textless = new Set([
  'button',
  'checkbox',
  'color',
  'file',
  'radio',
  'range',
  'reset',
  'submit',
])

const isTyping = (target: EventTarget | null): boolean => {
  if (target === null || !('tagName' in target)) return false
  if ('isContentEditable' in target && target.isContentEditable === true) return true
  if (target.tagName === 'TEXTAREA' || target.tagName === 'SELECT') return true
  if (target.tagName !== 'INPUT') return false
  return !('type' in target && typeof target.type === 'string' && textless.has(target.type))
}
