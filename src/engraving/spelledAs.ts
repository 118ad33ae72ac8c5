import type { Note } from '@/music/music'
import { letters, semitonesOf, type Spelling } from '@/music/spelling'

/** How the file spells a note, where it says so: 'Cb4' is step 28 lowered by one. */
export const spelledAs = ({ key, spelling = '' }: Note): Spelling | undefined => {
  const [, letter = '', signs = '', octave] = /^([A-G])(#{0,2}|b{0,2})(-?\d)$/.exec(spelling) ?? []
  if (octave === undefined) return undefined
  const step = 7 * Number(octave) + letters.findIndex((l) => l.toUpperCase() === letter)
  const alter = signs.startsWith('b') ? -signs.length : signs.length
  return semitonesOf(step) + alter === key ? { step, alter } : undefined
}
