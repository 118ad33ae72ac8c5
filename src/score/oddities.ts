import type { Oddities } from './layMeasures'
import type { PartOffered } from './score'

/** What the person should know about what the file holds and the score does not, or not just so. */
export const describeOddities = (
  odd: readonly Oddities[],
  parts: readonly PartOffered[],
): readonly string[] => {
  const total = (name: keyof Oddities): number => odd.reduce((sum, one) => sum + one[name], 0)
  return [
    ...describeParts(parts.filter(({ notes }) => notes > 0)),
    ...say(total('unpitched'), 'without pitch left out.'),
    ...say(total('noKey'), 'outside of all keys left out.'),
    ...say(total('noLength'), 'without a length left out.'),
    ...say(total('betweenKeys'), 'between two keys; the one on the natural’s side is taken.'),
    ...say(total('rounded'), 'with lengths that no division of the quarter holds; rounded.'),
    ...(total('backedTooFar') > 0
      ? ['A voice goes back beyond its bar line; it was begun at the bar line.']
      : []),
  ]
}

const say = (n: number, what: string): readonly string[] =>
  n === 0 ? [] : [`${n === 1 ? '1 note' : `${n} notes`} ${what}`]

const describeParts = (parts: readonly PartOffered[]): readonly string[] => {
  const name = ({ name: own }: PartOffered): string => own || 'unnamed'
  const left = parts.filter(({ taken }) => !taken)
  const taken = parts.filter((part) => part.taken)
  if (left.length > 0)
    return [
      `Taken from the file: ${taken.map(name).join(', ')}; left out: ${left.map(name).join(', ')}.`,
    ]
  return taken.length > 1
    ? [`The file has ${taken.length} parts and none for a piano alone; all are taken together.`]
    : []
}
