import type { CostTable } from './costTable'
import { withDigits, type Digits, type Grip } from './grips'
import { searchPaths, type Path } from './search'

/** So many grips in a row, met again at once, are a group that wants the same fingers: a group of four. */
const leastGrips = 4
/** Met again elsewhere it takes two groups of four; shorter ones may well go on otherwise. */
const leastElsewhere = 8

/**
 * The grips with the same digits preferred in repeated groups. Which ones is tried in two ways, as the
 * search gives them most often and at last; the cheaper way stands. Digits that are given in one of
 * the groups are preferred in all.
 */
export const preferAlike = (grips: readonly Grip[], table: CostTable): readonly Grip[] => {
  const groups = likeGrips(findAlike(grips))
  const [free] = groups.length === 0 ? [] : searchPaths(grips, table, 1)
  if (!free) return grips
  const once = cheapestWay(grips, groups, free, [usual, last], table)
  // Where the ends of a group differ, the digits that both bear are only met on the way.
  if (!once || isAlike(groups, once.path)) return once?.grips ?? grips
  const twice = cheapestWay(grips, groups, once.path, [last], table)
  return twice && twice.path.cost < once.path.cost ? twice.grips : once.grips
}

type Groups = readonly (readonly number[])[]

interface Way {
  readonly grips: readonly Grip[]
  readonly path: Path
}

const cheapestWay = (
  grips: readonly Grip[],
  groups: Groups,
  source: Path,
  choices: readonly Choose[],
  table: CostTable,
): Way | undefined => {
  const ways = choices.flatMap((choose): Way[] => {
    const preferred = withDigits(grips, chosenDigits(grips, groups, source, choose), 'preferred')
    const [path] = searchPaths(preferred, table, 1)
    return path ? [{ grips: preferred, path }] : []
  })
  return ways.toSorted((a, b) => a.path.cost - b.path.cost)[0]
}

const chosenDigits = (
  grips: readonly Grip[],
  groups: Groups,
  source: Path,
  choose: Choose,
): ReadonlyMap<number, Digits> => {
  const digits = new Map<number, Digits>()
  for (const group of groups) {
    const given = group.filter((i) => grips[i]?.keys.some(({ fixed }) => fixed !== undefined))
    const chosen = choose(given.length > 0 ? given : group, source)
    for (const i of group) digits.set(i, chosen)
  }
  return digits
}

const isAlike = (groups: Groups, path: Path): boolean =>
  groups.every((group) => new Set(group.map((i) => digitsAt(path, i).join(''))).size === 1)

type Choose = (group: readonly number[], path: Path) => Digits

const last: Choose = (group, path) => digitsAt(path, group.at(-1))

const digitsAt = (path: Path, i = 0): Digits => (path.holds[i] ?? []).map(({ finger }) => finger)

/** The digits most often met in the group. */
const usual: Choose = (group, path) => {
  const counts = new Map<string, number>()
  const wordOf = (i: number): string => digitsAt(path, i).join('')
  for (const i of group) counts.set(wordOf(i), (counts.get(wordOf(i)) ?? 0) + 1)
  const most = Math.max(...counts.values())
  return digitsAt(
    path,
    group.find((i) => counts.get(wordOf(i)) === most),
  )
}

/** The grips that stand at the same place of repeated groups, two or more each. */
const likeGrips = (firsts: readonly number[]): Groups => {
  const groups = new Map<number, number[]>()
  for (const [i, like] of firsts.entries()) {
    const group = groups.get(like)
    if (group) group.push(i)
    else groups.set(like, [i])
  }
  return [...groups.values()].filter((group) => group.length > 1)
}

/**
 * For each grip the first one like it in a repeated group; itself where nothing is repeated. Groups
 * may follow each other at once or stand pages apart: C E G E C E G E -> 0 1 2 3 0 1 2 3. Each grip
 * is looked at once or twice, so that the work grows with their number (the scheme of Lempel & Ziv 1977).
 */
const findAlike = (grips: readonly Grip[]): readonly number[] => {
  const words = grips.map(describeGrip)
  const first = grips.map((_, i) => i)
  const seen = new Map<string, number>()
  let i = 0
  while (i < words.length) {
    const group = words.slice(i, i + leastGrips).join('|')
    const before = i + leastGrips <= words.length ? seen.get(group) : undefined
    if (before === undefined) {
      seen.set(group, i)
      i++
      continue
    }
    const end = matchEnd(words, before, i)
    if (end - before < 2 * (i - before) && end - i < leastElsewhere) {
      seen.set(group, i)
      i++
      continue
    }
    for (let offset = 0; i + offset < end; offset++)
      first[i + offset] = first[before + offset] ?? before + offset
    i = end
  }
  return first
}

const describeGrip = ({ keys }: Grip): string =>
  keys.map((key) => `${key.place}${key.heldFrom === undefined ? '' : 'h'}`).join(' ')

const matchEnd = (words: readonly string[], before: number, from: number): number => {
  let to = from
  while (to < words.length && words[to] === words[before + to - from]) to++
  return to
}
