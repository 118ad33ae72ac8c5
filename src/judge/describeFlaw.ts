import type { Key } from '@/music/units'
import { flawsText } from '@/text/flaws'
import type { Flaw, FlawKind } from './flaw'
import type { Repetition } from './repetition'

type Told = (written: string | undefined, played: string | undefined) => string

const words: Readonly<Record<FlawKind, Told>> = flawsText.told

/** One flaw in a few words: 'E♭4 in place of E4'. */
export const describeFlaw = (kind: FlawKind, written?: string, played?: string): string =>
  words[kind](written, played)

/** As many flaws as can be taken in at a glance from the keys. */
const flawsTold = 2

/** A verdict with its first flaws, as it is announced: 'Flawed: E♭4 in place of E4, and 2 more.' */
export const describeRepetition = (
  { verdict, flaws }: Pick<Repetition, 'verdict' | 'flaws'>,
  nameKey: (key: Key) => string,
): string => {
  const told = flaws.slice(0, flawsTold).map((flaw) => tell(flaw, nameKey))
  return flawsText.verdict(verdict, told, flaws.length - told.length)
}

const tell = ({ kind, expected, played }: Flaw, nameKey: (key: Key) => string): string =>
  describeFlaw(kind, expected && nameKey(expected.key), played && nameKey(played.key))
