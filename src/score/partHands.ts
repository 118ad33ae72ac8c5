import type { Hand } from '@/music/music'
import { key } from '@/music/units'
import type { HandedNote, Part, PartNote } from './part'
import { handOfName } from './partNames'
import type { Warning } from './warning'

export interface HandedNotes {
  readonly notes: readonly HandedNote[]
  readonly warnings: readonly Warning[]
}

/**
 * What the file says of the hands. A part goes to a hand by its name or, of two parts, by which lies
 * higher: parts with mean keys 71 and 52 are right and left. Notes that the file does not tell apart
 * are marked as inferred and stand at a split at middle C. Parts left out are named in a warning.
 */
export const giveHands = (parts: readonly Part[]): HandedNotes => {
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
    notes: [...named, ...splitAtMiddleC(open)],
    warnings: spread ? [...warnings, { kind: 'handsOfParts', count: kept.length }] : warnings,
  }
}

const splitAtMiddleC = (notes: readonly PartNote[]): HandedNote[] =>
  notes.map(({ start, length, key, marks }) => ({
    start,
    length,
    key,
    marks,
    hand: key >= middleC ? 'right' : 'left',
    handFrom: 'inferred',
  }))

const middleC = key(60)

const hold = (part: Part, hand: Hand | undefined): HandedNote[] =>
  hand === undefined
    ? []
    : part.notes.map(({ start, length, key, marks }) => ({
        start,
        length,
        key,
        marks,
        hand,
        handFrom: 'file',
      }))

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
): { readonly kept: readonly Part[]; readonly warnings: readonly Warning[] } => {
  if (parts.length <= 2) return { kept: parts, warnings: [] }
  const pianos = parts.filter(isPiano)
  if (pianos.length === 0 || pianos.length === parts.length) return { kept: parts, warnings: [] }
  const others = parts.filter((part) => !isPiano(part)).map(({ name }) => name)
  return { kept: pianos, warnings: [{ kind: 'otherInstruments', names: others }] }
}

const isPiano = ({ name, program }: Part): boolean =>
  program <= 7 || /piano|klavier/i.test(name) || handOfName(name) !== undefined
