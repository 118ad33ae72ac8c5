import type { Key, NoteId } from '@/music/units'
import type { RecordedFlaw } from './journal'
import type { RecordedFlawKind } from './words'

/** One kind of flaw at one place of a chunk. */
export interface FlawPlace {
  readonly kind: RecordedFlawKind
  /** Index of the onset in the chunk. */
  readonly onset: number
  readonly written?: Key
  readonly notes: readonly NoteId[]
  readonly times: number
}

/** `played` was struck where `written` stands. */
export interface Substitution {
  readonly written: Key
  readonly played: Key
  readonly times: number
}

interface Flawed {
  readonly flaws: readonly RecordedFlaw[]
}

/** Flaws of one chunk by place and kind; forgiven ones are not counted. */
export const countPlaces = (repetitions: readonly Flawed[]): readonly FlawPlace[] =>
  joinPlaces(
    flawsOf(repetitions).map(({ kind, onset, written, notes = [] }) => ({
      kind,
      onset,
      ...(written === undefined ? {} : { written }),
      notes,
      times: 1,
    })),
  )

/** Which key was played for which. */
export const countSubstitutions = (repetitions: readonly Flawed[]): readonly Substitution[] =>
  joinSubstitutions(
    flawsOf(repetitions).flatMap(({ kind, written, played }) =>
      kind === 'wrong' && written !== undefined && played !== undefined
        ? [{ written, played, times: 1 }]
        : [],
    ),
  )

/** Counts of the same place and kind as one; the most frequent first, then in the order of the score. */
export const joinPlaces = (counts: readonly FlawPlace[]): readonly FlawPlace[] =>
  join(counts, ({ onset, kind, written }) => `${onset} ${kind} ${written}`).toSorted(
    (a, b) =>
      b.times - a.times ||
      a.onset - b.onset ||
      compare(a.kind, b.kind) ||
      (a.written ?? -1) - (b.written ?? -1),
  )

/** Counts of the same two keys as one; the most frequent first, then by key. */
export const joinSubstitutions = (counts: readonly Substitution[]): readonly Substitution[] =>
  join(counts, ({ written, played }) => `${written} ${played}`).toSorted(
    (a, b) => b.times - a.times || a.written - b.written || a.played - b.played,
  )

/** A brushed key that was forgiven is shown, not counted. */
export const isCounted = (flaw: RecordedFlaw): boolean => !flaw.forgiven

const flawsOf = (repetitions: readonly Flawed[]): readonly RecordedFlaw[] =>
  repetitions.flatMap(({ flaws }) => flaws.filter(isCounted))

const join = <T extends { readonly times: number }>(
  counts: readonly T[],
  nameOf: (count: T) => string,
): readonly T[] => {
  const joined = new Map<string, { readonly first: T; times: number }>()
  for (const count of counts) {
    const name = nameOf(count)
    const known = joined.get(name)
    if (known) known.times += count.times
    else joined.set(name, { first: count, times: count.times })
  }
  return [...joined.values()].map(({ first, times }) => ({ ...first, times }))
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
