import type { KeySignature } from '@/music/music'
import { isBlackKey } from '@/music/pitch'
import { signatureAt } from '@/music/spelling'
import type { Key } from '@/music/units'
import { placeMm, whiteKeyMm } from './keyboard'
import type { Stroke } from './strokes'

/** How far a hand reaches, millimetres from middle to middle of two keys. */
export type SpanMm = number

/**
 * Speed: how often a second this hand strikes, counted from the gap before. Sixteenths at 120 quarters
 * a minute: 8. Sébastien et al. 2012 and Chiu & Chen 2012 have it as playing speed.
 */
export const strokesASecond = ({ gap }: Stroke): number => 1 / gap

/**
 * Leap: bits of Fitts' index of difficulty, log2(1 + distance / width), for the distance that the hand
 * must travel to keys one white key wide (Fitts 1954; the form with 1 is MacKenzie's, 1992). In full
 * where there is half a second for it, in proportion less where there is more: four bits take about that
 * long. In a hand that spans a ninth (188 mm) C4 to C6 is 3.1 bits in half a second, 1.5 in a whole one.
 */
export const leapBits = (before: Stroke | undefined, stroke: Stroke, span: SpanMm): number => {
  if (!before) return 0
  const bits = Math.log2(1 + travelMm(before, stroke, span) / whiteKeyMm)
  return bits * Math.min(1, leapSeconds / stroke.gap)
}

const leapSeconds = 0.5

/**
 * How far the hand travels so that it covers the keys of a stroke, millimetres on the real keyboard.
 * Relaxed it covers two thirds of its span, and one white key more is part of the stroke: C4 to C5
 * (164.5 mm) is 15.7 mm for a hand of 188 mm, C4 to A4 nothing.
 */
export const travelMm = (before: Stroke, stroke: Stroke, span: SpanMm): number => {
  const [from, to] = [coveringPlaces(before, span), coveringPlaces(stroke, span)]
  return Math.max(0, to.lowest - from.highest - whiteKeyMm, from.lowest - to.highest - whiteKeyMm)
}

/** Where the lower edge of the hand may lie so that it covers the keys; a wider chord leaves one place. */
const coveringPlaces = (
  { keys }: Stroke,
  span: SpanMm,
): { readonly lowest: number; readonly highest: number } => {
  const low = placeMm(keys[0])
  const high = placeMm(keys.at(-1) ?? keys[0])
  return { lowest: Math.min(low, high - span * easySpan), highest: low }
}

/** A hand lies relaxed over about two thirds of what it spans (Parncutt et al. 1997: 10 of 15 semitones). */
const easySpan = 2 / 3

/**
 * Stretch: the square of how far a chord goes beyond two thirds of the person's span, 1 at the whole of
 * it. An octave (164.5 mm) in a hand that spans a ninth (188): ((164.5 - 125.3) / 62.7)² = 0.39. A
 * rolled chord is not stretched for, and what is far beyond the hand is rolled or shared, too: at most
 * 3, about an eleventh for that hand. Spans: Parncutt et al. 1997.
 */
export const stretchShare = ({ keys, notes }: Stroke, span: SpanMm): number => {
  if (notes.some(({ rolled }) => rolled)) return 0
  const width = placeMm(keys.at(-1) ?? keys[0]) - placeMm(keys[0])
  const easy = span * easySpan
  return Math.min(mostStretch, (Math.max(0, width - easy) / (span - easy)) ** 2)
}

const mostStretch = 3

/** Double notes and chords: notes beyond the first. A triad: 2. It is polyphony in Sébastien et al. 2012. */
export const furtherNotes = ({ keys }: Stroke): number => keys.length - 1

/**
 * Repeated notes: keys struck again at the next stroke. In full at four a second and faster, in
 * proportion less below, since one finger taps five to seven times a second (from memory) and tires.
 * C4 C4 in half a second: 0.5. No source for the form.
 */
