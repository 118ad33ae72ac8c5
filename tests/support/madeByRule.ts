import type { RecordedFlaw } from '@/journal/journal'
import { key, noteId } from '@/music/units'

/** What journals that are made by rule have in common. */

/** Six of ten clean, one of twenty broken off, in a fixed order that repeats late. */
export const verdictOf = (n: number): 'clean' | 'flawed' | 'brokenOff' => {
  const dice = (n * 7919 + Math.floor(n / 97) * 31) % 20
  return dice < 12 ? 'clean' : dice < 19 ? 'flawed' : 'brokenOff'
}

export const flawOf = (n: number): RecordedFlaw => ({
  kind: n % 3 === 0 ? 'hesitation' : 'wrong',
  onset: n % 6,
  notes: [noteId(`n${n % 6}_2k${60 + (n % 6)}`)],
  written: key(60 + (n % 6)),
  played: key(61 + (n % 5)),
})
