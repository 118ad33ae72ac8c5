import { clickGrid, type Chunk } from '@/music/chunk'
import { ms, type Ms } from '@/music/units'
import type { Flaw } from './flaw'
import type { HeardOnset } from './hearing'
import { fitLine, mean, median } from './line'
import type { JudgeSettings } from './finding'
import * as limit from './thresholds'

export interface Gap {
  readonly to: HeardOnset
  readonly ticks: number
  readonly passed: number
}

export const gapsOf = (heard: readonly HeardOnset[]): Gap[] =>
  heard.slice(1).flatMap((to, i) => {
    const from = heard[i]
    if (!from || to.afterStop || to.start <= from.start) return []
    return [{ to, ticks: to.start - from.start, passed: to.at - from.at }]
  })

/** Milliseconds a tick of the player's own steady tempo; undefined with fewer than two onsets. */
export const paceOf = (heard: readonly HeardOnset[]): number | undefined => {
  const slope = heard.some((h) => h.afterStop)
    ? median(gapsOf(heard).map((g) => g.passed / g.ticks))
    : fitLine(heard.map((h) => ({ x: h.start, y: h.at })))?.slope
  return slope !== undefined && slope > 0 ? slope : undefined
}

/** The flaws of time that the standard asks for. */
export const nameTimeFlaws = (
  heard: readonly HeardOnset[],
  settings: JudgeSettings,
  chunk: Chunk,
): Flaw[] => {
  if (settings.standard === 'notes') return []
  const set = settings.quarter === undefined ? undefined : settings.quarter / chunk.ticksPerQuarter
  const stops = findStops(gapsOf(heard), set)
  const hesitations = stops.map((s) => s.flaw)
  if (settings.standard === 'flow') return hesitations
  const spreads = nameSpreads(heard)
  if (set !== undefined && settings.click !== undefined) {
    const grid = nameAgainstClick(heard, set, settings.click, chunk)
    return [...hesitations, ...spreads, ...grid]
  }
  const firm = stops.filter((s) => s.isFirm).map((s) => s.flaw)
  const pulse = namePulse(heard, new Set(firm.map((f) => f.onset)))
  const isUneven = pulse.some((f) => f.kind === 'uneven')
  const stopped = isUneven ? firm : hesitations
  const apart = pulse.filter((f) => !stopped.some((s) => s.onset === f.onset))
  return [...stopped, ...spreads, ...apart]
}

/** How many gaps to each side give the pace that a pause is measured by. */
const around = 4

interface Stop {
  readonly flaw: Flaw
  /** Twice the written gap and more; less may be the long half of an uneven pulse. */
  readonly isFirm: boolean
}

const findStops = (gaps: readonly Gap[], set: number | undefined): Stop[] => {
  // No pace around a gap is quicker than the quickest, so most gaps need no look at their neighbours.
  const quickest = Math.min(set ?? Infinity, ...gaps.map((g) => g.passed / g.ticks))
  return gaps.flatMap((gap, i) => {
    if (gap.passed < limit.hesitationGap * quickest * gap.ticks) return []
    const pace = paceAround(gaps, i) ?? set
    if (pace === undefined || pace <= 0) return []
    const written = pace * gap.ticks
    const over = gap.passed - written
    if (gap.passed < limit.hesitationGap * written || over < limit.hesitationOver) return []
    return [{ flaw: flawAt('hesitation', gap.to, over), isFirm: gap.passed >= 2 * written }]
  })
}

/**
 * The pace near a gap without it: the median of its neighbours, alone and in pairs, so that the long
 * gaps of an uneven pulse (long, short, long, short) are not taken for stops.
 */
const paceAround = (gaps: readonly Gap[], i: number): number | undefined => {
  const paces: number[] = []
  for (let j = Math.max(0, i - around); j <= i + around; j++) {
    const gap = gaps[j]
    const next = gaps[j + 1]
    if (!gap || j === i) continue
    paces.push(gap.passed / gap.ticks)
    if (next && j + 1 !== i) paces.push((gap.passed + next.passed) / (gap.ticks + next.ticks))
  }
  return median(paces)
}

const nameSpreads = (heard: readonly HeardOnset[]): Flaw[] =>
  heard
    .filter((h) => !h.rolled && h.spread > limit.chordSpread)
    .map((h) => flawAt('spread', h, h.spread))

const flawAt = (kind: Flaw['kind'], heard: HeardOnset, size: number): Flaw => ({
  kind,
  onset: heard.onset,
  expected: heard.expected,
  played: heard.played,
  ms: ms(Math.round(size * 10) / 10),
})

// --- against the player's own pulse ---------------------------------------------------------

interface Deviation {
  readonly gap: Gap
  /** The gap relative to the written one at the steady tempo; 0 is exact, 0.5 half longer. */
  readonly share: number
  readonly written: number
}

