import type { Key, NoteId } from '@/music/units'
import { groupBy, type Some } from './groupBy'
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
  /** Which keys were struck in place of the written one, or were too many; the most frequent first. */
  readonly played?: readonly KeyCount[]
  /** Of a drift: how often the tempo grew; else it sank. */
  readonly faster?: number
}

export interface KeyCount {
  readonly key: Key
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
    repetitions
      .flatMap(({ flaws }) => flaws.filter(isCounted))
      .map((flaw) => ({
        kind: flaw.kind,
        onset: flaw.onset,
        ...(flaw.written === undefined ? {} : { written: flaw.written }),
        notes: flaw.notes ?? [],
        times: 1,
        ...playedIn(flaw),
        ...(flaw.kind === 'drift' ? { faster: isFaster(flaw) ? 1 : 0 } : {}),
      })),
  )

const playedIn = ({ kind, played }: RecordedFlaw): Pick<FlawPlace, 'played'> =>
  (kind === 'wrong' || kind === 'extra') && played !== undefined
    ? { played: [{ key: played, times: 1 }] }
    : {}

/** The last of its times between onsets was shorter than at an even tempo. */
const isFaster = ({ ms = 0 }: RecordedFlaw): boolean => ms < 0

/** Which key was played for which, the most frequent first, then by key. */
export const substitutionsIn = (places: readonly FlawPlace[]): readonly Substitution[] =>
  [...groupBy(places.flatMap(substitutionsAt), ({ written, played }) => `${written} ${played}`)]
    .map(([, of]) => ({ ...of[0], times: total(of) }))
    .toSorted((a, b) => b.times - a.times || a.written - b.written || a.played - b.played)

const substitutionsAt = ({ kind, written, played = [] }: FlawPlace): readonly Substitution[] =>
  kind === 'wrong' && written !== undefined
    ? played.map(({ key, times }) => ({ written, played: key, times }))
    : []

/** Counts of the same place and kind as one; the most frequent first, then in the order of the score. */
export const joinPlaces = (counts: readonly FlawPlace[]): readonly FlawPlace[] =>
  [...groupBy(counts, ({ onset, kind, written }) => `${onset} ${kind} ${written}`).values()]
    .map((of) => ({ ...of[0], times: total(of), ...joinDetails(of) }))
    .toSorted(
      (a, b) =>
        b.times - a.times ||
        a.onset - b.onset ||
        compare(a.kind, b.kind) ||
        (a.written ?? -1) - (b.written ?? -1),
    )

type Details = Pick<FlawPlace, 'played' | 'faster'>

/** Which keys it was, and which way, of flaws of one kind. */
export const joinDetails = (of: Some<Details>): Details => {
  const played = of.flatMap((each) => each.played ?? [])
  const faster = of.flatMap((each) => each.faster ?? [])
  return {
    ...(played.length > 0 ? { played: joinKeys(played) } : {}),
    ...(faster.length > 0 ? { faster: faster.reduce((sum, n) => sum + n, 0) } : {}),
  }
}

/** Counts of the same key as one; the most frequent first, then by key. */
const joinKeys = (counts: readonly KeyCount[]): readonly KeyCount[] =>
  [...groupBy(counts, ({ key }) => key).values()]
    .map((of) => ({ key: of[0].key, times: total(of) }))
    .toSorted((a, b) => b.times - a.times || a.key - b.key)

/** A brushed key that was forgiven is shown, not counted. */
export const isCounted = (flaw: RecordedFlaw): boolean => !flaw.forgiven

const total = (counts: readonly { readonly times: number }[]): number =>
  counts.reduce((sum, { times }) => sum + times, 0)

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
