import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Take } from '@/music/keyEvent'
import type { Ports } from './ports'

/** What was played, heard again. */
export interface Hearing {
  /** The name of what sounds; absent while nothing does. */
  readonly store: StoreApi<{ readonly heard?: string }>
  /** Call it in a press of the person, so that sound may wake. What sounded before stops. */
  readonly hear: (name: string, take: Take) => Promise<void>
  readonly stop: () => void
}

export const createHearing = ({ sound }: Pick<Ports, 'sound'>): Hearing => {
  const store = createStore<{ readonly heard?: string }>(() => ({}))
  /** Counts the hearings, so that the end of one does not end the next. */
  let hearings = 0
  return {
    store,
    hear: async (name, take) => {
      const mine = ++hearings
      store.setState({ heard: name }, true)
      await sound.unlock()
      if (mine === hearings) await sound.hearTake(take)
      if (mine === hearings) store.setState({}, true)
    },
    stop: () => {
      hearings++
      sound.quiet()
      store.setState({}, true)
    },
  }
}
