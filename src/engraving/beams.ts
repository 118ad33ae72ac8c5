import type { Piece } from './layers'
import { beatAt, type Metre } from './metre'
import { quarter } from './parts'
import type { Tuplet } from './tuplets'

/** A layer as the page nests it: tuplets hold beams, beams hold values. */
export type Group =
  | { readonly kind: 'piece'; readonly piece: Piece }
  | { readonly kind: 'beam'; readonly content: readonly Group[] }
  | { readonly kind: 'tremolo'; readonly from: Piece; readonly to: Piece }
  | { readonly kind: 'tuplet'; readonly tuplet: Tuplet; readonly content: readonly Group[] }

/** Groups the values of one voice in one bar under tuplets and beams, by the time signature. */
export const groupLayer = (voice: readonly Piece[], bar: Metre): Group[] => {
  const joined = joinBeats(voice, bar)
  return runs(voice, (piece) => piece.tuplet).flatMap(([tuplet, pieces]): Group[] => {
    const content = beamed(pieces, joined)
    return tuplet ? [{ kind: 'tuplet', tuplet, content }] : content
  })
}

type BeamOf = (piece: Piece) => string

const beamed = (pieces: readonly Piece[], beamOf: BeamOf): Group[] =>
  runs(pieces, (piece) => (canBeam(piece) ? beamOf(piece) : undefined)).flatMap(
    ([beam, run]): Group[] => (beam === undefined ? apart(run) : oneBeam(run)),
  )

/** Without a beam; the two of a tremolo stand together. */
const apart = (run: readonly Piece[]): Group[] =>
  run.flatMap((piece, i): Group[] => {
    if (piece.tremolo === 'to') return []
    const to = run[i + 1]
    return [piece.tremolo && to ? { kind: 'tremolo', from: piece, to } : single(piece)]
  })

const single = (piece: Piece): Group => ({ kind: 'piece', piece })

/** Rests stand inside a beam only between its notes; one note alone keeps its flag. */
const oneBeam = (run: readonly Piece[]): Group[] => {
  const first = run.findIndex((piece) => piece.kind === 'notes')
  const last = run.findLastIndex((piece) => piece.kind === 'notes')
  if (first === last) return run.map(single)
  return [
    ...run.slice(0, first).map(single),
    { kind: 'beam', content: run.slice(first, last + 1).map(single) },
    ...run.slice(last + 1).map(single),
  ]
}

/** Notes of an eighth or less, but for tremolos, which have beams of their own; of rests only those that are shorter. */
const canBeam = ({ kind, value, tremolo }: Piece): boolean => {
  if (tremolo) return false
  const dur = Number(value.dur)
  return kind === 'notes' ? dur >= 8 : kind === 'rest' && dur >= 16
}

/** Beats of plain eighths share a beam where the time signature joins them. */
const joinBeats = (voice: readonly Piece[], bar: Metre): BeamOf => {
  const isPlain = (beat: number): boolean => {
    const own = voice.filter(({ start }) => beatAt(bar, start) === beat)
    return own.length === 2 && own.every(isPlainEighth)
  }
  const joined = bar.joins.filter((beats) => beats.every(isPlain))
  return ({ beam, tuplet }) => {
    if (tuplet) return beam
    const group = joined.find((beats) => beats.includes(Number(beam)))
    return group ? `${group[0]}` : beam
  }
}

const isPlainEighth = ({ kind, start, end, tuplet, tremolo }: Piece): boolean =>
  kind === 'notes' && !tuplet && !tremolo && end - start === quarter / 2

/** Neighbours with the same mark, in order. */
const runs = <T, M>(items: readonly T[], markOf: (item: T) => M): [M, T[]][] => {
  const found: [M, T[]][] = []
  for (const item of items) {
    const mark = markOf(item)
    const before = found.at(-1)
    if (before && before[0] === mark) before[1].push(item)
    else found.push([mark, [item]])
  }
  return found
}
