import { useEffect, type PointerEvent } from 'react'
import { useApp } from './context'

/** A click leaves the focus where it was, so that Space and Enter go on meaning the same. */
export const keepFocus = (event: PointerEvent): void => event.preventDefault()

/** Space, Enter, arrows and escape; letters belong to the computer's piano keys. */
export const useShortcuts = (): void => {
  const app = useApp()
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const run = event.repeat || isTyping(event.target) ? undefined : actionOf(event.code)
      if (!run) return
      event.preventDefault()
      run()
    }
    const actionOf = (code: string): (() => void) | undefined => {
      switch (code) {
        case 'Space':
          return () => app.practice.goOnOrMetronome()
        case 'Enter':
          return () => void app.practice.hear()
        case 'ArrowUp':
          return () => app.practice.raise()
        case 'ArrowDown':
          return () => app.practice.lower()
        case 'ArrowLeft':
          return () => app.neighbour(-1)
        case 'ArrowRight':
          return () => app.neighbour(1)
        case 'Escape':
          return () => app.endSession()
        default:
          return undefined
      }
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [app])
}

/** Where Space and Enter already mean something. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('input, select, textarea, button, a, summary') !== null
