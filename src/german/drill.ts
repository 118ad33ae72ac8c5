import type { DrillText } from '@/text/drill'

export const drill: DrillText = {
  commands: {
    hear: 'Anhören',
    again: 'Noch einmal',
    next: 'Weiter',
    back: 'Zurück',
    goOn: 'Fortfahren oder Pause',
    metronome: 'Metronom',
  },
}
