import type { Oddities } from './layMeasures'
import type { PartOffered } from './score'
import type { Warning } from './warning'

/** What the person should know about what the file holds and the score does not, or not just so. */
export const warnOfOddities = (
  odd: readonly Oddities[],
  parts: readonly PartOffered[],
): readonly Warning[] => {
  const total = (name: keyof Oddities): number => odd.reduce((sum, one) => sum + one[name], 0)
  return [
    ...warnOfParts(parts.filter(({ notes }) => notes > 0)),
    ...noteOddities.flatMap((kind) => {
      const notes = total(kind)
      return notes === 0 ? [] : [{ kind, notes }]
    }),
    ...(total('backedTooFar') > 0 ? [{ kind: 'backedTooFar' } as const] : []),
  ]
}

/** In the order in which they are told. */
const noteOddities = ['unpitched', 'noKey', 'noLength', 'betweenKeys', 'rounded'] as const

const warnOfParts = (parts: readonly PartOffered[]): readonly Warning[] => {
  const names = (those: readonly PartOffered[]): readonly string[] => those.map(({ name }) => name)
  const left = parts.filter(({ taken }) => !taken)
  const taken = parts.filter((part) => part.taken)
  if (left.length > 0) return [{ kind: 'partsTaken', taken: names(taken), left: names(left) }]
  return taken.length > 1 ? [{ kind: 'allParts', count: taken.length }] : []
}
