import type { Chunk, Onset } from '@/music/chunk'
import type { Hand } from '@/music/music'
import { nameKey, type Signature } from '@/music/spelling'
import { drillText, type NoteValue } from '@/text/drill'
import { rounded } from '@/text/numbers'

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
    drillText.notes.together(
      onset.notes.filter((note) => note.hand === of).map(({ key }) => nameKey(key, signature)),
    )
  if (hand !== 'both') return namesOf(hand)
  return (['right', 'left'] as const)
    .filter((of) => onset.notes.some((note) => note.hand === of))
    .map((of) => drillText.notes.inHand(of, namesOf(of)))
    .join(', ')
}

/** Quarters of each simple value; a dot adds half of it. */
const values: readonly (readonly [quarters: number, value: NoteValue])[] = [
  [4, 'whole'],
  [2, 'half'],
  [1, 'quarter'],
  [1 / 2, 'eighth'],
  [1 / 4, 'sixteenth'],
  [1 / 8, 'thirtySecond'],
]

const lengthInWords = (quarters: number, several: boolean): string => {
  const { length, dotted, triplet, quarters: others } = drillText.notes
  const valueOf = (factor: number): NoteValue | undefined =>
    values.find(([value]) => Math.abs(quarters - value * factor) < 1 / 1000)?.[1]
  const [plain, withDot, third] = [valueOf(1), valueOf(3 / 2), valueOf(2 / 3)]
  if (plain) return length(plain, several)
  if (withDot) return dotted(withDot, several)
  if (third) return triplet(third, several)
  return others(rounded(quarters, 2), several)
}
