/**
 * Someone strikes any key with each click of a metronome: how far behind the clicks, or ahead of them,
 * do the strikes come in? The lag holds the person and the machine together. The loudspeaker's delay
 * and the keyboard's make it larger; most people strike some tens of milliseconds before a click, which
 * makes it smaller (negative mean asynchrony: Repp 2005, Psychon. Bull. Rev. 12:969-992, from memory).
 *
 * Example: clicks at 0, 750, 1500, ... and strikes at 40, 790, 1540, ... -> a lag of 40 ms.
 */
import { ms, type Ms } from '@/music/units'
import { median, standardDeviation } from './line'

/** A strike beside its click. */
export interface TapStroke {
  readonly click: Ms
  /** How long after the click the key was struck; negative: before it. */
  readonly by: Ms
  /** Neither one of the first nor far from the rest. */
  readonly counted: boolean
}

export type Lag =
  /** `far`: more than a setting may leave out. `uneven`: the strikes lie too far apart to say. */
  | {
      readonly kind: 'trusted' | 'far' | 'uneven'
      /** The median of the strikes that count. */
      readonly lag: Ms
      /** The standard deviation of the strikes that count. */
      readonly spread: Ms
      readonly counted: number
    }
  | { readonly kind: 'few'; readonly counted: number }

export interface TapTest {
  /** One to a click at most, in the order of time. */
  readonly strokes: readonly TapStroke[]
  readonly lag: Lag
}

/** The first strikes find the beat; they don't count. */
const finding = 3
/** With ten strikes and the widest spread, two figures of three are within 16 ms (1.25 sd / square root of n). */
const fewestCounted = 10
/** People who never practised tapping have about 30 ms at this tempo (4 % of the gap; Repp 2005, from memory). */
const widestSpread = 40
/** Beyond a quarter of a second by far: nobody plays by such a lag, and the next click is not far. */
export const farthestLag = 300
/** Beyond three robust standard deviations a strike was not meant so (from memory: Leys et al. 2013, J. Exp. Soc. Psychol. 49:764). */
const outlierDeviations = 3
/** Nearer than this a strike was meant so, however even the others: a tenth of the gap at 80 a minute. */
const outlierLeast = 75
/** The standard deviation of normal values is 1.4826 times their median absolute deviation. */
const deviationScale = 1.4826

/** Clicks and strikes in any order, on one clock. */
export const judgeTaps = (clicks: readonly Ms[], taps: readonly Ms[]): TapTest => {
  const paired = pair(clicks, taps)
  const settled = paired.slice(finding)
  const strokes = paired.map((stroke) => ({
    ...stroke,
    counted: settled.includes(stroke) && !isOutlier(stroke, settled),
  }))
  return { strokes, lag: measure(strokes.filter((stroke) => stroke.counted)) }
}

type Paired = Omit<TapStroke, 'counted'>

const measure = (counted: readonly Paired[]): Lag => {
  const each = counted.map(({ by }) => by)
  const lag = median(each)
  const spread = standardDeviation(each)
  if (lag === undefined || spread === undefined || each.length < fewestCounted)
    return { kind: 'few', counted: each.length }
  const figures = { lag: ms(lag), spread: ms(spread), counted: each.length }
  if (spread > widestSpread) return { kind: 'uneven', ...figures }
  return { kind: Math.abs(lag) > farthestLag ? 'far' : 'trusted', ...figures }
}

const isOutlier = ({ by }: Paired, all: readonly Paired[]): boolean => {
  const middle = median(all.map((each) => each.by)) ?? 0
  const deviation = deviationScale * (median(all.map((each) => Math.abs(each.by - middle))) ?? 0)
  return Math.abs(by - middle) > Math.max(outlierLeast, outlierDeviations * deviation)
}

/** Each strike with the click nearest to it; of several, the one that is most like the others' first. */
const pair = (clicks: readonly Ms[], taps: readonly Ms[]): readonly Paired[] => {
  const sorted = clicks.toSorted((a, b) => a - b)
  const gap = median(sorted.slice(1).map((click, i) => click - (sorted[i] ?? click)))
  if (gap === undefined) return []
  const struck = sorted.map((click) =>
    taps
      .map((tap) => ms(tap - click))
      .filter((by) => by >= -gap / 2 && by < gap / 2)
      .toSorted((a, b) => a - b),
  )
  const usual = median(struck.flatMap(([first]) => first ?? [])) ?? 0
  return struck.flatMap((each, i) => {
    const [by] = each.toSorted((a, b) => Math.abs(a - usual) - Math.abs(b - usual))
    const click = sorted[i]
    return by === undefined || click === undefined ? [] : [{ click, by }]
  })
}
