import type { Chunk, ExpectedNote } from '@/music/chunk'
import type { Hand } from '@/music/music'
import { isBlackKey } from '@/music/pitch'
import type { Key, NoteId } from '@/music/units'
import { cameFrom, handsAt, leastLeap, lineOf, newPositions, stepTo } from './handLine'
import type { CoachFlaw, Sighting } from './problems'
import type { Problem } from './reasons'

/** What a flaw most likely is. */
export const likelyKinds = [
  'shortLeap',
  'longLeap',
  'weakFinger',
  'neighbours',
  'handsApart',
  'positionChange',
  'rhythm',
  'accidental',
  'unknown',
] as const
export type LikelyKind = (typeof likelyKinds)[number]

/** A problem with its likely kind. It is a guess from the notes alone: no finger was seen. */
export interface Diagnosis {
  readonly problem: Problem
  readonly likely: LikelyKind
  /** The notes concerned: the written one, or all of the onset where none is named. */
  readonly notes: readonly NoteId[]
  /** The hand that is to be looked at, where it can be told. */
  readonly hand?: Hand
}

/**
 * What a problem most likely is, from the flaw, what the chunk demands around it, and what else was
 * seen at that onset. C4 to E5 missed with D5 -> 'shortLeap'; F4 for F#4 -> 'accidental'.
 */
export const diagnose = (
  problem: Problem,
  chunk: Chunk,
  sightings: readonly Sighting[],
): Diagnosis => {
  const { flaw: kind, place: onset, written, played } = problem
  const flaw: CoachFlaw = {
    kind,
    onset,
    ...(written === undefined ? {} : { written }),
    ...(played === undefined ? {} : { played }),
  }
  const alone = likelyOf(flaw, chunk)
  const likely = alone === 'unknown' ? likelyFromOthers(onset, chunk, sightings) : alone
  const all = chunk.onsets[onset]?.notes ?? []
  const own = all.filter((note) => note.key === written)
  const hand = handOf(own.length > 0 ? own : all, chunk, onset)
  const notes = (own.length > 0 ? own : all).flatMap((note) => note.ids)
  return { problem, likely, notes, ...(hand ? { hand } : {}) }
}

/** What else went wrong at this onset, the most frequent first. */
const likelyFromOthers = (
  onset: number,
  chunk: Chunk,
  sightings: readonly Sighting[],
): LikelyKind =>
  sightings
    .filter(({ flaw }) => flaw.onset === onset)
    .toSorted((a, b) => b.repetitions.length - a.repetitions.length)
    .map(({ flaw }) => likelyOf(flaw, chunk))
    .find((kind) => kind !== 'unknown') ?? 'unknown'

/** The hand of the notes, where they are of one; else the one that moves to a new position there. */
const handOf = (notes: readonly ExpectedNote[], chunk: Chunk, onset: number): Hand | undefined => {
  const found = new Set(notes.map((note) => note.hand))
  if (found.size === 1) return notes[0]?.hand
  const moving = handsAt(chunk, onset).filter((hand) => takesPosition(chunk, onset, hand))
  return moving.length === 1 ? moving[0] : undefined
}

const takesPosition = (chunk: Chunk, onset: number, hand: Hand): boolean =>
  newPositions(lineOf(chunk, hand)).includes(onset)

const isNewPosition = (chunk: Chunk, onset: number): boolean =>
  handsAt(chunk, onset).some((hand) => takesPosition(chunk, onset, hand))

const likelyOf = (flaw: CoachFlaw, chunk: Chunk): LikelyKind => {
  const { onset } = flaw
  switch (flaw.kind) {
    case 'wrong':
      return likelyOfWrong(flaw, chunk)
    case 'missing':
      return likelyOfMissing(flaw, chunk)
    case 'extra':
      return isBesideWritten(flaw, chunk) ? 'neighbours' : 'unknown'
    case 'order':
      return handsAlternate(chunk, onset) ? 'handsApart' : 'unknown'
    case 'hesitation':
    case 'restart':
      return isNewPosition(chunk, onset) ? 'positionChange' : 'unknown'
    case 'early':
    case 'late':
      if (handsAlternate(chunk, onset)) return 'handsApart'
      if (valuesChange(chunk, onset)) return 'rhythm'
      return isNewPosition(chunk, onset) ? 'positionChange' : 'unknown'
    case 'uneven':
      return chunk.onsets.some((_, i) => valuesChange(chunk, i)) ? 'rhythm' : 'unknown'
    case 'spread':
      if (handsAt(chunk, onset).length > 1) return 'handsApart'
      return isWeakVoice(flaw, chunk) ? 'weakFinger' : 'unknown'
    case 'repeated':
    case 'drift':
      return 'unknown'
  }
}

