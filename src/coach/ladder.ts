import { tempo, type Tempo } from '@/music/units'
import { limits } from './limits'

/** How the rungs between start and goal are spaced. */
export type Ladder =
  | { readonly kind: 'classic' }
  /** Each rung so many per cent above the last, 3 to 8. */
  | { readonly kind: 'percent'; readonly percent: number }

/** Steps of the classic metronome scale: below `to`, the marks go by `by` (common practice). */
const classicSteps = [
  { to: 60, by: 2 },
  { to: 72, by: 3 },
  { to: 120, by: 4 },
  { to: 144, by: 6 },
  { to: Infinity, by: 8 },
] as const

/** The classic marks up to and including `upTo`: 2, 4 ... 40, 42 ... 60, 63 ... 208 and on by 8. */
export const classicMarks = (upTo: number): readonly Tempo[] => {
  const marks: Tempo[] = []
  let mark = 2
  while (mark <= upTo) {
    marks.push(tempo(mark))
    mark += stepAbove(mark)
  }
  return marks
}

/**
 * The rungs from slow to the goal tempo, which is always the last; they reach down to half the goal,
 * or to `start` where that is slower. Example: classic, goal 66 -> 34 36 ... 58 60 63 66.
 */
export const buildLadder = (
  ladder: Ladder,
  goal: Tempo,
  start?: Tempo,
): readonly [Tempo, ...Tempo[]] => {
  const marks = (
    ladder.kind === 'classic' ? classicMarks(goal) : percentMarks(ladder.percent, goal)
  ).filter((mark) => mark <= goal * (1 - limits.sameTempo))
  const lowest = Math.min(goal * limits.startShare.least, highestUpTo(marks, start ?? goal))
  const [first, ...rest] = [...marks.filter((mark) => mark >= lowest), goal]
  return first === undefined ? [goal] : [first, ...rest]
}

/** The rung to start at: the highest not above `start`, or about 55 % of the goal. */
export const startRung = (rungs: readonly [Tempo, ...Tempo[]], start?: Tempo): Tempo => {
  const goal = rungs.at(-1) ?? rungs[0]
  if (start !== undefined) return rungs.findLast((rung) => rung <= start) ?? rungs[0]
  const { least, usual } = limits.startShare
  const near = rungs.findLast((rung) => rung <= goal * usual)
  const atLeast = rungs.find((rung) => rung >= goal * least) ?? goal
  return near !== undefined && near >= goal * least ? near : atLeast
}

const stepAbove = (mark: number): number => classicSteps.find(({ to }) => mark < to)?.by ?? 8

/** Whole tempos so many per cent apart, counted down from the goal so that the steps are even. */
const percentMarks = (percent: number, goal: Tempo): readonly Tempo[] => {
  const { least, most } = limits.percent
  const factor = 1 + Math.min(most, Math.max(least, percent)) / 100
  const marks = new Set<number>()
  for (let mark = goal / factor; mark >= 2; mark /= factor) marks.add(Math.round(mark))
  return [...marks].toSorted((a, b) => a - b).map(tempo)
}

const highestUpTo = (marks: readonly Tempo[], most: number): number =>
  marks.findLast((mark) => mark <= most) ?? marks[0] ?? most
