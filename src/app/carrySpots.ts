import { parseFraction } from '@/music/fraction'
import type { Note, Score } from '@/music/music'
import { isSamePlace, type SpotPlace, type SpotWords } from './spotWords'

/** What becomes of the person's word on hard spots when a better edition takes the place of a piece. */
export interface CarriedSpots {
  /** For the better edition, with what was said of that one before. */
  readonly words: SpotWords
  /** How many accepted, added and rejected spots hold for it. */
  readonly carried: number
  /** How many are dropped, since their notes are not in it. */
  readonly dropped: number
}

/**
 * So much of a spot's notes must stand in the better edition, on the same key at the same place; a
 * misprint that is corrected takes no spot away.
 */
const leastAgreeing = 0.75

/** Carries each word to the places where the notes agree; what was said of the better edition itself stands above it. */
export const carrySpots = (
  former: SpotWords,
  own: SpotWords,
  old: Score,
  better: Score,
): CarriedSpots => {
  // A note's name says its key and its place.
  const present = new Set(better.notes.map(({ id }) => id))
  const holds = (place: SpotPlace): boolean => {
    const meant = notesIn(old, place)
    const agreeing = meant.filter(({ id }) => present.has(id))
    return meant.length > 0 && agreeing.length >= leastAgreeing * meant.length
  }
  const carried = former.said.filter(holds)
  const isOwn = (place: SpotPlace): boolean => own.said.some((one) => isSamePlace(one, place))
  return {
    words: {
      said: [...carried.filter((place) => !isOwn(place)), ...own.said],
      order: own.order.length > 0 ? own.order : former.order.filter(holds),
    },
    carried: carried.length,
    dropped: former.said.length - carried.length,
  }
}

const notesIn = ({ notes, ticksPerQuarter }: Score, place: SpotPlace): readonly Note[] => {
  const from = parseFraction(place.from, ticksPerQuarter) ?? 0
  const to = parseFraction(place.to, ticksPerQuarter) ?? 0
  return notes.filter(
    ({ start, hand }) =>
      start >= from && start < to && (place.hand === 'both' || hand === place.hand),
  )
}
