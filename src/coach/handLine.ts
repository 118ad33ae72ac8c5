import type { Chunk } from '@/music/chunk'
import { hands, type Hand } from '@/music/music'
import type { Key } from '@/music/units'

/** What one hand plays at one onset of the chunk; keys from low to high. */
export interface HandOnset {
  readonly onset: number
  readonly keys: readonly Key[]
}

/** All that one hand plays, in order. */
export const lineOf = (chunk: Chunk, hand: Hand): readonly HandOnset[] =>
  chunk.onsets.flatMap(({ notes }, onset) => {
    const keys = notes.filter((note) => note.hand === hand).map((note) => note.key)
    return keys.length > 0 ? [{ onset, keys }] : []
  })

/** The hands that play at an onset. */
export const handsAt = (chunk: Chunk, onset: number): readonly Hand[] =>
  hands.filter((hand) => chunk.onsets[onset]?.notes.some((note) => note.hand === hand))

/** Where the hand was before it plays at this onset. */
export const cameFrom = (line: readonly HandOnset[], onset: number): HandOnset | undefined =>
  line.findLast((place) => place.onset < onset)

/** From the nearest of these keys to that one, in semitones; upward positive. */
export const stepTo = (key: Key, from: readonly Key[]): number | undefined =>
  from.map((each) => key - each).toSorted((a, b) => Math.abs(a) - Math.abs(b))[0]

/** What the five fingers hold without moving the hand: a sixth (common practice, no source). */
const positionSpan = 9
/** Wider than the fifth between thumb and little finger at rest: the hand has to leap (common practice). */
export const leastLeap = 8

/** The onsets at which the hand takes a new position: what it plays there is out of reach from the old one. */
export const newPositions = (line: readonly HandOnset[]): readonly number[] => {
  const found: number[] = []
  let held: readonly Key[] = []
  for (const { onset, keys } of line) {
    const leaps = keys.every((key) => Math.abs(stepTo(key, held) ?? 0) >= leastLeap)
    const reach = Math.max(positionSpan, spanOf(keys), spanOf(held))
    const moves = held.length > 0 && (leaps || spanOf([...held, ...keys]) > reach)
    if (moves) found.push(onset)
    held = moves ? keys : [...held, ...keys]
  }
  return found
}

const spanOf = (keys: readonly Key[]): number =>
  keys.length === 0 ? 0 : Math.max(...keys) - Math.min(...keys)
