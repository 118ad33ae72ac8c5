import type { Key } from '@/music/units'
import type { Flaw, FlawKind } from './flaw'
import type { Repetition, Verdict } from './repetition'

/** One flaw in a few words: 'E♭4 in place of E4'. */
export const describeFlaw = (
  kind: FlawKind,
  written = 'the note',
  played = 'another key',
): string => {
  switch (kind) {
    case 'wrong':
      return `${played} in place of ${written}`
    case 'missing':
      return `${written} missing`
    case 'extra':
      return `${played} struck, which is not written`
    case 'repeated':
      return `${played} struck again`
    case 'order':
      return 'two onsets exchanged'
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

const verdictWords: Readonly<Record<Verdict, string>> = {
  clean: 'Clean',
  flawed: 'Flawed',
  brokenOff: 'Broken off',
}

/** As many flaws as can be taken in at a glance from the keys. */
const flawsTold = 2

/** A verdict with its first flaws, as it is announced: 'Flawed: E♭4 in place of E4, and 2 more.' */
export const describeRepetition = (
  { verdict, flaws }: Pick<Repetition, 'verdict' | 'flaws'>,
  nameKey: (key: Key) => string,
): string => {
  const told = flaws.slice(0, flawsTold).map((flaw) => tell(flaw, nameKey))
  const more = flaws.length - told.length
  const rest = more > 0 ? `, and ${more} more` : ''
  return told.length === 0
    ? `${verdictWords[verdict]}.`
    : `${verdictWords[verdict]}: ${told.join(', ')}${rest}.`
}

const tell = ({ kind, expected, played }: Flaw, nameKey: (key: Key) => string): string =>
  describeFlaw(kind, expected && nameKey(expected.key), played && nameKey(played.key))
