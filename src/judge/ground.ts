import type { Chunk, ExpectedNote } from '@/music/chunk'
import type { Key } from '@/music/units'
import { furtherLackCost, slipCost } from './thresholds'

/** A chunk laid out for quick looking up; made once a chunk. */
export interface Ground {
  readonly chunk: Chunk
  readonly last: number
  readonly onsets: readonly GroundOnset[]
  /** Where each key is written: onset * 32 + index of the note, ascending. */
  readonly places: ReadonlyMap<Key, readonly number[]>
  /** Keys that need not come but may, somewhere in the chunk. */
  readonly allowed: ReadonlySet<Key>
}

export interface GroundOnset {
  readonly start: number
  readonly notes: readonly ExpectedNote[]
  readonly keys: readonly Key[]
  readonly auxiliaries: readonly Key[]
  /** For each of the 128 keys how like a written one it is. */
  readonly likeness: Uint8Array
  /** Keys that are written for both hands. */
  readonly unisons: readonly Key[]
  readonly rolled: boolean
  /** Ticks to the next onset; of the last onset, to the one before. */
  readonly gap: number
  /** What all onsets before this one cost when they are left out. */
  readonly lackBefore: number
}

/** Masks of struck notes are 31 bits; larger clusters are cut into onsets at the same time. */
const mostNotes = 31

export const layGround = (chunk: Chunk): Ground => {
  const onsets: GroundOnset[] = []
  let lackBefore = 0
  for (const onset of chunk.onsets) {
    for (let from = 0; from < onset.notes.length; from += mostNotes) {
      const notes = onset.notes.slice(from, from + mostNotes)
      onsets.push({
        start: onset.start,
        notes,
        keys: notes.map((n) => n.key),
        likeness: likenessTo(notes.map((n) => n.key)),
        auxiliaries: onset.auxiliaries,
        unisons: notes.filter((n) => n.ids.length > 1).map((n) => n.key),
        rolled: onset.rolled,
        gap: 0,
        lackBefore,
      })
      lackBefore += lackCost(notes.length)
    }
  }
  const spaced = onsets.map((onset, i) => {
    const next = onsets[i + 1] ?? onset
    const from = onsets[i + 1] ? onset : (onsets[i - 1] ?? onset)
    return { ...onset, gap: next.start - from.start || chunk.ticksPerQuarter }
  })
  const allowed = new Set(spaced.flatMap((o) => [...o.auxiliaries, ...o.unisons]))
  return { chunk, last: spaced.length - 1, onsets: spaced, places: placesOf(spaced), allowed }
}

const placesOf = (onsets: readonly GroundOnset[]): Map<Key, number[]> => {
  const places = new Map<Key, number[]>()
  for (const [o, onset] of onsets.entries()) {
    for (const [i, key] of onset.keys.entries()) {
      const list = places.get(key)
      if (list) list.push(o * 32 + i)
      else places.set(key, [o * 32 + i])
    }
  }
  return places
}

export const groupByOnset = <T extends { readonly onset: number }>(
  items: readonly T[],
): ReadonlyMap<number, readonly T[]> => {
  const groups = new Map<number, T[]>()
  for (const item of items) {
    const group = groups.get(item.onset)
    if (group) group.push(item)
    else groups.set(item.onset, [item])
  }
  return groups
}

/** What `count` lacking notes of one onset cost. */
export const lackCost = (count: number): number =>
  count === 0 ? 0 : slipCost + (count - 1) * furtherLackCost

const near = 1
const written = 2

/** The onset asks for this key. */
export const isWritten = (onset: GroundOnset, key: Key): boolean => onset.likeness[key] === written

/** The key is written here, or within a whole tone or an octave of one that is. */
export const isNear = (onset: GroundOnset, key: Key): boolean => (onset.likeness[key] ?? 0) >= near

const likenessTo = (keys: readonly Key[]): Uint8Array => {
  const likeness = new Uint8Array(128)
  for (const key of keys) {
    for (const step of [-12, -2, -1, 1, 2, 12]) {
      if (key + step >= 0 && key + step < 128) likeness[key + step] = near
    }
  }
  for (const key of keys) likeness[key] = written
  return likeness
}
