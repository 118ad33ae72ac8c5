import type { Chunk, Onset } from '@/music/chunk'
import type { Hand } from '@/music/music'
import { nameKey, type Signature } from '@/music/spelling'

/**
 * The notes of a chunk for who does not see them, in the order in which they are played; equal lengths
 * are said once: 'Eighths: C5, D5, E5, F5. Quarter: G5 with B5.' With both hands:
 * 'Quarters: right C5, left C3 with E3; right D5.' A length is the way to the next onset.
 */
export const notesInWords = (chunk: Chunk, signature: Signature): string =>
  grouped(chunk)
    .map(({ length, onsets }) => {
      const named = onsets.map((onset) => onsetInWords(onset, chunk, signature))
      return `${lengthInWords(length, onsets.length > 1)}: ${named.join(chunk.hand === 'both' ? '; ' : ', ')}.`
    })
    .join(' ')

interface Run {
  /** In quarters. */
  readonly length: number
  readonly onsets: readonly Onset[]
}

/** Onsets next to each other that last equally long. */
const grouped = ({ onsets, ticksPerQuarter }: Chunk): readonly Run[] =>
  onsets.reduce<readonly Run[]>((runs, onset, i) => {
    const next = onsets[i + 1]
    const ticks = next ? next.start - onset.start : Math.max(...onset.notes.map((n) => n.length))
    const length = ticks / ticksPerQuarter
    const last = runs.at(-1)
    return last?.length === length
      ? [...runs.slice(0, -1), { length, onsets: [...last.onsets, onset] }]
      : [...runs, { length, onsets: [onset] }]
  }, [])

const onsetInWords = (onset: Onset, { hand }: Chunk, signature: Signature): string => {
  const namesOf = (of: Hand): string =>
    onset.notes
      .filter((note) => note.hand === of)
      .map(({ key }) => nameKey(key, signature))
      .join(' with ')
  if (hand !== 'both') return namesOf(hand)
  return (['right', 'left'] as const)
    .filter((of) => onset.notes.some((note) => note.hand === of))
    .map((of) => `${of} ${namesOf(of)}`)
    .join(', ')
}

/** Quarters of each simple value; a dot adds half of it. */
const values: readonly (readonly [number, string, string])[] = [
  [4, 'whole note', 'whole notes'],
  [2, 'half', 'halves'],
  [1, 'quarter', 'quarters'],
  [1 / 2, 'eighth', 'eighths'],
  [1 / 4, 'sixteenth', 'sixteenths'],
  [1 / 8, 'thirty-second', 'thirty-seconds'],
]

const lengthInWords = (quarters: number, several: boolean): string => {
  const is = (factor: number) =>
    values.find(([value]) => Math.abs(quarters - value * factor) < 1 / 1000)
  const word = (found: (typeof values)[number] | undefined): string | undefined =>
    found && (several ? found[2] : found[1])
  const plain = word(is(1))
  if (plain) return capital(plain)
  const dotted = word(is(3 / 2))
  if (dotted) return `Dotted ${dotted}`
  const triplet = word(is(2 / 3))
  if (triplet) return `Triplet ${triplet}`
  const figure = quarters.toLocaleString('en', { maximumFractionDigits: 2 })
  return several ? `${figure} quarters each` : `${figure} quarters`
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
