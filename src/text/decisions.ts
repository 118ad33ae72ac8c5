import { plural } from './plural'
import { catalogue } from './text'

/** What was decided in a sitting: problems and what was done about them, and the person's word against the coach's. */
export const decisionsText = catalogue('decisions', {
  problems: 'Problems, and what was done about them',
  /** 'Wrong key at E4, onset 3, twice'; `key` is absent where no key was written. */
  problem: (flaw: string, key: string | undefined, onset: number, times: number) =>
    `${flaw}${key === undefined ? '' : ` at ${key}`}, onset ${onset}, ${times === 2 ? 'twice' : `${times} times`}`,
  remedies: {
    smallGroup: 'a group of three',
    oneHand: 'one hand alone',
    blocked: 'as chords',
    loop: 'a loop around it',
    leapAlone: 'the leap alone',
    tapFirst: 'counted and tapped',
    handsSlowly: 'both hands slowly',
    fingering: 'another fingering',
    nameKeys: 'the keys named aloud',
  },
  outcomes: {
    solved: 'solved',
    left: 'left off',
    helped: 'it did not come again',
    cameAgain: 'it came again',
    none: 'played on',
  },
  overruled: 'What you decided otherwise',
  overrules: {
    raise: 'a faster tempo',
    lower: 'a slower tempo',
    skip: 'left before it was done',
    end: 'ended before it was done',
    pause: 'a pause not taken',
    problem: 'a problem left unsolved',
    smallerGroup: 'a group kept that was too big',
    trial: 'a trial left',
    tempoUp: 'a rise of the tempo taken back',
    tempoDown: 'a fall of the tempo taken back',
    exercise: 'another exercise than the next',
    remedy: 'a remedy left before it was solved',
  },
  /** After what was done more than once. */
  times: (n: number) => `, ${plural(n, 'time')}`,
})

export type DecisionsText = typeof decisionsText
