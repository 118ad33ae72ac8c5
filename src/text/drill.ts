import { catalogue } from './text'

/** The drill: what its keys do and what it says while one plays. */
export const drillText = catalogue('drill', {
  commands: {
    hear: 'Hear it',
    again: 'Again',
    next: 'Next',
    back: 'Back',
    goOn: 'Go on, or pause',
    metronome: 'Metronome',
  },
})

export type DrillText = typeof drillText
