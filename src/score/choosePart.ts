import type { LaidPart } from './layMeasures'
import type { Part } from './part'
import { handOfName } from './partNames'
import type { PlacedNote } from './tieNotes'

/** A part with its notes in place, ties joined. */
export interface PlacedPart extends Pick<LaidPart, 'name' | 'piano' | 'staves' | 'odd'> {
  readonly notes: readonly PlacedNote[]
}

/**
 * Which parts are for the pianist, as indices: the one that is named a piano, else the first on two
 * staves, else two on one staff each that are named for the hands. Where no part is for a piano, all
 * are taken together.
 */
export const choosePart = (parts: readonly PlacedPart[]): readonly number[] => {
  const sounding = parts.flatMap((part, i) => (part.notes.length > 0 ? [i] : []))
  const where = (holds: (part: PlacedPart) => boolean): readonly number[] =>
    sounding.filter((i) => parts.slice(i, i + 1).some(holds))
  const pianos = where(({ piano, name }) => piano || handOfName(name) !== undefined)
  const grand = where(({ staves }) => staves > 1)
  const grandPiano = grand.find((i) => pianos.includes(i))
  if (grandPiano !== undefined) return [grandPiano]
  const [one, two] = pianos
  const hands = pianos.map((i) => handOfName(parts[i]?.name ?? ''))
  if (one !== undefined && two !== undefined && (pianos.length === 2 || hands[0] !== hands[1]))
    return [one, two]
  if (one !== undefined && parts[one]?.piano) return [one]
  return grand[0] === undefined ? sounding : [grand[0]]
}

/** The parts as the hands read them: the upper staff of several is the right hand's, the lowest the left's. */
export const handParts = (parts: readonly PlacedPart[]): readonly Part[] =>
  parts.flatMap(({ name, staves, notes }) =>
    staves === 1
      ? [{ name, program: piano, notes }]
      : Array.from({ length: staves }, (_, i) => ({
          name: i === 0 ? 'right' : i === staves - 1 ? 'left' : '',
          program: piano,
          notes: notes.filter(({ staff }) => Math.min(staff, staves) === i + 1),
        })),
  )

/** The General MIDI program of a grand piano: what was chosen is played on one. */
const piano = 0
