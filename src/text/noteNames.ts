/**
 * What a written note is called: E♭4 with letters, Es4 in German, mi♭4 with syllables. The octave is
 * counted alike in all of them, as in scientific pitch notation: that of middle C is 4.
 *
 * Where the person chose none, the naming is that of the language that is spoken. What is read by
 * machines, typed or written to files keeps the letters.
 */
import { spokenLanguage, type Language } from './text'

export const noteNamings = ['letters', 'german', 'syllables'] as const
export type NoteNaming = (typeof noteNamings)[number]

/** As the language has it, or one of ours. */
export const noteNamingChoices = ['auto', ...noteNamings] as const
export type NoteNamingChoice = (typeof noteNamingChoices)[number]

/** A note as it is written. */
export interface WrittenNote {
  /** Staff steps (lines and spaces) from C0: C4 is 28, D4 is 29, B3 is 27. */
  readonly step: number
  /** Semitones: 1 sharp, -1 flat, 0 natural. */
  readonly alter: number
}

let chosen: NoteNamingChoice = 'auto'

/** From now on every note is named so. */
export const nameNotes = (choice: NoteNamingChoice): void => {
  chosen = choice
}

const usual: Readonly<Record<Language, NoteNaming>> = { en: 'letters', de: 'german' }

export const noteNaming = (): NoteNaming => (chosen === 'auto' ? usual[spokenLanguage()] : chosen)

/** 'E♭4', 'Es4', 'mi♭4' */
export const nameNote = ({ step, alter }: WrittenNote): string => {
  const octave = Math.floor(step / 7)
  return `${nameOfClass(noteNaming(), step - 7 * octave, alter)}${octave}`
}

/** The notes without accidentals, as an example of a naming: 'C D E F G A H'. */
export const scaleIn = (naming: NoteNaming): string =>
  letters.map((_, letter) => nameOfClass(naming, letter, 0)).join(' ')

const nameOfClass = (naming: NoteNaming, letter: number, alter: number): string => {
  switch (naming) {
    case 'letters':
      return `${letters[letter]}${signs[alter]}`
    case 'german':
      return german[alter]?.[letter] ?? ''
    case 'syllables':
      return `${syllables[letter]}${signs[alter]}`
  }
}

type Names = readonly string[]
const split = (names: string): Names => names.split(' ')

const letters = split('C D E F G A B')
/** Fixed: do is C in every key. */
const syllables = split('do re mi fa sol la si')
const signs: Readonly<Record<number, string>> = {
  [-2]: '♭♭',
  [-1]: '♭',
  0: '',
  1: '♯',
  2: '♯♯',
}

/** A flat adds -es, a sharp -is, each twice where it is doubled; Es, As and B are the exceptions. */
const german: Readonly<Record<number, Names>> = {
  [-2]: split('Ceses Deses Eses Feses Geses Asas Heses'),
  [-1]: split('Ces Des Es Fes Ges As B'),
  0: split('C D E F G A H'),
  1: split('Cis Dis Eis Fis Gis Ais His'),
  2: split('Cisis Disis Eisis Fisis Gisis Aisis Hisis'),
}
