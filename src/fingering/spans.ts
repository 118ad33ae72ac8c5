import type { Finger } from '@/music/music'

/** How far the person's hand reaches: an octave, a ninth, a tenth from C. */
export const handSpans = ['small', 'medium', 'large'] as const
export type HandSpan = (typeof handSpans)[number]

/** A hand by its size, or by the widest interval that it was measured to reach, in semitones. */
export type HandReach = HandSpan | number

/**
 * What two fingers span, in semitones from the lower finger to the higher one; negative where they
 * cross. Outside practical nobody can, outside comfortable it strains, inside relaxed it is easy.
 */
export interface PairSpan {
  readonly minPractical: number
  readonly minComfortable: number
  readonly minRelaxed: number
  readonly maxRelaxed: number
  readonly maxComfortable: number
  readonly maxPractical: number
}

/** The spans of every two fingers of a hand. */
export interface Spans {
  readonly between: (one: Finger, other: Finger) => PairSpan
  /** The widest melodic interval that any two fingers reach, in semitones. */
  readonly widest: number
  /** The widest chord, in semitones. */
  readonly widestChord: number
}

const fingerPairs = ['1-2', '1-3', '1-4', '1-5', '2-3', '2-4', '2-5', '3-4', '3-5', '4-5'] as const
type FingerPair = (typeof fingerPairs)[number]
type Six = readonly [number, number, number, number, number, number]

/**
 * The spans of Parncutt, Sloboda, Clarke, Raekallio & Desain 1997 (Music Perception 14:341), table 1:
 * practical, comfortable and relaxed from below, relaxed, comfortable and practical from above.
 */
const published: Readonly<Record<FingerPair, Six>> = {
  '1-2': [-5, -3, 1, 5, 8, 10],
  '1-3': [-4, -2, 3, 7, 10, 12],
  '1-4': [-3, -1, 5, 9, 12, 14],
  '1-5': [-1, 1, 7, 10, 13, 15],
  '2-3': [1, 1, 1, 2, 3, 5],
  '2-4': [1, 1, 3, 4, 5, 7],
  '2-5': [2, 2, 5, 6, 8, 10],
  '3-4': [1, 1, 1, 2, 2, 4],
  '3-5': [1, 1, 3, 4, 5, 7],
  '4-5': [1, 1, 1, 2, 3, 5],
}

/**
 * By how much small and large hands differ from medium ones in Balliauw, Herremans, Palhazi Cuervo &
 * Sörensen 2017 (Int. Trans. Oper. Res. 24:509). Their unit, fourteen to the octave, is taken for a semitone.
 */
const differences: Readonly<Record<'small' | 'large', Readonly<Partial<Record<FingerPair, Six>>>>> =
  {
    small: {
      '1-2': [1, 1, 0, -2, 0, 0],
      '1-3': [1, 1, 0, -3, -2, -2],
      '1-4': [1, 1, 0, -3, -2, -2],
      '1-5': [0, 0, 0, -2, -2, -2],
      '2-3': [0, 0, 0, 0, -1, -1],
      '2-5': [0, 0, 0, 0, -2, -2],
    },
    large: {
      '1-2': [-2, -2, 0, 1, 1, 1],
      '1-3': [-1, -1, 0, 0, 1, 1],
      '1-4': [-1, -1, 0, 0, 1, 1],
      '1-5': [0, 0, 0, 0, 2, 2],
    },
  }

/**
 * The widest chords from C: an octave, a major ninth, a major tenth, the practical span of thumb and
 * little finger of the three hands in Balliauw et al. 2017 (14, 16 and 18 units).
 */
const widestChords: Readonly<Record<HandSpan, number>> = { small: 12, medium: 14, large: 16 }

const sameFinger: PairSpan = {
  minPractical: 0,
  minComfortable: 0,
  minRelaxed: 0,
  maxRelaxed: 0,
  maxComfortable: 0,
  maxPractical: 0,
}

/** The widest interval of a hand, in semitones. */
export const widestOf = (reach: HandReach): number =>
  typeof reach === 'number' ? reach : widestChords[reach]

/** The largest of the three hands that reaches no farther than what was measured; below an octave the small one. */
export const sizeOf = (reach: HandReach): HandSpan =>
  typeof reach === 'number'
    ? (handSpans.findLast((size) => widestChords[size] <= reach) ?? 'small')
    : reach

/** The spans of a hand: medium is the published table itself. What was measured is never passed. The same for the same reach. */
export const spansOf = (reach: HandReach): Spans => {
  const spans = known.get(reach) ?? readSpans(reach)
  known.set(reach, spans)
  return spans
}

/** Costs are remembered by them (costTable.ts). */
const known = new Map<HandReach, Spans>()

const readSpans = (reach: HandReach): Spans => {
  const size = sizeOf(reach)
  const widestChord = widestOf(reach)
  const limit = typeof reach === 'number' ? reach : Infinity
  const all = fingerPairs.map((pair) => limitTo(pairSpan(pair, size), limit))
  return {
    between: (one, other) =>
      one === other ? sameFinger : (all[pairIndex(one, other)] ?? sameFinger),
    widest: Math.max(...all.map((span) => span.maxPractical)),
    widestChord,
  }
}

const limitTo = (span: PairSpan, limit: number): PairSpan => ({
  ...span,
  maxRelaxed: Math.min(span.maxRelaxed, limit),
  maxComfortable: Math.min(span.maxComfortable, limit),
  maxPractical: Math.min(span.maxPractical, limit),
})

const pairSpan = (pair: FingerPair, size: HandSpan): PairSpan => {
  const change: Six | undefined = size === 'medium' ? undefined : differences[size][pair]
  const at = (i: 0 | 1 | 2 | 3 | 4 | 5): number => published[pair][i] + (change?.[i] ?? 0)
  const limit = size === 'medium' ? Infinity : widestChords[size]
  return {
    minPractical: at(0),
    minComfortable: at(1),
    minRelaxed: at(2),
    maxRelaxed: at(3),
    maxComfortable: at(4),
    maxPractical: Math.min(at(5), limit),
  }
}

/** The place of two different fingers in `fingerPairs`. */
const pairIndex = (one: Finger, other: Finger): number => {
  const low = Math.min(one, other)
  const before = [0, 0, 4, 7, 9][low] ?? 0
  return before + Math.max(one, other) - low - 1
}
