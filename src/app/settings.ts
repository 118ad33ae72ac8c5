import { handSpans, type HandReach } from '@/fingering/spans'
import { standards, type Standard } from '@/judge/flaw'
import { farthestLag } from '@/judge/tapTest'
import { noteNamingChoices, type NoteNamingChoice } from '@/text/noteNames'
import { languages } from '@/text/text'
import type { ClickPattern } from './soundPorts'
import { decodeBindings, withoutDamper, type Bindings } from './commandKeys'

export const themes = ['auto', 'light', 'dark'] as const
export type Theme = (typeof themes)[number]

/** The language of the machine, or one of ours. */
export const languageChoices = ['auto', ...languages] as const
export type LanguageChoice = (typeof languageChoices)[number]

export const clicksPerBeat = [1, 2, 3, 4] as const
export type PerBeat = (typeof clicksPerBeat)[number]

/** 1 -> 2 -> 3 -> 4 -> 1 */
export const nextPerBeat = (now: PerBeat): PerBeat =>
  clicksPerBeat[clicksPerBeat.indexOf(now) + 1] ?? 1

/** What the person chose once and need not choose again. */
export interface Settings {
  readonly theme: Theme
  readonly language: LanguageChoice
  /** How notes are called: as the language has it, or otherwise. */
  readonly noteNames: NoteNamingChoice
  readonly standard: Standard
  readonly streakGoal: number
  readonly forgiveBrushed: boolean
  /** A MIDI input by its id, or all of them. */
  readonly input: string
  /** Its name, by which it is known where the browser gives it another id; empty for all. */
  readonly inputName: string
  /** Semitones added to every key of the keyboard. */
  readonly transpose: number
  readonly sound: boolean
  /** How loud each is, 0 to 1. */
  readonly metronomeVolume: number
  readonly pianoVolume: number
  /** Of the short sounds that tell what the coach has decided. */
  readonly signalVolume: number
  /** The instrument on which "hear it" sounds, by its id; empty for the sampled piano. */
  readonly output: string
  readonly outputName: string
  /** Clicks of the metronome to one beat. */
  readonly perBeat: PerBeat
  /** Two bars of the metronome sound, two are silent: whether one's own pulse holds. */
  readonly silentBars: boolean
  /** How long after a click a strike on it comes in, milliseconds; negative: before it (tapTest.ts). */
  readonly lagMs: number
  /** The first drill of a chunk begins with a short trial for its start tempo. */
  readonly trial: boolean
  /** How far the hand reaches: small, medium, large, or as measured in semitones. */
  readonly span: HandReach
  /** Digits stand with the notes of a drill. */
  readonly showFingers: boolean
  /** The day on which a caution was read last; empty before. */
  readonly cautionedOn: string
  /** Keys outside the passage, and pedals, that mean a command. */
  readonly commands: Bindings
  /** The damper pedal may be one of them. */
  readonly damperCommands: boolean
  /** The person's name as it stands on pages for the teacher; empty where none is to stand there. */
  readonly name: string
}

export const defaultSettings: Settings = {
  theme: 'auto',
  language: 'auto',
  noteNames: 'auto',
  standard: 'flow',
  streakGoal: 5,
  forgiveBrushed: false,
  input: 'all',
  inputName: '',
  transpose: 0,
  sound: true,
  metronomeVolume: 0.8,
  pianoVolume: 0.8,
  signalVolume: 0.8,
  output: '',
  outputName: '',
  perBeat: 1,
  silentBars: false,
  lagMs: 0,
  trial: true,
  span: 'medium',
  showFingers: true,
  cautionedOn: '',
  commands: {},
  damperCommands: false,
  name: '',
}

export const standardChoices = standards
export const spanChoices = handSpans
export const streakGoals = [3, 4, 5, 6, 7, 8, 9, 10] as const
/** Octave switches of small keyboards, and the semitones of transposing ones. */
export const farthestTranspose = 24
/** A line on a page. */
export const longestName = 60
/** A hand is measured from a fifth to an octave and a fifth, semitones; what is beyond was two hands. */
export const reachBounds = { least: 7, most: 19 } as const

