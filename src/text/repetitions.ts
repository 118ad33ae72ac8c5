import { catalogue } from './text'

/** Lists of repetitions, and a single one seen again. */
export const repetitionsText = catalogue('repetitions', {
  /** When each key of a repetition came. */
  played: {
    lasted: (seconds: string) => `${seconds} seconds from the first key to the last`,
    written: (seconds: string, tempo: string) => `${seconds} seconds as written at ${tempo}`,
    picture:
      'Above when each onset was due, below when each key came: the taller, the louder; ringed where it was a flaw.',
    dueRow: 'due',
    playedRow: 'played',
    columns: { key: 'Key', seconds: 'Seconds', held: 'Held', velocity: 'Velocity' },
    flaw: (key: string) => `${key}, a flaw`,
  },
})

export type RepetitionsText = typeof repetitionsText
