import { ms, type Key, type Ms } from '@/music/units'
import { measure, type HeardNote } from './figures'
import type { Flaw, Mark } from './flaw'
import { isNear, type Ground } from './ground'
import type { JudgeSettings } from './judge'
import { mean } from './line'
import { nameMarks } from './naming'
import { isBrokenOff, onsetAt, onsetsLeft, type Reading, type Step } from './reading'
import type { Repetition, Verdict } from './repetition'
import { nameTimeFlaws, type HeardOnset } from './timing'
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

/** Came no further than one onset of at least three: no try at the chunk, but stray keys. */
export const isNoTry = (ground: Ground, reading: Reading, steps: readonly Step[]): boolean => {
  if (onsetsLeft(ground, reading) < 2) return false
  const isTry = (s: Step): boolean =>
    s.act === 'note' || (s.act === 'foreign' && isNear(s.strike.key, onsetAt(ground, s.onset).keys))
  return new Set(steps.filter(isTry).map((s) => s.onset)).size < 2
}

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
  const heard = hearOnsets(ground, steps, named, first.strike.number)
  const { ticksPerQuarter, barOffset } = ground.chunk
  const timed = nameTimeFlaws(heard, settings, ticksPerQuarter, barOffset)
  const marks: Mark[] = [...named, ...timed].toSorted((a, b) => a.onset - b.onset)
  const flaws = marks.filter((m): m is Flaw => m.kind !== 'right')
  return {
    number,
    start: first.strike.at,
    lastOnset: last.strike.at,
    verdict: verdictOf(flaws, isBroken),
    flaws,
    marks,
    figures: measure(heard, hearNotes(named, first.strike.number, endOf), ticksPerQuarter),
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

/** The onsets as they sounded: right and wrong keys in their places, stragglers and late ones aside. */
const hearOnsets = (
  ground: Ground,
  steps: readonly Step[],
  named: readonly Mark[],
  first: number,
): HeardOnset[] => {
  const heard: HeardOnset[] = []
  const stops = new Set(named.flatMap((m) => (m.kind === 'restart' ? [m.onset] : [])))
  const repeats = new Set(
    steps.flatMap((s) => (s.act === 'echo' || s.act === 'foreign' ? [s.onset] : [])),
  )
  for (const [index, onset] of ground.onsets.entries()) {
    const here = named.flatMap((m) =>
      m.onset === index && (m.kind === 'right' || m.kind === 'wrong') && m.expected && m.played
        ? [{ expected: m.expected, played: m.played }]
        : [],
    )
    const lead = here[0]
    if (!lead) continue
    const times = here.map((h) => h.played.at)
    const earliest = Math.min(...times)
    const spread = Math.max(...times) - earliest
    heard.push({
      onset: index,
      start: onset.start,
      // Where a chord is not together, the pulse is in its first note.
      at: ms(spread > limit.chordSpread ? earliest : (mean(times) ?? earliest)),
      spread: ms(spread),
      rolled: onset.rolled,
      expected: lead.expected,
      played: here.reduce((a, b) => (b.played.at < a.played.at ? b : a)).played,
      afterStop: stops.has(index) || isAfterRepeat(steps, repeats, index, first, times),
    })
  }
  return heard
}

/** A key struck again takes its time: the gap that holds it says nothing about the pulse. */
const isAfterRepeat = (
  steps: readonly Step[],
  repeats: ReadonlySet<number>,
  index: number,
  first: number,
  times: readonly number[],
): boolean =>
  repeats.has(index - 1) &&
  steps.some(
    (s) =>
      s.act === 'echo' &&
      s.onset === index - 1 &&
      s.strike.number >= first &&
      s.strike.at < Math.min(...times),
  )

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
