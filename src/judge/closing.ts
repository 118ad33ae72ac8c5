import type { Key, Ms } from '@/music/units'
import { measure, type HeardNote } from './figures'
import type { Flaw, Mark } from './flaw'
import { isNear, type Ground } from './ground'
import type { JudgeSettings } from './finding'
import { nameMarks } from './naming'
import { isBrokenOff, onsetAt, onsetsLeft, type Reading, type Step } from './reading'
import type { Repetition, Verdict } from './repetition'
import { nameTimeFlaws } from './timing'
import { hearOnsets } from './hearing'
import * as limit from './thresholds'

/** Keys let go, the latest first. */
export interface Release {
  readonly before: Release | undefined
  readonly key: Key
  readonly at: Ms
}

export const stepsOf = (reading: Reading): Step[] => {
  const steps: Step[] = []
  for (let step = reading.step; step; step = step.before) steps.push(step)
  return steps.reverse()
}

/** Only the first onset of at least three, and nothing wrong: no try at the chunk, but stray keys. */
export const isNoTry = (ground: Ground, reading: Reading, steps: readonly Step[]): boolean =>
  onsetsLeft(ground, reading) > 1 &&
  steps.every((s) =>
    s.act === 'foreign'
      ? !isNear(onsetAt(ground, s.onset), s.strike.key)
      : s.act !== 'echo' && s.onset === 0,
  )

/** The verdict on a repetition that has ended, from the best reading of all of it. */
export const closeRepetition = (
  ground: Ground,
  settings: JudgeSettings,
  reading: Reading,
  number: number,
  releases: Release | undefined,
): Repetition => {
  const steps = stepsOf(reading)
  const first = steps[0]
  const last = steps.at(-1)
  if (!first || !last) throw new Error('a repetition has a first strike')
  const isBroken = isBrokenOff(ground, reading)
  const endOf = releaseTimes(steps, releases)
  const named = nameMarks({
    ground,
    first: first.strike.number,
    steps,
    from: 0,
    to: isBroken ? reading.top : ground.last,
    isDue: (onset) => !isBroken || onset < reading.top,
  }).map(({ mark }) => forgive(mark, first.strike.number, endOf, settings))
  const heard = hearOnsets(ground, named)
  const timed = nameTimeFlaws(heard, settings, ground.chunk)
  const marks: Mark[] = [...named, ...timed].toSorted((a, b) => a.onset - b.onset)
  const flaws = marks.filter((m): m is Flaw => m.kind !== 'right')
  return {
    number,
    start: first.strike.at,
    lastOnset: last.strike.at,
    verdict: verdictOf(flaws, isBroken),
    flaws,
    marks,
    figures: measure(
      heard,
      hearNotes(named, first.strike.number, endOf),
      ground.chunk.ticksPerQuarter,
    ),
  }
}

const verdictOf = (flaws: readonly Flaw[], isBroken: boolean): Verdict => {
  if (flaws.some((f) => !f.forgiven)) return 'flawed'
  return isBroken ? 'brokenOff' : 'clean'
}

/** When each strike was let go, by its number. */
const releaseTimes = (
  steps: readonly Step[],
  releases: Release | undefined,
): ReadonlyMap<number, Ms> => {
  const times = new Map<number, Ms>()
  const latest = new Map<Key, Ms>()
  let release = releases
  for (let i = steps.length - 1; i >= 0; i--) {
    const step = steps[i]
    if (!step) continue
    while (release && release.at > step.strike.at) {
      latest.set(release.key, release.at)
      release = release.before
    }
    const until = latest.get(step.strike.key)
    if (until !== undefined) times.set(step.strike.number, until)
    latest.delete(step.strike.key)
  }
  return times
}

/** Marks an extra key that was only brushed as forgiven, where the person chose so. */
const forgive = (
  mark: Mark,
  first: number,
  endOf: ReadonlyMap<number, Ms>,
  settings: JudgeSettings,
): Mark => {
  if (!settings.forgiveBrushed || (mark.kind !== 'extra' && mark.kind !== 'repeated')) return mark
  const { played } = mark
  const end = played && endOf.get(first + played.index)
  const isBrushed =
    played !== undefined &&
    end !== undefined &&
    played.velocity <= limit.brushedVelocity &&
    end - played.at <= limit.brushedLength
  return isBrushed ? { ...mark, forgiven: true } : mark
}

const hearNotes = (
  named: readonly Mark[],
  first: number,
  endOf: ReadonlyMap<number, Ms>,
): HeardNote[] =>
  named.flatMap((m) =>
    m.kind === 'right'
      ? [
          {
            onset: m.onset,
            hand: m.expected.hand,
            at: m.played.at,
            until: endOf.get(first + m.played.index),
            velocity: m.played.velocity,
          },
        ]
      : [],
  )
