import type { Strain } from '@/difficulty/strain'
import { drillText } from '@/text/drill'

/**
 * What is said of strain, and where it comes from. Of 363 students of the piano 82.6 % had complaints that
 * come of playing, the wrist first of all (Zhao, Wang & Zhang 2024, Frontiers in Psychology: by their own
 * report, an association only). In hands below a span of 21.6 cm tenths are out of reach and fast octaves
 * may strain (Boyle, Boyle & Booker 2015). The two minutes, and to stop at pain, are common advice to
 * musicians, no source.
 */
export const caution = (): string => drillText.caution

/** 'Octaves and trills tire the hand: …', for the start of a drill; nothing where nothing strains. */
export const cautionAgainst = (strains: readonly Strain[]): string | undefined =>
  strains.length === 0
    ? undefined
    : drillText.cautionAgainst(strains.map((strain) => drillText.strains[strain]))
