/**
 * Which hand plays which note.
 *
 * part: the notes that the file keeps together, one track or one channel. A part goes to a hand by
 * its name, or, of two parts, by which lies higher (`handFrom` 'file'). Notes that the file does
 * not tell apart are split by position (`handFrom` 'inferred'; splitHands.ts).
 *
 * Example: parts 'Piano RH' and 'Piano LH' -> right, left; two parts without telling names, mean
 * keys 71 and 52 -> right, left; one part -> each onset split between the hands.
 */
import type { Hand } from '@/music/music'
import type { HandedNote, Part } from './part'
import { handOfName } from './partNames'
import { splitHands } from './splitHands'

export interface HandedNotes {
  readonly notes: readonly HandedNote[]
  readonly warnings: readonly string[]
}

/** Gives every note of the piano part a hand; says in a warning which parts it left out. */
export const giveHands = (parts: readonly Part[], ticksPerQuarter: number): HandedNotes => {
  const { kept, warnings } = keepPiano(parts.filter((part) => part.notes.length > 0))
  const known = kept.map((part) => handOfName(part.name))
  const [one, two] = kept
  if (one && two && kept.length === 2) {
    const first = decideTwo(one, two, known)
    const second = first === 'right' ? 'left' : 'right'
    return { notes: [...hold(one, first), ...hold(two, second)], warnings }
  }
  const named = kept.flatMap((part, i) => hold(part, known[i]))
  const open = kept.filter((_, i) => known[i] === undefined).flatMap((part) => part.notes)
  const spread = kept.length > 2 && open.length > 0
  return {
    notes: [...named, ...splitHands(open, ticksPerQuarter)],
    warnings: spread ? [...warnings, manyParts(kept.length)] : warnings,
  }
}

const hold = (part: Part, hand: Hand | undefined): HandedNote[] =>
  hand === undefined ? [] : part.notes.map((note) => ({ hand, handFrom: 'file', ...note }))

/** The hand of the first of two parts: by the names unless they contradict each other, else by position. */
const decideTwo = (one: Part, two: Part, [a, b]: readonly (Hand | undefined)[]): Hand => {
  if (a && a !== b) return a
  if (b && a === undefined) return b === 'right' ? 'left' : 'right'
  return meanKey(one) >= meanKey(two) ? 'right' : 'left'
}

const meanKey = ({ notes }: Part): number => notes.reduce((sum, n) => sum + n.key, 0) / notes.length

/** Among more than two parts, those of other instruments are left out when a piano is there. */
const keepPiano = (
  parts: readonly Part[],
): { readonly kept: readonly Part[]; readonly warnings: readonly string[] } => {
  if (parts.length <= 2) return { kept: parts, warnings: [] }
  const pianos = parts.filter(isPiano)
  if (pianos.length === 0 || pianos.length === parts.length) return { kept: parts, warnings: [] }
  const others = parts.filter((part) => !isPiano(part)).map(({ name }) => name || 'unnamed')
  return { kept: pianos, warnings: [`Parts of other instruments left out: ${others.join(', ')}.`] }
}

const isPiano = ({ name, program }: Part): boolean =>
  program <= 7 || /piano|klavier/i.test(name) || handOfName(name) !== undefined

const manyParts = (n: number): string =>
  `The file has ${n} parts; which hand plays what was inferred from how the notes lie.`
