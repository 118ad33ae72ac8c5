import type { Metre } from './metre'
import { quarter, toParts } from './parts'
import type { Stretch } from './stretch'
import type { Tuplet } from './tuplets'
import type { Span } from './values'

/** From where to where a drawing goes, on the grid of notation. */
export interface Limits extends Span {
  /** The first onset, or the start that was asked for: nothing is written before it. */
  readonly from: number
  /** Behind it no rests are written: the stretch is over, only its last notes ring on. */
  readonly to: number
}

/**
 * A stretch begins and ends where it was asked to; its last notes are drawn in full, up to the bar
 * line. A tuplet that it cuts is opened or closed with empty space, since a third of a beat has no
 * value of its own.
 */
export const limitsOf = (
  stretch: Stretch,
  metres: readonly Metre[],
  chords: readonly Span[],
  tuplets: readonly Tuplet[],
): Limits => {
  const asked = asAsked(stretch, metres)
  const first = Math.min(...chords.map((c) => c.start))
  const last = Math.max(...chords.map((c) => c.start))
  const from = isNear(stretch, 'first') ? first : Math.min(asked.start, first)
  const to = cutBefore(tuplets, isNear(stretch, 'last') ? last : asked.end)
  if (chords.length === 0) return { ...asked, from: asked.start, to: asked.end }
  const bar = metres.find((m) => last >= m.start && last < m.end)
  const rings = Math.max(...chords.map((c) => c.end))
  const end = Math.max(to, Math.min(rings, bar?.end ?? rings))
  return { start: cutBefore(tuplets, from), end: cutAfter(tuplets, end), from, to }
}

/** Where a hand may write rests: a tuplet that is cut open holds none in the hand that lacks it. */
export const silenceOf = (
  { from, to }: Limits,
  own: readonly Tuplet[],
  all: readonly Tuplet[],
): { readonly from: number; readonly to: number } =>
  cutBefore(own, from) === from ? { from: cutAfter(all, from), to } : { from, to }

const asAsked = (stretch: Stretch, metres: readonly Metre[]): Span => {
  const place = (ticks: number): number => {
    const step = quarter / 4
    return Math.round(toParts(ticks, stretch.ticksPerQuarter) / step) * step
  }
  return { start: place(stretch.start), end: Math.min(place(stretch.end), metres.at(-1)?.end ?? 0) }
}

/** Asked for by an onset itself: no more than a thirty-second lies between. */
const isNear = (
  { notes, start, end, ticksPerQuarter }: Stretch,
  which: 'first' | 'last',
): boolean => {
  const starts = notes.map((note) => note.start)
  const gap = which === 'first' ? Math.min(...starts) - start : end - Math.max(...starts)
  return toParts(gap, ticksPerQuarter) < quarter / 8
}

const around = (tuplets: readonly Tuplet[], at: number): readonly Tuplet[] =>
  tuplets.filter((t) => t.start < at && t.end > at)

const cutBefore = (tuplets: readonly Tuplet[], at: number): number =>
  Math.min(at, ...around(tuplets, at).map((t) => t.start))

const cutAfter = (tuplets: readonly Tuplet[], at: number): number =>
  Math.max(at, ...around(tuplets, at).map((t) => t.end))
