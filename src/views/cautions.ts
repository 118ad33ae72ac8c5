import type { Strain } from '@/difficulty/strain'

/**
 * Of 363 students of the piano 82.6 % had complaints that come of playing, the wrist first of all (Zhao,
 * Wang & Zhang 2024, Frontiers in Psychology; by their own report, an association only). Fast octaves
 * and wide stretches strain hands below a span of 21.6 cm most (Boyle, Boyle & Booker 2015). The two
 * minutes, and to stop at pain, are common advice to musicians, no source.
 */
const strainWords: Readonly<Record<Strain, string>> = {
  octaves: 'Octaves',
  stretches: 'Stretches',
  trills: 'Trills',
  fastRepetitions: 'Fast repetitions',
}

const advice =
  'tire the hand: two minutes at a time, with a loose wrist. Stop at pain, numbness or tingling, and see a doctor if it lasts. General advice, not medical.'

/** 'Octaves and trills tire the hand: …'; nothing where nothing strains. */
export const cautionAgainst = (strains: readonly Strain[]): string | undefined => {
  const words = strains.map((strain, i) =>
    i === 0 ? strainWords[strain] : strainWords[strain].toLowerCase(),
  )
  if (words.length === 0) return undefined
  const all = [...words.slice(0, -2), words.slice(-2).join(' and ')].join(', ')
  return `${all} ${advice}`
}
