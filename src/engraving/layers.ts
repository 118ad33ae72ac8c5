import type { Note, Tremolo } from '@/music/music'
import { beatAt, halvings, strengthAt, type Metre } from './metre'
import { quarter } from './parts'
import { isBinary, type Tuplet } from './tuplets'
import { splitRest, splitSound, valueOf, type Span, type Value } from './values'
import type { Voice } from './voices'

/** One written value of one voice: notes, a rest, or nothing where another voice or hand is heard. */
export interface Piece {
  readonly kind: 'notes' | 'rest' | 'space'
  /** Parts of a quarter from the start of the score. */
  readonly start: number
  readonly end: number
  readonly value: Value
  readonly tuplet?: Tuplet
  /** Pieces of the same number stand under one beam. */
  readonly beam: string
  /** Empty unless `kind` is notes. */
  readonly notes: readonly Note[]
  /** Tied to the piece before, to the piece after. */
  readonly tiedFrom: boolean
  readonly tiedTo: boolean
  /** Of a tremolo between two: each is written with the value of both. */
  readonly tremolo?: 'from' | 'to'
}

export interface Silence {
  /** Where a rest is written when nothing is heard. */
  readonly from: number
  readonly to: number
  /** What is heard without being drawn here: no rest, no notes. */
  readonly heard: readonly Span[]
}

/** What one voice writes in one bar. */
export const layerOf = (
  voice: Voice,
  bar: Metre,
  limits: Span,
  silence: Silence,
  tuplets: readonly Tuplet[],
): Piece[] => {
  const from = Math.max(bar.start, limits.start)
  const to = Math.min(bar.end, limits.end)
  const filled = fill(voice, { start: from, end: to }, silence)
  const active = tuplets.filter(
    (t) =>
      t.start >= bar.start &&
      t.end <= bar.end &&
      filled.some(({ start, end }) => needsTuplet(start, t) || needsTuplet(end, t)),
  )
  const halves = tremolosOf(filled, active)
  return filled.flatMap((stretch) => halves.get(stretch) ?? piecesOf(stretch, bar, active))
}

/** Neighbours between which a tremolo goes to and fro, where one value can stand for both. */
const tremolosOf = (
  filled: readonly Filling[],
  tuplets: readonly Tuplet[],
): ReadonlyMap<Filling, readonly Piece[]> => {
  const found = new Map<Filling, readonly Piece[]>()
  for (const [i, first] of filled.entries()) {
    const second = filled[i + 1]
    if (!second || !isTremolo(first, 'from') || !isTremolo(second, 'to')) continue
    const value = valueOf(second.end - first.start)
    const isEven = first.end - first.start === second.end - second.start
    const isInside = tuplets.some((t) => t.start < second.end && t.end > first.start)
    if (!value || !isEven || isInside) continue
    found.set(first, [{ ...first, value, beam: '', tremolo: 'from' }])
    found.set(second, [{ ...second, value, beam: '', tremolo: 'to' }])
  }
  return found
}

const isTremolo = ({ notes, tiedFrom, tiedTo }: Filling, kind: Tremolo['kind']): boolean =>
  !tiedFrom && !tiedTo && notes.some(({ tremolo }) => tremolo?.kind === kind)

/** A span of a layer before it is cut into values. */
interface Filling extends Span {
  readonly kind: Piece['kind']
  readonly notes: readonly Note[]
  readonly tiedFrom: boolean
  readonly tiedTo: boolean
}

const fill = (voice: Voice, limits: Span, silence: Silence): Filling[] => {
  const filled: Filling[] = []
  let at = limits.start
  for (const chord of voice) {
    if (chord.end <= limits.start || chord.start >= limits.end) continue
    const start = Math.max(chord.start, limits.start)
    const end = Math.min(chord.end, limits.end)
    filled.push(...gap({ start: at, end: start }, silence))
    filled.push({
      kind: 'notes',
      start,
      end,
      notes: chord.notes,
      tiedFrom: chord.start < start,
      tiedTo: chord.end > end,
    })
    at = end
  }
  return [...filled, ...gap({ start: at, end: limits.end }, silence)]
}

