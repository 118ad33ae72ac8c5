import type { Key } from '@/music/units'

/** An octave on the keyboard of a piano, millimetres; a white key is a seventh of it (Jacobs 2001, Music Perception 18:505). */
export const octaveMm = 164.5
export const whiteKeyMm = octaveMm / 7

/** The middle of each key of an octave, from the middle of its C, millimetres. After Jacobs 2001. */
const placesMm = [0, 9.5, 23.5, 37.5, 47, 70.5, 78.5, 94, 105.5, 117.5, 133, 141] as const

/** Where a key lies: millimetres from the C of octave -1. C4 to C5 are 164.5 apart, C4 to D4 23.5. */
export const placeMm = (key: Key): number =>
  Math.floor(key / 12) * octaveMm + (placesMm[key % 12] ?? 0)
