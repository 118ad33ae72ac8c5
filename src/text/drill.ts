import { capital } from './numberWords'
import { plural } from './plural'
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
  controls: {
    metronome: 'Metronome',
    silentBars: 'two bars of clicks, two silent',
    hear: 'Hear it',
    again: 'Again',
    slower: 'Slower',
    faster: 'Faster',
    previous: 'Previous',
    /** Of today's plan: this item is played later. */
    later: 'Later',
    next: 'Next',
    goOn: 'Go on',
    /** The rest is for those who hear it. */
    simulated: { shown: 'Simulated', rest: ' player' },
    notebook: 'Notebook',
    keys: 'Keys',
    end: 'End',
  },
  played: 'played',
  aMinute: (beats: string) => `${beats} a minute`,
  ladder: (rung: string, number: number, of: number, goal: string) =>
    `Tempo ${rung}, rung ${number} of ${of}, goal ${goal}`,
  streak: (streak: number, goal: number) => `${streak} of ${goal} clean repetitions in a row`,
  /** A figure that stands large, and of how many. */
  figureOf: <N>(figure: N, of: number) => [figure, ` of ${of}`],
  verdicts: (clean: number, flawed: number, brokenOff: number) =>
    `${clean} clean, ${flawed} flawed, ${brokenOff} broken off`,
  keyboard: (lowest: string, highest: string) => `Keys ${lowest} to ${highest}`,
  /** Which exercise of the build-up it is, and what it is for. */
  exercise: <N>(number: number, of: number, kind: string, strong: (words: string) => N) => [
    strong(`${number} of ${of}`),
    `, ${kind}: `,
  ],

  simulation: 'Simulated player, nothing is recorded.',
  resting: 'A pause: whatever you play now is not judged.',
  ready: 'Play when you are ready: the first key begins a repetition.',
  stray: 'That key begins nothing here.',
  unplugged: 'The keyboard was unplugged: that repetition does not count. Plug it in and go on.',
  taken:
    'Another program has taken the keyboard: that repetition does not count. Close it there, and the keyboard is heard here again.',
  soundLost:
    'The sound stopped, and the metronome with it. The drill goes on without; Space starts it again.',
  secure: 'Secure for today: the streak is met at the goal tempo.',
  done: (streak: number) => `Done: ${streak} clean in a row.`,
  trial: 'A short trial for the tempo: three clean in a row, then faster.',
  leaveTrial: 'Backspace leaves the trial.',
  remedy: 'Three clean in a row, and back to the drill.',
  solved: (streak: number) => `Solved: ${streak} clean in a row.`,
  remedies: 'Exercises against it',
  buildUp: 'Build it up from smaller groups.',
  /** 'bar 3, beat 2', and what it most likely is. */
  problemAt: (place: string, likely: string) => `${capital(place)}. ${likely}`,
  breathe: 'Breathe.',
  next: (what: string) => `Next: ${what}`,
  last: 'That was the last one.',
  lastToday: 'That was the last one for today.',
  backToDrill: 'Back to the drill.',
  /** Of a run-through. */
  toWorkOn: (bars: readonly number[], others: boolean) =>
    `To work on next: ${bars.length === 1 ? 'bar' : 'bars'} ${bars.join(', ')}${others ? ' and others' : ''}.`,

  strains: {
    octaves: 'octaves',
    stretches: 'stretches',
    trills: 'trills',
    fastRepetitions: 'fast repetitions',
  },
  cautionAgainst: (strains: readonly string[]) =>
    `${capital(listed(strains))} tire the hand: two minutes at a time. Stop at pain, see a doctor if it lasts. General advice, not medical.`,
  caution:
    'Stretches, octaves, trills and fast repetitions tire the hand: two minutes at a time, then something else; roll or leave out what strains, and stop at pain, numbness or tingling. See a doctor if it lasts. General advice, not medical.',

  notation: {
    drawing: 'Drawing the notes …',
    fragment: (notes: number, bars: number) =>
      `The fragment, ${plural(notes, 'note')} in ${plural(bars, 'bar')}`,
  },
  /** The notes, for who does not see them. */
  notes: {
    length: (value: NoteValue, several: boolean) => capital(nameOf(value, several)),
    dotted: (value: NoteValue, several: boolean) => `Dotted ${nameOf(value, several)}`,
    triplet: (value: NoteValue, several: boolean) => `Triplet ${nameOf(value, several)}`,
    quarters: (figure: string, several: boolean) =>
      several ? `${figure} quarters each` : `${figure} quarters`,
    together: (keys: readonly string[]) => keys.join(' with '),
    inHand: (hand: 'right' | 'left', keys: string) => `${hand} ${keys}`,
  },
})

export type DrillText = typeof drillText

export type NoteValue = 'whole' | 'half' | 'quarter' | 'eighth' | 'sixteenth' | 'thirtySecond'

const noteValues: Readonly<Record<NoteValue, readonly [one: string, several: string]>> = {
  whole: ['whole note', 'whole notes'],
  half: ['half', 'halves'],
  quarter: ['quarter', 'quarters'],
  eighth: ['eighth', 'eighths'],
  sixteenth: ['sixteenth', 'sixteenths'],
  thirtySecond: ['thirty-second', 'thirty-seconds'],
}

const nameOf = (value: NoteValue, several: boolean): string => noteValues[value][several ? 1 : 0]

/** 'octaves, trills and stretches' */
const listed = (words: readonly string[]): string =>
  [...words.slice(0, -2), words.slice(-2).join(' and ')].join(', ')
