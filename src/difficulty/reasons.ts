import { travelMm, type SpanMm } from './features'
import type { Feature } from './load'
import type { Spot } from './spots'
import type { Stroke } from './strokes'
import { crossRhythms } from './together'

/** What stands in a spot: the strokes of its hands. */
interface Inside {
  readonly right: readonly Stroke[]
  readonly left: readonly Stroke[]
  readonly span: SpanMm
}

/** Why a spot is hard, in words of the trade, one reason for each of its causes. */
export const reasonsFor = (
  { hand, causes }: Spot,
  right: readonly Stroke[],
  left: readonly Stroke[],
  span: SpanMm,
): readonly string[] => {
  const inside = { right: hand === 'left' ? [] : right, left: hand === 'right' ? [] : left, span }
  return causes.map((cause) => words[cause](inside))
}

/** Of the reasons of several spots each kind once, with its greatest figure. */
export const mergeReasons = (reasons: readonly string[]): readonly string[] => {
  const kinds = new Map<string, string>()
  for (const reason of reasons) {
    const kind = kindOf(reason)
    const known = kinds.get(kind)
    if (known === undefined || sizeOf(reason) > sizeOf(known)) kinds.set(kind, reason)
  }
  return [...kinds.values()]
}

/** 'leaps: up to a tenth' -> 'leaps', 'chords of up to 4 notes in one hand' -> 'chords of up to # notes in one hand' */
const kindOf = (reason: string): string => (reason.split(':')[0] ?? '').replaceAll(/\d+/g, '#')

/** The figure that a reason names, or the semitones over which its interval stands. */
const sizeOf = (reason: string): number => {
  const interval = intervalNames.find(([, name]) => reason.endsWith(name))
  return interval?.[0] ?? Number(/[\d.]+/.exec(reason)?.[0] ?? 0)
}

const words: Readonly<Record<Feature, (inside: Inside) => string>> = {
  speed: (inside) => `fast: ${largest(inside, onsetsASecond).toFixed(1)} onsets a second`,
  leap: (inside) =>
    `leaps: up to ${intervalName(largest(inside, (strokes) => widestLeap(strokes, inside.span)))}`,
  stretch: (inside) => `stretches: up to ${intervalName(largest(inside, widestChord))}`,
  chords: (inside) => chordWords(inside),
  repeats: () => 'repeated notes',
  trill: () => 'trills or tremolos',
  topography: () => 'black and white keys in turn',
  fingering: () => 'awkward for the fingers',
  thumb: () => 'thumb passings',
  accidentals: () => 'accidentals',
  crossing: () => 'the hands cross',
  rhythm: (inside) => rhythmWords(inside),
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
const chordWords = ({ right, left }: Inside): string => {
  const chords = [...right, ...left].filter(({ keys }) => keys.length > 1)
  const most = Math.max(...chords.map(({ keys }) => keys.length))
  if (most > 2) return `chords of up to ${most} notes in one hand`
  const named = doubleNotes.find(
    ({ semitones }) =>
      chords.filter((chord) => semitones.includes(widthOf(chord))).length > chords.length / 2,
  )
  return named?.name ?? 'double notes'
}

const doubleNotes: readonly { readonly name: string; readonly semitones: readonly number[] }[] = [
  { name: 'thirds', semitones: [3, 4] },
  { name: 'sixths', semitones: [8, 9] },
  { name: 'octaves', semitones: [12] },
]

/** '3 against 2', the right hand first; the commonest of them. */
const rhythmWords = ({ right, left }: Inside): string => {
  const counts = new Map<string, number>()
  for (const rhythm of crossRhythms(right, left)) {
    const word = `${rhythm.right} against ${rhythm.left}`
    counts.set(word, (counts.get(word) ?? 0) + 1)
  }
  const [commonest] = [...counts].toSorted((a, b) => b[1] - a[1])
  return commonest?.[0] ?? 'rhythms that do not divide'
}

/** The names of the intervals over an octave and more; a leap of less than a step over it is an octave. */
const intervalNames: readonly (readonly [semitones: number, name: string])[] = [
  [24, 'more than two octaves'],
  [23, 'two octaves'],
  [21, 'a fourteenth'],
  [19, 'a thirteenth'],
  [17, 'a twelfth'],
  [16, 'an eleventh'],
  [14, 'a tenth'],
  [12, 'a ninth'],
  [11, 'an octave'],
  [9, 'a seventh'],
  [7, 'a sixth'],
]

/** 12 -> 'an octave', 15 and 16 -> 'a tenth'. */
const intervalName = (semitones: number): string =>
  intervalNames.find(([above]) => semitones > above)?.[1] ?? 'a fifth'