const likelyOfWrong = ({ onset, written, played }: CoachFlaw, chunk: Chunk): LikelyKind => {
  const note = noteAt(chunk, onset, written)
  if (!note || played === undefined) return 'unknown'
  const before = cameFrom(lineOf(chunk, note.hand), onset)
  const wanted = before && stepTo(note.key, before.keys)
  if (wanted !== undefined && Math.abs(wanted) >= leastLeap) {
    const over = (played - note.key) * Math.sign(wanted)
    if (over < 0 && -over < Math.abs(wanted)) return 'shortLeap'
    if (over > 0 && over <= farthestOver) return 'longLeap'
  }
  const missedBy = Math.abs(played - note.key)
  if (missedBy === 1 && isBlackKey(played) !== isBlackKey(note.key)) return 'accidental'
  const isNear = missedBy <= farthestBeside
  return isNear && takesPosition(chunk, onset, note.hand) ? 'positionChange' : 'unknown'
}

/** A hand in the wrong position lands at most a third beside (common practice, no source). */
const farthestBeside = 4
/** A leap lands at most an octave too far; more is another mistake (common practice, no source). */
const farthestOver = 12

const likelyOfMissing = (flaw: CoachFlaw, chunk: Chunk): LikelyKind => {
  const note = noteAt(chunk, flaw.onset, flaw.written)
  if (!note) return 'unknown'
  const chord = keysOf(chunk, flaw.onset, note.hand)
  if (chord.length > 1) return isWeakVoice(flaw, chunk) ? 'weakFinger' : 'unknown'
  return handsAt(chunk, flaw.onset).length > 1 ? 'handsApart' : 'unknown'
}

/**
 * An inner note of a hand's chord, or the one on the side of the little finger: most slips inside
 * chords are there (Repp 1996, The Art of Inaccuracy; the side from common practice).
 */
const isWeakVoice = ({ onset, written }: CoachFlaw, chunk: Chunk): boolean => {
  const note = noteAt(chunk, onset, written)
  if (!note) return false
  const chord = keysOf(chunk, onset, note.hand)
  const thumb = note.hand === 'right' ? chord.at(0) : chord.at(-1)
  return chord.length > 1 && note.key !== thumb
}

/** A key within a whole tone of a written one, that is not what comes before or after. */
const isBesideWritten = ({ onset, played }: CoachFlaw, chunk: Chunk): boolean => {
  if (played === undefined) return false
  const keysAt = (i: number): readonly Key[] => chunk.onsets[i]?.notes.map((n) => n.key) ?? []
  const isNeighbour = keysAt(onset).some((key) => Math.abs(key - played) <= 2)
  return isNeighbour && ![onset - 1, onset, onset + 1].some((i) => keysAt(i).includes(played))
}

/** One hand plays here alone, and the other alone just before or after. */
const handsAlternate = (chunk: Chunk, onset: number): boolean => {
  const here = handsAt(chunk, onset)
  return [onset - 1, onset + 1].some((i) => {
    const there = handsAt(chunk, i)
    return here.length === 1 && there.length === 1 && here[0] !== there[0]
  })
}

/** The time to the onset before, or to the next, is another than that of the step before it. */
const valuesChange = (chunk: Chunk, onset: number): boolean => {
  const gap = (i: number): number | undefined => {
    const [from, to] = [chunk.onsets[i - 1], chunk.onsets[i]]
    return from && to ? to.start - from.start : undefined
  }
  const differs = (a?: number, b?: number): boolean => a !== undefined && b !== undefined && a !== b
  return differs(gap(onset - 1), gap(onset)) || differs(gap(onset), gap(onset + 1))
}

const noteAt = (chunk: Chunk, onset: number, key: Key | undefined): ExpectedNote | undefined =>
  chunk.onsets[onset]?.notes.find((note) => note.key === key)

const keysOf = (chunk: Chunk, onset: number, hand: Hand): readonly Key[] =>
  lineOf(chunk, hand).find((place) => place.onset === onset)?.keys ?? []
