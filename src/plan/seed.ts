import type { Day } from '@/journal/day'

/** A number from 0 up to 1 for a name: the same day and seed, the same number. */
export type Rank = (name: string) => number

/** FNV-1a, 32 bits (Fowler, Noll & Vo), mixed once more, since names differ at their ends. */
export const rankBy =
  (day: Day, seed: number): Rank =>
  (name) => {
    let hash = 0x811c9dc5
    for (const letter of `${seed} ${day} ${name}`)
      hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193)
    const mixed = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d)
    return ((mixed ^ (mixed >>> 13)) >>> 0) / 2 ** 32
  }
