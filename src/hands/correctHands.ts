import type { Hand, Note, Score } from '@/music/music'
import { formatFraction } from '@/music/fraction'
import { key as toKey, type Key, type Tick } from '@/music/units'

/**
 * What the person says of a hand where the file says nothing. From the first onset to the last, in
 * exact quarters from the start ('3_2' is one and a half), so that it holds at any resolution of the
 * file; all notes there, or those on some keys alone.
 */
export interface HandCorrection {
  readonly from: string
  readonly to: string
  readonly keys?: readonly Key[]
  readonly hand: Hand
}

/** The correction of [from, to] of a score, both ticks where onsets stand. */
export const handCorrection = (
  { ticksPerQuarter }: Score,
  from: Tick,
  to: Tick,
  hand: Hand,
  keys?: readonly Key[],
): HandCorrection => ({
  from: formatFraction(from, ticksPerQuarter),
  to: formatFraction(to, ticksPerQuarter),
  ...(keys ? { keys } : {}),
  hand,
})

/** The score with all corrections, later ones above earlier ones. What the file says stays. */
export const correctHands = (score: Score, corrections: readonly HandCorrection[]): Score => {
  if (corrections.length === 0) return score
  const covers = corrections.map((correction) => coverOf(correction, score.ticksPerQuarter))
  const notes = score.notes.map((note): Note => {
    if (note.handFrom === 'file') return note
    const hand = covers.findLast((cover) => cover.holds(note))?.hand
    return hand ? { ...note, hand, handFrom: 'person' } : note
  })
  return { ...score, notes }
}

/** How many notes a correction would change or confirm. */
export const countCorrectable = (score: Score, correction: HandCorrection): number => {
  const { holds } = coverOf(correction, score.ticksPerQuarter)
  return score.notes.filter((note) => note.handFrom !== 'file' && holds(note)).length
}

/** Corrections as they were stored; what is none is left out. */
export const decodeCorrections = (stored: unknown): readonly HandCorrection[] =>
  Array.isArray(stored) ? stored.flatMap((each: unknown) => decode(each) ?? []) : []

interface Cover {
  readonly hand: Hand
  readonly holds: (note: Note) => boolean
}

const coverOf = ({ from, to, keys, hand }: HandCorrection, ticksPerQuarter: number): Cover => {
  const first = quarters(from)
  const last = quarters(to)
  // Compared as whole numbers, so that a place between two ticks is met exactly as well.
  const holds = ({ start, key }: Note): boolean =>
    first !== undefined &&
    last !== undefined &&
    start * first.of >= first.count * ticksPerQuarter &&
    start * last.of <= last.count * ticksPerQuarter &&
    (!keys || keys.includes(key))
  return { hand, holds }
}

const quarters = (text: string): { readonly count: number; readonly of: number } | undefined => {
  const [, count, of = '1'] = fraction.exec(text) ?? []
  return count === undefined ? undefined : { count: Number(count), of: Number(of) }
}

const fraction = /^(\d{1,9})(?:_([1-9]\d{0,8}))?$/

const decode = (stored: unknown): HandCorrection | undefined => {
  if (typeof stored !== 'object' || stored === null) return undefined
  const { from, to, keys, hand }: Readonly<Record<string, unknown>> = { ...stored }
  if (typeof from !== 'string' || typeof to !== 'string') return undefined
  if (!fraction.test(from) || !fraction.test(to)) return undefined
  if (hand !== 'left' && hand !== 'right') return undefined
  if (keys === undefined) return { from, to, hand }
  return Array.isArray(keys) && keys.every(isKey)
    ? { from, to, keys: keys.map(toKey), hand }
    : undefined
}

const isKey = (n: unknown): n is number => Number.isInteger(n) && Number(n) >= 0 && Number(n) <= 127
