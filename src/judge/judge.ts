/**
 * Listens to key events against one chunk, cuts them into repetitions and judges each.
 *
 * `begin(chunk, settings)` gives the state; `step(state, event)` gives the next state and what it
 * found. A whole take is a fold of `step`: live equals replay. A mark is what the page shows of one
 * key at once; the verdict comes when the repetition ends and rests on the best alignment of all of it.
 *
 * Example: chunk C4 D4 E4, played C4 D#4 E4 -> began, mark right C4, mark wrong D4 (D#4 in its
 * place), mark right E4, ended (flawed, one flaw).
 */
import type { Chunk } from '@/music/chunk'
import type { KeyDown } from '@/music/keyEvent'
import { ms, type Ms } from '@/music/units'
import { closeRepetition, isNoTry, stepsOf, type Release } from './closing'
import { readStrike } from './cutting'
import { concludeAt } from './deadline'
import type { Finding, JudgeEvent, JudgeSettings } from './finding'
import { layGround, type Ground } from './ground'
import { showMarks, type Shown } from './live'
import {
  closingCost,
  idleReading,
  isIdle,
  type Cut,
  type Reading,
  type Step,
  type Strike,
} from './reading'
import * as limit from './thresholds'

/** Everything the judge knows; opaque outside. */
export interface Judge {
  readonly ground: Ground
  readonly settings: JudgeSettings
  /** All readings of what was played since the last sure cut, the cheapest first. */
  readonly readings: readonly Reading[]
  /** The repetition that surely has begun: the number of its first strike. */
  readonly begun: number | undefined
  /** How many repetitions have ended, and how many keys were struck. */
  readonly ended: number
  readonly strikes: number
  /** When the latest key was struck. */
  readonly lastAt: Ms | undefined
  readonly releases: Release | undefined
  readonly shown: Shown
  /** When silence has a meaning of its own; undefined while nothing is pending. */
  readonly deadline: Ms | undefined
}

export type { Finding, JudgeEvent, JudgeSettings } from './finding'

/** A judge that has heard nothing yet. */
export const beginJudge = (chunk: Chunk, settings: JudgeSettings): Judge => ({
  ground: layGround(chunk),
  settings,
  readings: [idleReading(settings.quarter ? settings.quarter / chunk.ticksPerQuarter : 0)],
  begun: undefined,
  ended: 0,
  strikes: 0,
  lastAt: undefined,
  releases: undefined,
  shown: [],
  deadline: undefined,
})

/** One event on: the judge as it is then, and what it found, in the order in which it happened. */
export const stepJudge = (
  judge: Judge,
  event: JudgeEvent,
): readonly [Judge, readonly Finding[]] => {
  const findings: Finding[] = []
  const until = event.kind === 'clock' ? event.at - limit.deliveryLag : event.at
  let now = judge
  if (now.deadline !== undefined && now.deadline <= until) now = conclude(now, findings)
  switch (event.kind) {
    case 'down':
      return [strike(now, event, findings), findings]
    case 'up':
      if (isAllIdle(now)) return [now, findings]
      return [
        { ...now, releases: { before: now.releases, key: event.key, at: event.at } },
        findings,
      ]
    case 'pedal':
    case 'clock':
      return [now, findings]
  }
}

const isAllIdle = (judge: Judge): boolean =>
  judge.begun === undefined &&
  judge.shown.length === 0 &&
  judge.readings.length === 1 &&
  judge.readings.every((r) => isIdle(r) && !r.step)

const strike = (judge: Judge, event: KeyDown, findings: Finding[]): Judge => {
  const struck: Strike = {
    number: judge.strikes,
    key: event.key,
    at: event.at,
    velocity: event.velocity,
  }
  const pause = judge.lastAt === undefined ? Infinity : event.at - judge.lastAt
  const before = believed(judge)
  const read: Judge = {
    ...judge,
    readings: readStrike(judge.ground, judge.readings, struck, pause),
    strikes: judge.strikes + 1,
    lastAt: event.at,
  }
  const cut = commitCuts(read, findings)
  const told = tellOldStrays(cut, struck.at, findings)
  const shown = show(told, cut.begun === judge.begun ? before : undefined, findings)
  return { ...shown, deadline: concludeAt(shown.ground, shown.readings, struck.at) }
}

/** The reading that is believed, as far as it goes on with the repetition that surely has begun. */
const believed = (judge: Judge): Reading | undefined => {
  const best = judge.readings[0]
  return best && best.cuts.length === 0 && !isIdle(best) ? best : undefined
}

const show = (judge: Judge, before: Reading | undefined, findings: Finding[]): Judge => {
  const now = believed(judge)
  if (!now || judge.begun === undefined) return judge
  const [shown, found] = showMarks(
    judge.ground,
    judge.shown,
    before,
    now,
    judge.readings,
    judge.begun,
  )
  findings.push(...found)
  return { ...judge, shown }
}