/** Drift over the whole, else unevenness over the whole, else single onsets early or late. */
const namePulse = (heard: readonly HeardOnset[], stopped: ReadonlySet<number>): Flaw[] => {
  const gaps = gapsOf(heard).filter((g) => !stopped.has(g.to.onset))
  const pace = pulseOf(gaps)
  if (pace === undefined || pace <= 0 || gaps.length < 2) return []
  const raw = gaps.map((gap) => deviationOf(gap, pace))
  const drift = driftOf(raw)
  const last = gaps.at(-1)
  const flaws: Flaw[] = []
  const least = gaps.length > 3 ? limit.driftShare : limit.driftShareOfThree
  const written = pace * Math.min(...gaps.map((g) => g.ticks))
  const isDrift =
    Math.abs(drift.total) >= least && Math.abs(drift.total) * written >= limit.driftLeast
  if (isDrift && last) flaws.push(flawAt('drift', last.to, drift.total * pace * last.ticks))
  const flat = raw.map((d, i) => ({ ...d, share: d.share - drift.at(i) }))
  const uneven = mean(flat.map((d) => (isAudible(d) ? Math.abs(d.share) : 0))) ?? 0
  if (gaps.length >= 3 && uneven >= limit.unevenMean) {
    const worst = flat.reduce((a, b) => (Math.abs(b.share) > Math.abs(a.share) ? b : a))
    return [flawAt('uneven', worst.gap.to, worst.share * worst.written)]
  }
  return [...flaws, ...nameDisplaced(isDrift ? flat : raw)]
}

/** Of so few gaps the median is one of them, and no better than the mean, once the stops are out. */
const fewGaps = 3

const pulseOf = (gaps: readonly Gap[]): number | undefined =>
  gaps.length > fewGaps
    ? median(gaps.map((g) => g.passed / g.ticks))
    : mean(gaps.map((g) => g.passed / g.ticks))

const deviationOf = (gap: Gap, pace: number): Deviation => ({
  gap,
  share: gap.passed / (pace * gap.ticks) - 1,
  written: pace * gap.ticks,
})

const isAudible = (d: Deviation): boolean => Math.abs(d.share) * d.written > limit.deviationLeast

/** The straight change of the gaps from the first to the last, by the median of all slopes. */
const driftOf = (
  deviations: readonly Deviation[],
): { readonly total: number; readonly at: (index: number) => number } => {
  const line = fitLine(deviations.map((d, x) => ({ x, y: d.share })))
  if (!line || deviations.length < 3) return { total: 0, at: () => 0 }
  return {
    total: line.slope * (deviations.length - 1),
    at: (x) => line.slope * (x - (deviations.length - 1) / 2),
  }
}

/** An onset is late when the gap before it is long and the one after it as much too short. */
const nameDisplaced = (deviations: readonly Deviation[]): Flaw[] => {
  const flaws: Flaw[] = []
  for (let i = 0; i < deviations.length; i++) {
    const before = deviations[i]
    const after = deviations[i + 1]
    if (!before || !isAudible(before)) continue
    const shift =
      after && after.share * before.share < 0 ? (before.share - after.share) / 2 : undefined
    if (shift !== undefined && Math.abs(shift) >= limit.displacedGap) {
      flaws.push(flawAt(shift > 0 ? 'late' : 'early', before.gap.to, shift * before.written))
      i++
    } else if (Math.abs(before.share) >= limit.loneGap) {
      const kind = before.share > 0 ? 'late' : 'early'
      flaws.push(flawAt(kind, before.gap.to, before.share * before.written))
    }
  }
  return flaws
}

// --- against the metronome ------------------------------------------------------------------

/** Deviations beyond tolerance from the grid of clicks; more than this many are one flaw of the whole. */
const mostSingle = 3

const nameAgainstClick = (
  heard: readonly HeardOnset[],
  pace: number,
  click: Ms,
  chunk: Chunk,
): Flaw[] => {
  const { behind, beat } = clickGrid(chunk)
  const raw = heard.map((h) => h.at - click - (h.start + behind) * pace)
  const middle = median(raw)
  if (middle === undefined) return []
  // Any click may be the one to begin with.
  const whole = Math.round(middle / (beat * pace)) * beat * pace
  const off = heard.map((h, i) => ({ heard: h, by: (raw[i] ?? 0) - whole }))
  const isBeyond = (by: number, i: number): boolean => {
    const room = clamp(
      limit.clickGap * gapAround(heard, i) * pace,
      limit.clickLeast,
      limit.clickMost,
    )
    return !heard[i]?.afterStop && Math.abs(by) > room
  }
  const beyond = off.filter(({ by }, i) => isBeyond(by, i))
  if (beyond.length <= mostSingle) {
    return beyond.map(({ heard: h, by }) => flawAt(by > 0 ? 'late' : 'early', h, by))
  }
  const worst = beyond.reduce((a, b) => (Math.abs(b.by) > Math.abs(a.by) ? b : a))
  const line = fitLine(off.map((o) => ({ x: o.heard.start, y: o.by })))
  const fitted = (x: number): number => (line ? line.offset + line.slope * x : 0)
  const apart = off.filter((o, i) => isBeyond(o.by - fitted(o.heard.start), i))
  const last = off.at(-1)?.heard.start ?? 0
  if (2 * apart.length < beyond.length && Math.abs(fitted(last) - fitted(0)) > limit.clickMost) {
    return [flawAt('drift', worst.heard, worst.by)]
  }
  const signs = new Set(beyond.map((b) => Math.sign(b.by)))
  if (signs.size > 1) return [flawAt('uneven', worst.heard, worst.by)]
  return [flawAt(worst.by > 0 ? 'late' : 'early', worst.heard, worst.by)]
}

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x))

const gapAround = (heard: readonly HeardOnset[], i: number): number => {
  const here = heard[i]
  const next = heard[i + 1] ?? here
  const before = heard[i + 1] ? here : (heard[i - 1] ?? here)
  return next && before ? Math.max(0, next.start - before.start) : 0
}
