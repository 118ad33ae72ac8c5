import type { Piece } from './layers'
import type { Reading } from './readings'
import type { Graces } from './spellVoices'
import { headId } from './heads'

/** A line above or below the staff under which the notes sound octaves away. */
export interface OctaveLine {
  /** The bar in which it begins, counted from the first drawn one. */
  readonly bar: number
  readonly octaves: number
  /** The ids of the first and the last head under it. */
  readonly from: string
  readonly to: string
}

/** One line for each reading that asks for it, from its first head to its last. */
export const octaveLinesOf = (
  bars: readonly (readonly (readonly Piece[])[])[],
  readings: ReadonlyMap<string, Reading>,
  graces: Graces,
): readonly OctaveLine[] => {
  const lines = new Map<Reading, OctaveLine>()
  for (const [bar, voices] of bars.entries())
    for (const piece of voices.flat().toSorted((a, b) => a.start - b.start)) {
      const [note] = piece.notes
      const reading = note && readings.get(note.id)
      if (!reading || reading.octaves === 0) continue
      const to = headId(note, piece)
      const from = piece.tiedFrom ? to : (graces.get(note.id)?.[0]?.id ?? to)
      const line = lines.get(reading) ?? { bar, octaves: reading.octaves, from }
      lines.set(reading, { ...line, to })
    }
  return [...lines.values()]
}