const gap = (span: Span, silence: Silence): Filling[] => {
  if (span.start >= span.end) return []
  const borders = silence.heard.flatMap((h) => [h.start, h.end])
  const cuts = [silence.from, silence.to, ...borders]
    .filter((at) => at > span.start && at < span.end)
    .toSorted((a, b) => a - b)
  const points = [span.start, ...new Set(cuts), span.end]
  const gaps: Filling[] = []
  for (const [i, start] of points.slice(0, -1).entries()) {
    const end = points[i + 1] ?? span.end
    const isHeard = silence.heard.some((h) => h.start < end && h.end > start)
    const isSilent = start >= silence.from && end <= silence.to && !isHeard
    const kind = isSilent ? 'rest' : 'space'
    const before = gaps.at(-1)
    if (before?.kind === kind) gaps[gaps.length - 1] = { ...before, end }
    else gaps.push({ kind, start, end, notes: [], tiedFrom: false, tiedTo: false })
  }
  return gaps
}

/** Inside the tuplet and on no place that plain values reach too, as its middle may be. */
const needsTuplet = (at: number, { start, end }: Tuplet): boolean =>
  at > start && at < end && !isBinary(at - start, end - start)

const piecesOf = (filling: Filling, bar: Metre, tuplets: readonly Tuplet[]): Piece[] => {
  const borders = tuplets
    .flatMap((t) => [t.start, t.end])
    .filter((at) => at > filling.start && at < filling.end)
  const points = [...new Set([filling.start, ...borders, filling.end])].toSorted((a, b) => a - b)
  const pieces = points.slice(0, -1).flatMap((start, i) => {
    const end = points[i + 1] ?? filling.end
    const tuplet = tuplets.find((t) => start >= t.start && end <= t.end)
    return tuplet
      ? inTuplet({ start, end }, tuplet, filling.kind)
      : inBar({ start, end }, bar, filling.kind)
  })
  return pieces.map((piece, i) => ({
    ...piece,
    kind: filling.kind,
    notes: filling.notes,
    tiedFrom: filling.kind === 'notes' && (i > 0 || filling.tiedFrom),
    tiedTo: filling.kind === 'notes' && (i < pieces.length - 1 || filling.tiedTo),
  }))
}

type Cut = Pick<Piece, 'start' | 'end' | 'value' | 'tuplet' | 'beam'>

/** The finest place that a value may begin on: a hundred-and-twenty-eighth. */
const finest = quarter / 32

const inBar = (span: Span, bar: Metre, kind: Piece['kind']): Cut[] => {
  const places = placesIn(bar.start, bar.end, finest)
  const strength = (at: number): number => strengthAt(bar, at)
  const split = kind === 'notes' ? splitSound : splitRest
  return split(span, strength, places).map(({ start, end }) => ({
    start,
    end,
    value: roundedValue(end - start),
    beam: `${beatAt(bar, start)}`,
  }))
}

/** Inside a tuplet time is counted as it is written: a triplet of eighths is three eighths long. */
const inTuplet = (span: Span, tuplet: Tuplet, kind: Piece['kind']): Cut[] => {
  const stretchBy = tuplet.num / tuplet.numbase
  const written = (at: number): number => Math.round((at - tuplet.start) * stretchBy)
  const unit = written(tuplet.start + tuplet.step)
  const length = written(tuplet.end)
  const strength = (at: number): number => (at === 0 || at === length ? 0 : 1 + halvings(at, unit))
  const split = kind === 'notes' ? splitSound : splitRest
  return split(
    { start: written(span.start), end: written(span.end) },
    strength,
    placesIn(0, length, unit / 4),
  ).map(({ start, end }) => ({
    start: Math.round(tuplet.start + start / stretchBy),
    end: Math.round(tuplet.start + end / stretchBy),
    value: roundedValue(end - start),
    tuplet,
    beam: `${tuplet.start}t${unit >= quarter ? Math.floor(start / quarter) : 0}`,
  }))
}

/** What no value fits (an odd bar length of a broken file) takes the nearest one. */
const roundedValue = (length: number): Value => {
  const exact = valueOf(length)
  if (exact) return exact
  const values = ['1', '2', '4', '8', '16', '32', '64', '128'] as const
  const place = Math.round(Math.log2((4 * quarter) / Math.max(1, length)))
  return { dur: values[Math.min(7, Math.max(0, place))] ?? '128', dots: 0 }
}

const placesIn = (start: number, end: number, step: number): number[] => {
  const count = Math.floor((end - start) / step)
  return Array.from({ length: count + 1 }, (_, i) => start + i * step)
}