export const repeatedKeys = (before: Stroke | undefined, stroke: Stroke): number => {
  if (!before) return 0
  let again = 0
  for (const key of stroke.keys) if (before.keys.includes(key)) again++
  return again * Math.min(1, repeatSeconds / stroke.gap)
}

const repeatSeconds = 0.25

/**
 * Trills and tremolos: strokes to and fro, the fourth and later ones where they are written out (A B A
 * B), in full at six a second and faster, with the square of the speed less below; by its sign a mordent
 * is 2 and a turn 4, a trill or tremolo eight a second. Grace notes count as strokes. Common practice,
 * no source; skilled players trill at ten to fourteen a second (from memory).
 */
export const trilledStrokes = (strokes: readonly Stroke[], i: number): number => {
  const fourth = strokes[i]
  if (!fourth) return 0
  const first = strokes[i - 3]
  const second = strokes[i - 2]
  const third = strokes[i - 1]
  const isTrilled =
    first &&
    second &&
    third &&
    isSame(fourth, second) &&
    isSame(third, first) &&
    !isSame(fourth, third)
  const written = isTrilled ? Math.min(1, (trillSeconds / fourth.gap) ** 2) : 0
  return fourth.graces + signedStrokes(fourth) + written
}

const trillSeconds = 1 / 6

const isSame = (one: Stroke, other: Stroke): boolean =>
  one.keys.length === other.keys.length && one.keys.every((key, i) => key === other.keys[i])

const signedStrokes = ({ notes, seconds }: Stroke): number => {
  let most = 0
  for (const { ornament } of notes)
    if (ornament !== undefined)
      most = Math.max(most, ornament === 'mordent' ? 2 : ornament === 'turn' ? 4 : 8 * seconds)
  return most
}

/**
 * Topography: 1 where the hand changes between white keys and black ones (its outer keys from one
 * stroke to the next, at either side), else 0. C4 C#4: 1; C4 D4: 0; C#4 D#4: 0. The levels are those
 * of the keyboard in rules 8 to 11 of Parncutt et al. 1997.
 */
export const levelChanges = (before: Stroke | undefined, { keys }: Stroke): number => {
  if (!before) return 0
  const changes = (one: Key | undefined, other: Key | undefined): boolean =>
    one !== undefined && other !== undefined && isBlackKey(one) !== isBlackKey(other)
  return changes(before.keys[0], keys[0]) || changes(before.keys.at(-1), keys.at(-1)) ? 1 : 0
}

/** Accidentals: notes that are not in the scale of the key signature. F#4 in C major: 1. It is harmony in Sébastien et al. 2012. */
export const alteredNotes = (
  { keys, start }: Stroke,
  signatures: readonly KeySignature[],
): number => {
  const { fifths } = signatureAt(signatures, start)
  let altered = 0
  for (const key of keys) if (!isInScale(key, fifths)) altered++
  return altered
}

/** Seven neighbours on the line of fifths, from the one below the tonic of the major key. */
const isInScale = (key: Key, fifths: number): boolean =>
  (((key * 7 - fifths + 1) % 12) + 12) % 12 < 7

/** What the proposed fingering costs at a place, and how far the thumb passes there, semitones. */
export interface FingerWork {
  readonly cost: number
  readonly thumbPassing: number
}

/** Points of the fingering model that a note costs in easy music. */
const usualCost = 1
/** More than this beyond the usual is not fingered but leapt to, and counted there. */
const mostAwkward = 4

/**
 * Awkward fingers: points of the fingering model (Parncutt et al. 1997) beyond one for each note, at
 * most 4. Three points for a single note: 2.
 */
export const awkwardness = (work: FingerWork | undefined, { keys }: Pick<Stroke, 'keys'>): number =>
  Math.max(0, Math.min(mostAwkward, (work?.cost ?? 0) - usualCost * keys.length))

/**
 * Thumb passings: how far the thumb goes under a finger, or a finger over it, semitones (rule 12 of
 * Parncutt et al. 1997 has what a passing is). In C D E F with 1 2 3 1 the last is 1.
 */
export const passedSemitones = (work: FingerWork | undefined): number => work?.thumbPassing ?? 0
