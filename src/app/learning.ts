import { createStore, type StoreApi } from 'zustand/vanilla'
import { bind, bindingIn, unbind, type Bindings, type DrillCommand } from './commandKeys'
import type { Instrument } from './instrument'
import type { Stop } from './ports'

export interface LearningState {
  /** The command whose key or pedal is waited for. */
  readonly command: DrillCommand | undefined
}

/** Binds commands to keys and pedals: the person presses what is to mean the command. */
export interface Learning {
  readonly store: StoreApi<LearningState>
  /** Waits for the key or pedal; once more, and it waits no longer. Nothing else hears meanwhile. */
  readonly learn: (command: DrillCommand) => void
  readonly forget: (command: DrillCommand) => void
  readonly cancel: () => void
}

interface Learnt {
  readonly bindings: () => Bindings
  /** The damper pedal may mean a command. */
  readonly allowDamper: () => boolean
  readonly change: (bindings: Bindings) => void
}

export const createLearning = (instrument: Instrument, learnt: Learnt): Learning => {
  const store = createStore<LearningState>(() => ({ command: undefined }))
  let giveBack: Stop = () => {}
  const cancel = (): void => {
    giveBack()
    store.setState({ command: undefined })
  }
  return {
    store,
    cancel,
    learn: (command) => {
      const same = store.getState().command === command
      cancel()
      if (same) return
      store.setState({ command })
      giveBack = instrument.borrow((event, who) => {
        const binding = who === 'person' ? bindingIn(event, learnt.allowDamper()) : undefined
        if (!binding) return
        cancel()
        learnt.change(bind(learnt.bindings(), command, binding))
      })
    },
    forget: (command) => {
      cancel()
      learnt.change(unbind(learnt.bindings(), command))
    },
  }
}
