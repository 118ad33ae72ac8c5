import type { SpotsText } from '@/text/spots'
import type { Told } from '@/text/told'
import { travelMm, type SpanMm } from './features'
import type { Feature } from './load'
import type { Spot } from './spots'
import type { Stroke } from './strokes'
import { crossRhythms } from './together'

/** Why a spot is hard, with the figure that a pianist would ask for: `tellReason` (text/spots.ts) says it. */
export type Reason = Told<SpotsText['reasons']>
type Interval = Extract<Reason, { readonly kind: 'leap' }>['widest']
type Struck = Extract<Reason, { readonly kind: 'chords' }>['struck']
type Against = readonly [right: number, left: number]

/** What stands in a spot: the strokes of its hands. */
interface Inside {
  readonly right: readonly Stroke[]
  readonly left: readonly Stroke[]
  readonly span: SpanMm
}

/** One reason for each of the causes of a spot. */
export const reasonsFor = (
  { hand, causes }: Spot,
  right: readonly Stroke[],
  left: readonly Stroke[],
  span: SpanMm,
): readonly Reason[] => {
  const inside = { right: hand === 'left' ? [] : right, left: hand === 'right' ? [] : left, span }
  return causes.map((cause) => reasonFor(cause, inside))
}

/** Of the reasons of several spots each kind once, with its greatest figure. */
export const mergeReasons = (reasons: readonly Reason[]): readonly Reason[] => {
  const kinds = new Map<string, Reason>()
  for (const reason of reasons) {
    const kind = sayingOf(reason)
    const known = kinds.get(kind)
    if (known === undefined || sizeOf(reason) > sizeOf(known)) kinds.set(kind, reason)
  }
  return [...kinds.values()]
}

/** Thirds and octaves are two things to say, chords of three and of four notes are one. */
const sayingOf = (reason: Reason): string =>
  reason.kind === 'chords' && typeof reason.struck === 'string' ? reason.struck : reason.kind

const sizeOf = (reason: Reason): number => {
  if (reason.kind === 'speed') return reason.onsetsASecond
  if (reason.kind === 'leap' || reason.kind === 'stretch') return leastOf(reason.widest)
  if (reason.kind === 'chords') return typeof reason.struck === 'number' ? reason.struck : 0
  return reason.kind === 'rhythm' ? (reason.against?.[0] ?? 0) : 0
}

const reasonFor = (kind: Feature, inside: Inside): Reason => {
  switch (kind) {
    case 'speed':
      return { kind, onsetsASecond: largest(inside, onsetsASecond) }
    case 'leap': {
      const widest = largest(inside, (strokes) => widestLeap(strokes, inside.span))
      return { kind, widest: intervalOf(widest) }
    }
    case 'stretch':
      return { kind, widest: intervalOf(largest(inside, widestChord)) }
    case 'chords':
      return { kind, struck: struckIn(inside) }
    case 'rhythm': {
      const against = commonestRhythm(inside)
      return { kind, ...(against ? { against } : {}) }
    }
    case 'repeats':
    case 'trill':
    case 'topography':
    case 'fingering':
    case 'thumb':
    case 'accidentals':
    case 'crossing':
      return { kind }
  }
}

const largest = (inside: Inside, measure: (strokes: readonly Stroke[]) => number): number =>
  Math.max(measure(inside.right), measure(inside.left))

/** Of the strokes after the first, by the gaps before them. */
const onsetsASecond = (strokes: readonly Stroke[]): number => {
  const gaps = strokes.slice(1).reduce((sum, { gap }) => sum + gap, 0)
  return gaps > 0 ? (strokes.length - 1) / gaps : 0
}

/** Semitones from one stroke to the next where the hand travels. */
const widestLeap = (strokes: readonly Stroke[], span: SpanMm): number =>
  strokes.reduce((widest, stroke, i) => {
    const before = strokes[i - 1]
    if (!before || travelMm(before, stroke, span) === 0) return widest
    const low = Math.abs(stroke.keys[0] - before.keys[0])
    const high = Math.abs(highest(stroke) - highest(before))
    return Math.max(widest, low, high)
  }, 0)

const highest = ({ keys }: Stroke): number => keys.at(-1) ?? keys[0]

const widthOf = (stroke: Stroke): number => highest(stroke) - stroke.keys[0]

const widestChord = (strokes: readonly Stroke[]): number =>
  strokes.reduce((widest, stroke) => Math.max(widest, widthOf(stroke)), 0)

/** Thirds, sixths or octaves where most double notes are such, else how many notes are struck at once. */
const struckIn = ({ right, left }: Inside): Struck => {
  const chords = [...right, ...left].filter(({ keys }) => keys.length > 1)
  const most = Math.max(...chords.map(({ keys }) => keys.length))
  if (most > 2) return most
  const named = doubleNotes.find(
    ({ semitones }) =>
      chords.filter((chord) => semitones.includes(widthOf(chord))).length > chords.length / 2,
  )
  return named?.struck ?? 'mixed'
}

const doubleNotes: readonly { readonly struck: Struck; readonly semitones: readonly number[] }[] = [
  { struck: 'thirds', semitones: [3, 4] },
  { struck: 'sixths', semitones: [8, 9] },
  { struck: 'octaves', semitones: [12] },
]

/** '3 against 2', the right hand first; the commonest of them. */
const commonestRhythm = ({ right, left }: Inside): Against | undefined => {
  const counts = new Map<string, { readonly against: Against; readonly times: number }>()
  for (const rhythm of crossRhythms(right, left)) {
    const name = `${rhythm.right} ${rhythm.left}`
    const times = (counts.get(name)?.times ?? 0) + 1
    counts.set(name, { against: [rhythm.right, rhythm.left], times })
  }
  return [...counts.values()].toSorted((a, b) => b.times - a.times)[0]?.against
}

/** From how many semitones on an interval is called so; a leap of less than a step over an octave is one. */
const intervals: readonly (readonly [semitones: number, name: Interval])[] = [
  [25, 'beyond'],
  [24, 'twoOctaves'],
  [22, 'fourteenth'],
  [20, 'thirteenth'],
  [18, 'twelfth'],
  [17, 'eleventh'],
  [15, 'tenth'],
  [13, 'ninth'],
  [12, 'octave'],
  [10, 'seventh'],
  [8, 'sixth'],
  [0, 'fifth'],
]

/** 12 -> octave, 15 and 16 -> tenth. */
const intervalOf = (semitones: number): Interval =>
  intervals.find(([least]) => semitones >= least)?.[1] ?? 'fifth'

const leastOf = (interval: Interval): number =>
  intervals.find(([, name]) => name === interval)?.[0] ?? 0