/** Makes every cut stand on which all readings near the best agree. */
const commitCuts = (judge: Judge, findings: Finding[]): Judge => {
  let now = judge
  for (;;) {
    const best = now.readings[0]
    const cut = best?.cuts[0]
    if (!best || !cut) return now
    const near = now.readings.filter((r) => r.cost < best.cost + limit.cutLead)
    if (!near.every((r) => isSameCut(r.cuts[0], cut))) return now
    now = commit(now, cut, findings)
  }
}

const isSameCut = (a: Cut | undefined, b: Cut): boolean =>
  a?.strike === b.strike && a.begins === b.begins

/** The past of the cut is told, and readings that do not share the cut are given up. */
const commit = (judge: Judge, cut: Cut, findings: Finding[]): Judge => {
  const told = tell(judge, cut.past, findings)
  const sharing = told.readings.filter((r) => isSameCut(r.cuts[0], cut))
  const least = sharing[0]?.cost ?? 0
  const readings = sharing.map((r) => ({ ...r, cost: r.cost - least, cuts: r.cuts.slice(1) }))
  if (!cut.begins) return { ...told, readings, begun: undefined }
  const at = beginningAt(readings[0], cut.strike)
  findings.push({ kind: 'began', repetition: told.ended, at })
  return { ...told, readings, begun: cut.strike }
}

/** When the strike of a cut was: of the reading's own steps, or of a later cut's past. */
const beginningAt = (reading: Reading | undefined, number: number): Ms => {
  const chains = reading ? [reading, ...reading.cuts.map((c) => c.past)] : []
  for (const chain of chains) {
    const step = stepsOf(chain).find((s) => s.strike.number === number)
    if (step) return step.strike.at
  }
  throw new Error(`no strike ${number}`)
}

/** Tells what is over: a repetition with its verdict, or stray keys. */
const tell = (judge: Judge, past: Reading, findings: Finding[]): Judge => {
  const steps = stepsOf(past)
  const over: Judge = { ...judge, begun: undefined, shown: [] }
  const first = steps[0]
  if (!first) return over
  if (isIdle(past) || isNoTry(judge.ground, past, steps)) {
    for (const { slot } of judge.shown) findings.push({ kind: 'unmark', slot })
    for (const { strike: s } of steps) findings.push({ kind: 'stray', key: s.key, at: s.at })
    return over
  }
  const { ground, settings, ended, releases } = judge
  const repetition = closeRepetition(ground, settings, past, ended, releases)
  findings.push({ kind: 'ended', repetition })
  return { ...over, ended: ended + 1, releases: laterThan(releases, repetition.lastOnset) }
}

const laterThan = (releases: Release | undefined, at: Ms): Release | undefined =>
  releases && releases.at > at ? { ...releases, before: laterThan(releases.before, at) } : undefined

/** Strays too old to be a beginning after all are told, and forgotten. */
const tellOldStrays = (judge: Judge, at: Ms, findings: Finding[]): Judge => {
  if (judge.begun !== undefined) return judge
  const idle = judge.readings.find((r) => isIdle(r) && r.cuts.length === 0)
  const sure = judge.readings[0]?.cuts[0]?.strike ?? Infinity
  const old = (idle ? stepsOf(idle) : []).filter(
    (s) => s.strike.at < at - limit.strayWait && s.strike.number < sure,
  )
  const lastOld = old.at(-1)?.strike
  if (!lastOld) return judge
  const last = lastOld.number
  for (const { strike: s } of old) findings.push({ kind: 'stray', key: s.key, at: s.at })
  const forget = (r: Reading): Reading => ({ ...r, step: stepsAfter(r.step, last) })
  const readings = judge.readings.filter((r) => (r.cuts[0]?.strike ?? Infinity) > last)
  return {
    ...judge,
    releases: laterThan(judge.releases, lastOld.at),
    readings: readings.map((r) => {
      const [first, ...rest] = r.cuts
      return first ? { ...r, cuts: [{ ...first, past: forget(first.past) }, ...rest] } : forget(r)
    }),
  }
}

const stepsAfter = (step: Step | undefined, number: number): Step | undefined =>
  step && step.strike.number > number
    ? { ...step, before: stepsAfter(step.before, number) }
    : undefined

/** Silence decides: the cheapest reading, taken as it stands, is what was played. */
const conclude = (judge: Judge, findings: Finding[]): Judge => {
  const total = (r: Reading): number => r.cost + closingCost(judge.ground, r)
  const best = judge.readings.reduce((a, b) => (total(b) < total(a) ? b : a))
  let now: Judge = { ...judge, readings: [best] }
  for (let cut = best.cuts[0]; cut; cut = now.readings[0]?.cuts[0]) now = commit(now, cut, findings)
  const last = now.readings[0] ?? best
  now = tell(now, last, findings)
  return {
    ...now,
    readings: [idleReading(last.pace)],
    releases: undefined,
    deadline: undefined,
  }
}

/** A time by which everything played has been judged: the closing clock event of a replay. */
export const closingTime = (judge: Judge): Ms => ms((judge.deadline ?? 0) + 2 * limit.deliveryLag)
