import { useEffect, type PointerEvent } from 'react'
import type { App } from '@/app/app'
import { isTooBig } from '@/app/practiceState'
import { nextPerBeat } from '@/app/settings'
import { useApp } from './context'

/** A click leaves the focus where it was, so that Space and Enter go on meaning the same. */
export const keepFocus = (event: PointerEvent): void => event.preventDefault()

/** Space, Enter, arrows, Escape, Backspace, digits and the full stop; letters belong to the computer's piano keys. */
export const useShortcuts = (): void => {
  const app = useApp()
  useKeys({
    Space: () => app.practice.goOnOrMetronome(),
    Enter: () => void app.practice.hear(),
    Digit0: () => app.practice.again(),
    Digit1: () => (isStuck(app) ? app.buildUpHere() : app.practice.remedy(0)),
    Digit2: () => app.practice.remedy(1),
    Digit3: () => app.practice.remedy(2),
    Digit4: () => app.changeSettings({ perBeat: nextPerBeat(app.settings.getState().perBeat) }),
    Digit5: () => app.changeSettings({ silentBars: !app.settings.getState().silentBars }),
    Digit8: () => void app.practice.toggleSimulated(),
    Backspace: () => app.practice.undo(),
    Period: () => app.practice.goOnOrRest(),
    ArrowUp: () => app.practice.raise(),
    ArrowDown: () => app.practice.lower(),
    ArrowLeft: () => app.neighbour(-1),
    ArrowRight: () => app.neighbour(1),
    Escape: () => app.endSession(),
  })
}

const isStuck = (app: App): boolean => {
  const state = app.practice.store.getState()
  return state !== undefined && state.problem === undefined && isTooBig(state)
}

/** What each key of the computer does, by its code, where the focus has no use for it. */
export const useKeys = (actions: Readonly<Record<string, () => void>>): void =>
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const run = event.repeat || isTaken(event) ? undefined : actions[event.code]
      if (!run) return
      event.preventDefault()
      run()
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [actions])

/** The focus has a use for the key: fields and what lies over the page for all of them, what can be pressed for Space and Enter. */
const isTaken = ({ target, code }: KeyboardEvent): boolean => {
  if (document.querySelector('dialog[open]')) return true
  const fields = 'input, select, textarea'
  const users = code === 'Space' || code === 'Enter' ? `${fields}, button, a, summary` : fields
  return target instanceof Element && target.closest(users) !== null
}
