import type { StoreApi } from 'zustand/vanilla'
import { strainsOf, type Strain } from '@/difficulty/strain'
import type { Ports } from './ports'
import type { Practising } from './practising'
import type { Settings } from './settings'

/** What tires the hand in a drill is said at its start, once a day of practice. */
export interface Caution {
  readonly isDue: () => boolean
  readonly strainsOf: (practising: Practising) => readonly Strain[]
  readonly read: () => void
}

export const createCaution = (
  { storage, wallClock }: Pick<Ports, 'storage' | 'wallClock'>,
  settings: StoreApi<Settings>,
): Caution => {
  const today = (): string => storage.dayOf(wallClock())
  return {
    isDue: () => settings.getState().cautionedOn !== today(),
    strainsOf: ({ chunk, reach }) => strainsOf(chunk, reach, settings.getState().span),
    read: () => {
      settings.setState({ cautionedOn: today() })
      void storage.saveSettings(settings.getState())
    },
  }
}
