import type { FlawKind } from '@/judge/flaw'
import type { Key } from '@/music/units'
import { limits } from './limits'
import type { Problem } from './reasons'

/** A flaw as the coach sees it: what and where. */
export interface CoachFlaw {
  readonly kind: FlawKind
  /** Index of the onset in the chunk. */
  readonly onset: number
  readonly written?: Key
  readonly played?: Key
}

/** A flaw at a place of this chunk, and the repetitions in which it came, counted from 1. */
export interface Sighting {
  readonly flaw: CoachFlaw
  readonly repetitions: readonly number[]
  /** How often it was named as a problem already. */
  readonly named: number
}

/**
 * Enters the flaws of one repetition and tells the first problem among them: a flaw seen twice within
 * ten repetitions, and, when the person went on all the same, after each two more.
 */
export const noteFlaws = (
  sightings: readonly Sighting[],
  flaws: readonly CoachFlaw[],
  repetition: number,
): readonly [readonly Sighting[], Problem | undefined] => {
  const noted = flaws.reduce((all, flaw) => enter(all, flaw, repetition), sightings)
  const found = noted.find((s) => s.repetitions.at(-1) === repetition && isProblem(s, repetition))
  if (!found) return [noted, undefined]
  const named = noted.map((s) => (s === found ? { ...s, named: s.repetitions.length } : s))
  return [named, problemOf(found)]
}

export const isSameFlaw = (a: CoachFlaw, b: CoachFlaw): boolean =>
  a.kind === b.kind && a.onset === b.onset && a.written === b.written

const enter = (
  sightings: readonly Sighting[],
  flaw: CoachFlaw,
  repetition: number,
): readonly Sighting[] => {
  const known = sightings.find((s) => isSameFlaw(s.flaw, flaw))
  if (!known) return [...sightings, { flaw, repetitions: [repetition], named: 0 }]
  if (known.repetitions.at(-1) === repetition) return sightings
  const again = { ...known, flaw, repetitions: [...known.repetitions, repetition] }
  return sightings.map((s) => (s === known ? again : s))
}

const isProblem = ({ repetitions, named }: Sighting, now: number): boolean => {
  const { times, withinRepetitions } = limits.sameFlaw
  const fresh = repetitions.slice(named).filter((n) => n > now - withinRepetitions)
  return fresh.length >= times
}

const problemOf = ({ flaw, repetitions }: Sighting): Problem => ({
  flaw: flaw.kind,
  place: flaw.onset,
  ...(flaw.written === undefined ? {} : { written: flaw.written }),
  ...(flaw.played === undefined ? {} : { played: flaw.played }),
  times: repetitions.length,
})
