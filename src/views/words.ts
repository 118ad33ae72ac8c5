import type { TapTestState } from '@/app/tapTest'
import type { FlawKind, Mark, Standard } from '@/judge/flaw'
import type { Verdict } from '@/judge/repetition'
import type { Lag } from '@/judge/tapTest'
import type { Bar, HandChoice, TimeSignature } from '@/music/music'
import { beatQuarters } from '@/music/beat'
import type { Key, Tempo } from '@/music/units'

/** Every word on the screens that is made from data. */
export const handWords: Readonly<Record<HandChoice, string>> = {
  right: 'right hand',
  left: 'left hand',
  both: 'both hands',
}

export const verdictWords: Readonly<Record<Verdict, string>> = {
  clean: 'Clean',
  flawed: 'Flawed',
  brokenOff: 'Broken off',
}

export const standardWords: Readonly<Record<Standard, string>> = {
  notes: 'notes: right keys, right order',
  flow: 'flow: right keys, no stops',
  time: 'time: no stops, steady pulse, chords together',
}

/** Bars 3 to 3 -> 'bar 3'; a pickup is bar 0. */
export const formatBars = (from: Bar, to: Bar): string =>
  from.number === to.number ? `bar ${from.number}` : `bars ${from.number}–${to.number}`

/** The name of the counted note value, for a screen reader and beside the figure. */
export const beatWord = (time: TimeSignature): string => {
  switch (beatQuarters(time)) {
    case 0.5:
      return 'eighths'
    case 1:
      return 'quarters'
    case 1.5:
      return 'dotted quarters'
    case 2:
      return 'halves'
    default:
      return 'beats'
  }
}

export const percent = (share: number): string => `${Math.round(share * 100)} %`

/** How a key is named in the music at hand. */
type NameOf = (key: Key) => string

/** One flaw in a few words: 'E♭4 in place of E4'. */
export const describeMark = (mark: Mark, nameOf: NameOf): string => {
  const written = mark.expected ? nameOf(mark.expected.key) : 'the note'
  const played = mark.played ? nameOf(mark.played.key) : 'another key'
  switch (mark.kind) {
    case 'right':
      return `${written} right`
    case 'wrong':
      return `${played} in place of ${written}`
    case 'missing':
      return `${written} missing`
    case 'extra':
      return `${played} is not written`
    case 'repeated':
      return `${played} struck again`
    case 'order':
      return `${written} out of order`
    case 'restart':
      return 'went back'
    case 'hesitation':
      return `a stop before ${written}`
    case 'early':
      return `${written} early`
    case 'late':
      return `${written} late`
    case 'uneven':
      return 'uneven'
    case 'spread':
      return 'chord not together'
    case 'drift':
      return 'the tempo drifts'
  }
}

/** A verdict with its first flaws, as it is announced: 'Flawed: E♭4 in place of E4.' */
export const describeRepetition = (
  repetition: { readonly verdict: Verdict; readonly flaws: readonly Mark[] },
  nameOf: NameOf,
): string => {
  const flaws = repetition.flaws.slice(0, 2).map((flaw) => describeMark(flaw, nameOf))
  const more = repetition.flaws.length - flaws.length
  const rest = more > 0 ? `, and ${more} more` : ''
  return flaws.length === 0
    ? `${verdictWords[repetition.verdict]}.`
    : `${verdictWords[repetition.verdict]}: ${flaws.join(', ')}${rest}.`
}

/** The flaws by name, as in a list of what went wrong. */
export const flawWords: Readonly<Record<FlawKind, string>> = {
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
}

export const plural = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`

/** 31 -> '31 ms after the click'. */
export const describeLag = (lag: number): string => {
  const whole = Math.round(lag)
  if (whole === 0) return 'none'
  return `${Math.abs(whole)} ms ${whole > 0 ? 'after' : 'before'} the click`
}

/** What to do in the tap test, or what it found. */
export const describeTapTest = (state: TapTestState, tempo: Tempo): string => {
  switch (state.kind) {
    case 'ready':
      return `Start the clicks, and strike a key with each; they come ${tempo} a minute.`
    case 'starting':
      return 'The clicks begin …'
    case 'silent':
      return 'No click can sound.'
    case 'listening':
      return 'Strike any key with each click.'
    case 'done':
      return describeMeasured(state.lag)
  }
}

const describeMeasured = (measured: Lag): string => {
  if (measured.kind === 'few')
    return `Only ${plural(measured.counted, 'strike')} can be counted: measure again, one strike to each click.`
  const lag = Math.round(measured.lag) === 0 ? 'on the click' : describeLag(measured.lag)
  const figure = `${lag}, give or take ${Math.round(measured.spread)} ms`
  switch (measured.kind) {
    case 'trusted':
      return `You strike ${figure}.`
    case 'uneven':
      return `You strike ${figure}: too uneven to tell the lag. Measure again.`
    case 'far':
      return `You strike ${figure}: too much to leave out. Wireless headphones may be the cause.`
  }
}
