import type { Overruled, Sum, Tally } from '@/journal/sums'
import {
  recordedFlawKinds,
  recordedOverrules,
  type RecordedFlawKind,
  type RecordedOverrule,
} from '@/journal/words'
import { estimateShare, type Estimate } from './proportion'

/** What some days come to together. */
export interface Figures {
  readonly tally: Tally
  /** clean / (clean + flawed) with its interval; absent while nothing was clean or flawed. */
  readonly share?: Estimate
  readonly repetitions: number
  readonly minutes: number
  /** Of one chunk on one day. */
  readonly longestStreak: number
  /** The most frequent kind first; those that never came are left out. */
  readonly flaws: readonly { readonly kind: RecordedFlawKind; readonly times: number }[]
}

export const joinSums = (sums: readonly Sum[]): Figures => {
  const tally = { clean: 0, flawed: 0, brokenOff: 0 }
  const times = new Map<RecordedFlawKind, number>()
  let ms = 0
  let longestStreak = 0
  for (const sum of sums) {
    tally.clean += sum.tally.clean
    tally.flawed += sum.tally.flawed
    tally.brokenOff += sum.tally.brokenOff
    ms += sum.ms
    longestStreak = Math.max(longestStreak, sum.longestStreak)
    for (const kind of recordedFlawKinds) {
      const more = sum.flaws[kind]
      if (more !== undefined) times.set(kind, (times.get(kind) ?? 0) + more)
    }
  }
  const share = estimateShare(tally.clean, tally.clean + tally.flawed)
  return {
    tally,
    ...(share ? { share } : {}),
    repetitions: tally.clean + tally.flawed + tally.brokenOff,
    minutes: ms / 60_000,
    longestStreak,
    flaws: [...times]
      .map(([kind, n]) => ({ kind, times: n }))
      .toSorted((a, b) => b.times - a.times),
  }
}

/** How often the person decided otherwise, in one way. */
export interface OverruleCount {
  readonly what: RecordedOverrule
  readonly times: number
}

export const joinOverruled = (sums: readonly Overruled[]): readonly OverruleCount[] =>
  // That a sitting ends is no news.
  recordedOverrules
    .filter((what) => what !== 'end')
    .flatMap((what) => {
      const times = sums.reduce((n, { overruled }) => n + (overruled[what] ?? 0), 0)
      return times > 0 ? [{ what, times }] : []
    })

/** Something came to an end, or was broken off. */
export const isPlayed = ({ tally }: Pick<Sum, 'tally'>): boolean =>
  tally.clean + tally.flawed + tally.brokenOff > 0