/** Reads stored settings; what is missing or out of bounds becomes the default. */
export const decodeSettings = (stored: unknown): Settings => {
  const given: Readonly<Record<string, unknown>> =
    typeof stored === 'object' && stored !== null ? { ...stored } : {}
  const fallback = defaultSettings
  const commands = decodeBindings(given['commands'])
  const damperCommands = given['damperCommands'] === true
  const { streakGoal, forgiveBrushed, input, inputName, transpose, sound, lagMs, name } = given
  return {
    theme: themes.find((t) => t === given['theme']) ?? fallback.theme,
    language: languageChoices.find((l) => l === given['language']) ?? fallback.language,
    noteNames: noteNamingChoices.find((n) => n === given['noteNames']) ?? fallback.noteNames,
    standard: standards.find((s) => s === given['standard']) ?? fallback.standard,
    streakGoal: streakGoals.find((n) => n === streakGoal) ?? fallback.streakGoal,
    forgiveBrushed: typeof forgiveBrushed === 'boolean' ? forgiveBrushed : fallback.forgiveBrushed,
    input: typeof input === 'string' && input !== '' ? input : fallback.input,
    inputName: typeof inputName === 'string' ? inputName : fallback.inputName,
    transpose:
      typeof transpose === 'number' &&
      Number.isInteger(transpose) &&
      Math.abs(transpose) <= farthestTranspose
        ? transpose
        : fallback.transpose,
    sound: typeof sound === 'boolean' ? sound : fallback.sound,
    metronomeVolume: decodeVolume(given['metronomeVolume'], fallback.metronomeVolume),
    pianoVolume: decodeVolume(given['pianoVolume'], fallback.pianoVolume),
    // As loud as the metronome, as they were before they had a volume of their own.
    signalVolume: decodeVolume(
      given['signalVolume'],
      decodeVolume(given['metronomeVolume'], fallback.signalVolume),
    ),
    output: typeof given['output'] === 'string' ? given['output'] : fallback.output,
    outputName: typeof given['outputName'] === 'string' ? given['outputName'] : fallback.outputName,
    perBeat: clicksPerBeat.find((n) => n === given['perBeat']) ?? fallback.perBeat,
    silentBars: given['silentBars'] === true,
    lagMs:
      typeof lagMs === 'number' && Number.isInteger(lagMs) && Math.abs(lagMs) <= farthestLag
        ? lagMs
        : fallback.lagMs,
    trial: typeof given['trial'] === 'boolean' ? given['trial'] : fallback.trial,
    span: decodeSpan(given['span']),
    showFingers: given['showFingers'] !== false,
    cautionedOn: typeof given['cautionedOn'] === 'string' ? given['cautionedOn'] : '',
    commands: damperCommands ? commands : withoutDamper(commands),
    damperCommands,
    name: typeof name === 'string' ? name.slice(0, longestName) : fallback.name,
  }
}

const decodeVolume = (stored: unknown, fallback: number): number =>
  typeof stored === 'number' && stored >= 0 && stored <= 1 ? stored : fallback

/** Two and two: long enough for a pulse to drift audibly before the clicks are back (common practice, no source). */
const turns = { sounding: 2, silent: 2 } as const

/** How the metronome of a drill clicks. */
export const patternOf = ({ perBeat, silentBars }: Settings): ClickPattern => ({
  perBeat,
  ...(silentBars ? { turns } : {}),
})

const decodeSpan = (stored: unknown): HandReach =>
  typeof stored === 'number'
    ? isReach(stored)
      ? stored
      : defaultSettings.span
    : (handSpans.find((size) => size === stored) ?? defaultSettings.span)

export const isReach = (semitones: number): boolean =>
  Number.isInteger(semitones) && semitones >= reachBounds.least && semitones <= reachBounds.most
