import { plural } from './plural'
import { catalogue } from './text'

/** The tap test: how late one's strikes come in against the click. */
export const tapTestText = catalogue('tapTest', {
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
