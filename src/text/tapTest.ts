import { plural } from './plural'
import { catalogue } from './text'

/** The tap test: how late one's strikes come in against the click. */
export const tapTestText = catalogue('tapTest', {
  title: 'Tap test',
  why: 'Your key comes in a little before or after the click, always by about as much: loudspeaker and keyboard take their time, and most people strike just before a click. Strike any key with each of sixteen clicks, and the judge leaves this lag out when it says early or late.',
  /** The first button, by what is going on. */
  toggle: {
    ready: 'Start the clicks',
    starting: 'Stop',
    silent: 'Try again',
    listening: 'Stop',
    done: 'Measure again',
  },
  use: 'Use it',
  useNone: 'Use none',
  back: 'Back',
  inUse: (lag: string) => `In use: ${lag}.`,
  measureAgain: 'Measure again with other loudspeakers, headphones or another keyboard.',
  /** Beside the picture of the strikes, from above. */
  early: 'early',
  click: 'click',
  late: 'late',
  counted: <N>(figure: N, of: number) => [figure, ` of ${of}`],
  strikes: (n: number, of: number, early: number, late: number) =>
    `${n} of ${of} strikes: ${early} early, ${late} late`,
  noLag: 'none',
  lag: (ms: number, side: 'after' | 'before') => `${ms} ms ${side} the click`,
  onTheClick: 'on the click',
  start: (tempo: number) =>
    `Start the clicks, and strike a key with each; they come ${tempo} a minute.`,
  begins: 'The clicks begin …',
  silent: 'No click can sound.',
  strike: 'Strike any key with each click.',
  few: (counted: number) =>
    `Only ${plural(counted, 'strike')} can be counted: measure again, one strike to each click.`,
  figure: (lag: string, spread: number) => `${lag}, give or take ${spread} ms`,
  trusted: (figure: string) => `You strike ${figure}.`,
  uneven: (figure: string) => `You strike ${figure}: too uneven to tell the lag. Measure again.`,
  far: (figure: string) =>
    `You strike ${figure}: too much to leave out. Wireless headphones may be the cause.`,
})

export type TapTestText = typeof tapTestText
