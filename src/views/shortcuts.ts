import { useEffect, type PointerEvent } from 'react'
import { useApp } from './context'

/** A click leaves the focus where it was, so that Space and Enter go on meaning the same. */
export const keepFocus = (event: PointerEvent): void => event.preventDefault()

/** Space, Enter, arrows and escape; letters belong to the computer's piano keys. */
export const useShortcuts = (): void => {
  const app = useApp()
  useKeys({
    Space: () => app.practice.goOnOrMetronome(),
    Enter: () => void app.practice.hear(),
    ArrowUp: () => app.practice.raise(),
    ArrowDown: () => app.practice.lower(),
    ArrowLeft: () => app.neighbour(-1),
    ArrowRight: () => app.neighbour(1),
    Escape: () => app.endSession(),
  })
}

/** What each key of the computer does, by its code, where the focus has no use for it. */
export const useKeys = (actions: Readonly<Record<string, () => void>>): void =>
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const run = event.repeat || isTyping(event.target) ? undefined : actions[event.code]
      if (!run) return
      event.preventDefault()
      run()
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [actions])

/** Where Space and Enter already mean something. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('input, select, textarea, button, a, summary') !== null
