import { quarter } from './parts'

/** A note value: 4 is a quarter, 8 an eighth; 'breve' two whole notes. */
export interface Value {
  readonly dur: string
  readonly dots: 0 | 1
}

const bases = [
  { dur: 'breve', length: 8 * quarter },
  { dur: '1', length: 4 * quarter },
  { dur: '2', length: 2 * quarter },
  { dur: '4', length: quarter },
  { dur: '8', length: quarter / 2 },
  { dur: '16', length: quarter / 4 },
  { dur: '32', length: quarter / 8 },
  { dur: '64', length: quarter / 16 },
  { dur: '128', length: quarter / 32 },
] as const

/** The one value that lasts `length` parts, or `undefined` when it takes several tied together. */
export const valueOf = (length: number): Value | undefined => {
  for (const base of bases) {
    if (base.length === length) return { dur: base.dur, dots: 0 }
    if (base.length * 1.5 === length) return { dur: base.dur, dots: 1 }
  }
  return undefined
}

export interface Span {
  readonly start: number
  readonly end: number
}

/** How strong a place is; the smaller the stronger. */
export type Strength = (at: number) => number

/**
 * Cuts a sounding span into single values to be tied, so that the strong places of the bar stay
 * visible. A value may cross a place that is weaker than its own start or end (a dotted half from
 * the bar line, an eighth and a dotted quarter), or stand evenly around it (eighth, quarter, eighth).
 * Common practice, no source.
 */
export const splitSound = (span: Span, strength: Strength, places: readonly number[]): Span[] => {
  const inner = places.filter((at) => at > span.start && at < span.end)
  const top = Math.min(...inner.map(strength))
  if (
    valueOf(span.end - span.start) &&
    (inner.length === 0 || mayCross(span, top, strength, inner))
  )
    return [span]
  const strongest = inner.filter((at) => strength(at) === top)
  const cut = strength(span.start) <= top ? strongest.at(-1) : strongest[0]
  if (cut === undefined) return [span]
  return [
    ...splitSound({ start: span.start, end: cut }, strength, places),
    ...splitSound({ start: cut, end: span.end }, strength, places),
  ]
}

const mayCross = (
  span: Span,
  top: number,
  strength: Strength,
  inner: readonly number[],
): boolean => {
  if (strength(span.start) <= top || strength(span.end) < top) return true
  const length = span.end - span.start
  const around = inner.filter((at) => strength(at) === top)
  const isEven = around.length === 1 && around[0] === span.start + length / 2
  return isEven && (top >= 2 || length >= 2 * quarter) && valueOf(length)?.dots === 0
}

/** Cuts silence into rests, each filling one unit of the bar: no syncopated rests, no hidden beats. */
export const splitRest = (span: Span, strength: Strength, places: readonly number[]): Span[] => {
  const rests: Span[] = []
  let at = span.start
  while (at < span.end) {
    const end = restEnd({ start: at, end: span.end }, strength, places)
    rests.push({ start: at, end })
    at = end
  }
  return rests
}

/** The farthest place that one rest may reach: it crosses nothing as strong as its own start. */
const restEnd = (span: Span, strength: Strength, places: readonly number[]): number => {
  const own = strength(span.start)
  let best: number | undefined
  for (const at of [...places.filter((p) => p > span.start && p < span.end), span.end]) {
    if (valueOf(at - span.start)) best = isWhole(span.start, at, strength, places) ? at : best
    if (strength(at) <= own) break
  }
  return best ?? places.find((p) => p > span.start) ?? span.end
}

/** Its end is at least as strong as all that it crosses. */
const isWhole = (
  start: number,
  end: number,
  strength: Strength,
  places: readonly number[],
): boolean => places.every((at) => at <= start || at >= end || strength(at) > strength(end))
