import type { Chunk } from './chunk'

/** Whether two chunks, of two editions of a piece, ask for the same keys at the same places; how long each is held may differ. */
export const sameNotes = (one: Chunk, other: Chunk): boolean =>
  one.onsets.length === other.onsets.length &&
  one.start * other.ticksPerQuarter === other.start * one.ticksPerQuarter &&
  one.onsets.every((onset, i) => {
    const twin = other.onsets[i]
    return (
      twin !== undefined &&
      onset.start * other.ticksPerQuarter === twin.start * one.ticksPerQuarter &&
      onset.notes.length === twin.notes.length &&
      onset.notes.every(({ key }, k) => key === twin.notes[k]?.key)
    )
  })
