import type { RecordedFlaw, RepetitionRecorded } from '@/journal/journal'
import type { RecordedFlawKind } from '@/journal/words'
import type { ChunkId, Key, NoteId } from '@/music/units'

/** One kind of flaw at one place of a chunk. */
export interface FlawCount {
  readonly chunk: ChunkId
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

/** Flaws by place and kind, the most frequent first, then in the order of the score; forgiven ones are not counted. */
export const countFlaws = (repetitions: readonly RepetitionRecorded[]): readonly FlawCount[] => {
  const counts = new Map<string, FlawCount>()
  for (const { chunk, flaws } of repetitions)
    for (const { kind, onset, written, notes = [] } of flaws.filter(isCounted)) {
      const name = [chunk, onset, kind, written].join(' ')
      const times = (counts.get(name)?.times ?? 0) + 1
      const where = { chunk, kind, onset, ...(written === undefined ? {} : { written }), notes }
      counts.set(name, { ...where, times })
    }
  return [...counts.values()].toSorted((a, b) => b.times - a.times || a.onset - b.onset)
}

/** Which key was played for which, the most frequent first, then by key. */
export const countSubstitutions = (
  repetitions: readonly RepetitionRecorded[],
): readonly Substitution[] => {
  const counts = new Map<string, Substitution>()
  for (const { kind, written, played } of repetitions.flatMap((r) => r.flaws).filter(isCounted)) {
    if (kind !== 'wrong' || written === undefined || played === undefined) continue
    const name = `${written} ${played}`
    counts.set(name, { written, played, times: (counts.get(name)?.times ?? 0) + 1 })
  }
  return [...counts.values()].toSorted(
    (a, b) => b.times - a.times || a.written - b.written || a.played - b.played,
  )
}

const isCounted = (flaw: RecordedFlaw): boolean => !flaw.forgiven
