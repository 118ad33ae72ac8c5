import type { Strain } from '@/difficulty/strain'

/**
 * What is said of strain, and where it comes from. Of 363 students of the piano 82.6 % had complaints that
 * come of playing, the wrist first of all (Zhao, Wang & Zhang 2024, Frontiers in Psychology: by their own
 * report, an association only). In hands below a span of 21.6 cm tenths are out of reach and fast octaves
 * may strain (Boyle, Boyle & Booker 2015). The two minutes, and to stop at pain, are common advice to
 * musicians, no source.
 */
export const caution =
  'Stretches, octaves, trills and fast repetitions tire the hand: two minutes at a time, then something else; roll or leave out what strains, and stop at pain, numbness or tingling. See a doctor if it lasts. General advice, not medical.'

const strainWords: Readonly<Record<Strain, string>> = {
  octaves: 'octaves',
  stretches: 'stretches',
  trills: 'trills',
  fastRepetitions: 'fast repetitions',
}

/** 'Octaves and trills tire the hand: …', for the start of a drill; nothing where nothing strains. */
export const cautionAgainst = (strains: readonly Strain[]): string | undefined => {
  const words = strains.map((strain) => strainWords[strain])
  if (words.length === 0) return undefined
  const all = [...words.slice(0, -2), words.slice(-2).join(' and ')].join(', ')
  return `${all.charAt(0).toUpperCase()}${all.slice(1)} tire the hand: two minutes at a time. Stop at pain, see a doctor if it lasts. General advice, not medical.`
}
