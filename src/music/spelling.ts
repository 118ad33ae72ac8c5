import { nameNote, type WrittenNote } from '@/text/noteNames'
import type { KeySignature } from './music'
import type { Key, Tick } from './units'

/** A key as it is written: the staff step and how far it is raised or lowered. */
export type Spelling = WrittenNote

export type Signature = Pick<KeySignature, 'fifths' | 'mode'>

/** Letters by their place on the line of fifths from F: F C G D A E B. */
const lettersByFifths = [3, 0, 4, 1, 5, 2, 6] as const
/** Semitones of C D E F G A B above C. */
const semitones = [0, 2, 4, 5, 7, 9, 11] as const
export const letters = ['c', 'd', 'e', 'f', 'g', 'a', 'b'] as const

/**
 * How far a spelling may lie on the flat side of the tonic on the line of fifths; twelve places from
 * there hold each key once. In C major A-flat, E-flat, B-flat, F-sharp, C-sharp; in A minor also
 * G-sharp and D-sharp, its raised seventh and fourth. Common practice, no source.
 */
const flattest = { major: -4, minor: -2 } as const

/** What stands around a note and pulls its spelling. */
export interface Surroundings {
  /** The next key of its voice: a chromatic step upward is raised, downward lowered. */
  readonly next?: Key | undefined
  /** The mean place of the bar's scale notes on the line of fifths: G-sharp over E, A-flat over F. */
  readonly centre?: number | undefined
}

/** The spelling of a key near the key signature and, outside the scale, near its surroundings. */
export const spell = (key: Key, signature: Signature, around: Surroundings = {}): Spelling => {
  const usual = simplified(spellAt(key, signature.fifths + flattest[signature.mode]), signature)
  if (isInScale(usual, signature) || isFourthOrSeventh(usual, signature)) return usual
  const step = stepSpelling(key, signature, around.next)
  if (step) return step
  return around.centre === undefined ? usual : nearest(key, usual, around.centre, signature)
}

/** The place of a key on the line of fifths, where it belongs to the scale. */
export const scalePlace = (key: Key, signature: Signature): number | undefined => {
  const usual = spell(key, signature)
  return isInScale(usual, signature) ? placeOf(usual) : undefined
}

/** A chromatic step to a note of the scale. */
const stepSpelling = (key: Key, signature: Signature, next?: Key): Spelling | undefined => {
  if (next === undefined || Math.abs(next - key) !== 1) return undefined
  const target = spell(next, signature)
  const step = target.step + (next > key ? -1 : 1)
  const alter = key - semitonesOf(step)
  const isStep = isInScale(target, signature) && Math.abs(alter) <= 1
  return isStep ? simplified({ step, alter }, signature) : undefined
}

/** The same key an octave of fifths farther on, where that lies clearly nearer to the centre. */
const nearest = (key: Key, usual: Spelling, centre: number, signature: Signature): Spelling => {
  const distance = (spelling: Spelling): number => Math.abs(placeOf(spelling) - centre)
  const others = [-12, 12].map((by) => simplified(spellAt(key, placeOf(usual) + by), signature))
  return others.find((other) => distance(other) + 1 < distance(usual)) ?? usual
}

/**
 * C-flat and F-flat outside the scale are read as B and E; a double sharp is kept for the raised
 * seventh of a minor key alone. Common practice, no source.
 */
const simplified = (spelling: Spelling, signature: Signature): Spelling => {
  const { step, alter } = spelling
  if (isInScale(spelling, signature)) return spelling
  const sounding = semitonesOf(step) + alter
  if (alter < 0 && sounding === semitonesOf(step - 1)) return { step: step - 1, alter: 0 }
  const isSeventh = signature.mode === 'minor' && placeOf(spelling) === signature.fifths + 8
  return Math.abs(alter) < 2 || isSeventh
    ? spelling
    : { step: step + 1, alter: sounding - semitonesOf(step + 1) }
}

/** Place on the line of fifths: C 0, G 1, F -1, F-sharp 6. */
const placeOf = ({ step, alter }: Spelling): number =>
  lettersByFifths.indexOf(letterOf(step)) - 1 + 7 * alter

/** What the key signature says of a staff step: 1, 0 or -1. */
export const alterInSignature = (step: number, fifths: number): number => {
  const place = lettersByFifths.indexOf(letterOf(step))
  if (fifths > 0) return place < fifths ? 1 : 0
  return 6 - place < -fifths ? -1 : 0
}

/** 'c' and 4 for step 28. */
export const nameOf = (step: number): { readonly letter: string; readonly octave: number } => ({
  letter: letters[letterOf(step)] ?? 'c',
  octave: Math.floor(step / 7),
})

const cMajor: Signature = { fifths: 0, mode: 'major' }

/**
 * A key as the person reads and hears it, in this key signature: 63 -> 'E♭4' in C major, 'D♯4' in E
 * major; 'Es4' and 'Dis4' where notes have German names. Where there is no music, as in C major.
 */
export const nameKey = (key: Key, signature = cMajor): string => nameNote(spell(key, signature))

/** The key signature in force at a tick; C major where the score has none. */
export const signatureAt = (keys: readonly KeySignature[], at: Tick): Signature =>
  keys.findLast((signature) => signature.start <= at) ?? cMajor

/** The MIDI key of a staff step without accidental: 28 -> 60. */
export const semitonesOf = (step: number): number =>
  12 * (Math.floor(step / 7) + 1) + (semitones[letterOf(step)] ?? 0)

type Letter = 0 | 1 | 2 | 3 | 4 | 5 | 6
const letterOf = (step: number): Letter => (((step % 7) + 7) % 7) as Letter

/** F-sharp and B-flat in C major stay so in either direction. Common practice, no source. */
const isFourthOrSeventh = ({ step, alter }: Spelling, { fifths }: Signature): boolean => {
  const raised = alter - alterInSignature(step, fifths)
  const place = lettersByFifths.indexOf(letterOf(step))
  const fromTonic = (((place - 1 - fifths) % 7) + 7) % 7
  return (raised === 1 && fromTonic === 6) || (raised === -1 && fromTonic === 5)
}

const isInScale = (spelling: Spelling, signature: Signature): boolean =>
  spelling.alter === alterInSignature(spelling.step, signature.fifths)

/** The spelling whose place on the line of fifths (C = 0, G = 1, F = -1) is one of twelve from `from`. */
const spellAt = (key: Key, from: number): Spelling => {
  const wanted = (key * 7) % 12
  const place = from + ((((wanted - from) % 12) + 12) % 12)
  const alter = Math.floor((place + 1) / 7)
  const letter = lettersByFifths[(((place + 1) % 7) + 7) % 7] ?? 0
  const octave = Math.floor((key - alter) / 12) - 1
  return { step: 7 * octave + letter, alter }
}
