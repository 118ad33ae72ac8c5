import { createContext, useContext, useSyncExternalStore } from 'react'
import type { App } from '@/app/app'
import type { Engraver } from '@/engraving/engraving'
import type { Language } from '@/text/text'

interface House {
  /** The language that was asked for, where its words could not be fetched. */
  readonly lacking?: Language | undefined
  readonly app: App
  readonly engraver: Engraver
}

export const HouseContext = createContext<House | undefined>(undefined)

const useHouse = (): House => {
  const house = useContext(HouseContext)
  if (!house) throw new Error('a view stands outside HouseContext')
  return house
}

export const useApp = (): App => useHouse().app
export const useLackingLanguage = (): Language | undefined => useHouse().lacking
export const useEngraver = (): Engraver => useHouse().engraver

/** A store of the app, as a view sees it. */
interface Readable<State> {
  readonly getState: () => State
  readonly subscribe: (onChange: () => void) => () => void
}

/** Selects the least that a view needs of a store. `choose` gives a part of the state, nothing newly made. */
export const useSelected = <State, Chosen>(
  store: Readable<State>,
  choose: (state: State) => Chosen,
): Chosen => useSyncExternalStore(store.subscribe, () => choose(store.getState()))
