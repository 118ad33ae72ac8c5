import { catalogue } from './text'

/** Flaws, verdicts, and how strictly they are judged. */
export const flawsText = catalogue('flaws', {
  /** By name, as in a list of what went wrong. */
  names: {
    wrong: 'Another key',
    missing: 'Missing',
    extra: 'A key too many',
    repeated: 'Struck twice',
    order: 'Order exchanged',
    restart: 'Went back',
    hesitation: 'Stop',
    early: 'Early',
    late: 'Late',
    uneven: 'Uneven',
    spread: 'Chord not together',
    drift: 'Tempo drifts',
  },
  standards: {
    notes: 'notes: right keys, right order',
    flow: 'flow: right keys, no stops',
    time: 'time: no stops, steady pulse, chords together',
  },
})

export type FlawsText = typeof flawsText
