import { useEffect, useRef } from 'react'

/**
 * What each key of the computer does on the page of a piece, by its name in small letters. Letters are
 * no piano keys there, whether they do something or not: they stop before the piano hears them, but for
 * pages on which they are played.
 */
export const useKeysByName = (
  actions: Readonly<Record<string, () => void>>,
  arePlayed = false,
): void => {
  const latest = useRef(actions)
  useEffect(() => {
    latest.current = actions
  })
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || isField(event.target)) return
      // What lies over the page has the keys; its list goes by the key that it came by.
      if (event.key !== '?' && document.querySelector('dialog[open]')) return
      if (!arePlayed && /^\p{L}$/u.test(event.key)) event.stopPropagation()
      const run = event.repeat ? undefined : latest.current[event.key.toLowerCase()]
      if (!run) return
      event.preventDefault()
      run()
    }
    window.addEventListener('keydown', press, { capture: true })
    return () => window.removeEventListener('keydown', press, { capture: true })
  }, [arePlayed])
}

/** Fields use all keys themselves; boxes to tick do not. */
export const isField = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('input:not([type=radio], [type=checkbox]), select, textarea') !== null
