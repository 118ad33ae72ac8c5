/**
 * Everything that sounds: the metronome, and "hear it" on a sampled piano, on one audio clock.
 *
 * click: one stroke of the metronome. beat: a click that falls on the beat of the time signature.
 * count-in: the bars of clicks before the first beat that counts. signal: a short sound that tells of
 * the drill. Audio time is seconds on the audio
 * clock; what leaves this folder is `Ms` on the clock of the key events.
 *
 * Example: `await sound.unlock()` in a click of the person, then
 * `const started = await sound.startMetronome({ tempo, time: { beats: 3, beatType: 4 }, countInBars: 1 })`;
 * `started.firstBeat` is when the first bar after the count-in begins.
 */
import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import type { TimeSignature } from '@/music/music'
import type { Key, Ms, Tempo } from '@/music/units'

export type Stop = () => void

export const accents = ['strong', 'medium', 'weak', 'soft'] as const
/** First of the bar, first of a group, any other beat, between two beats. */
export type Accent = (typeof accents)[number]

/** What clicks within the bars. */
export interface ClickPattern {
  /** Clicks to one beat, the softer ones between the beats; 1 when left out. */
  readonly perBeat?: 1 | 2 | 3 | 4
  /** So many bars sound and so many are silent, in turns, so that one's own pulse is tried. All sound when left out. */
  readonly turns?: { readonly sounding: number; readonly silent: number }
}

export interface MetronomeSettings extends ClickPattern {
  readonly tempo: Tempo
  readonly time: TimeSignature
  /** 0 to 4. */
  readonly countInBars: number
  /**
   * Where in its bar the music begins, in quarters. The count-in begins at the same place of a bar,
   * so that the music follows it at once with its accents where they belong. 0 when left out.
   */
  readonly barOffset?: number
}

/** A beat of the metronome, told shortly before it sounds. */
export interface Beat {
  /** When it is heard. */
  readonly at: Ms
  readonly accent: Accent
  /** Counts bars; 0 is the one in which the music begins. */
  readonly bar: number
  /** Counts the beats of the bar from 0. */
  readonly beat: number
  /** Before the music begins. */
  readonly countIn: boolean
  /** It falls in a silent bar: told, and not heard. */
  readonly silent: boolean
}

/** A note to be heard: seconds from the start of playing. */
export interface HeardNote {
  readonly key: Key
  readonly at: number
  readonly length: number
  /** 1 to 127. */
  readonly velocity: number
}

export const signals = ['streak', 'up', 'down', 'done', 'problem'] as const
/** What a short sound tells: streak met, tempo up, tempo down, exercise done, a problem. */
export type Signal = (typeof signals)[number]

export type SoundState =
  /** No sound has been asked for yet. */
  | { readonly kind: 'asleep' }
  /** Switched off by the person. */
  | { readonly kind: 'off' }
  | { readonly kind: 'ready' }
  /** The browser wants a click or a key of the person first. */
  | { readonly kind: 'blocked' }
  /** Samples of the piano are being fetched. */
  | { readonly kind: 'loading'; readonly loaded: number; readonly wanted: number }
  /** No sound at all, or no piano; the detail is the browser's own. */
  | { readonly kind: 'failed'; readonly what: 'none' | 'noPiano'; readonly detail: string }

export const voices = ['metronome', 'piano', 'signals'] as const
export type Voice = (typeof voices)[number]

/** Nothing here throws or rejects: what goes wrong becomes a state, and nothing sounds. */
export interface Sound {
  /** Call it first inside a click, tap or key of the person: browsers allow sound only from there. */
  readonly unlock: () => Promise<void>
  /** Called at once with the present state, then at each change. */
  readonly watch: (see: (state: SoundState) => void) => Stop
  /** Switching off silences at once. */
  readonly setOn: (on: boolean) => void
  readonly isOn: () => boolean
  /** 0 to 1. */
  readonly setVolume: (voice: Voice, volume: number) => void
  /**
   * Begins the count-in now; `firstBeat` is the time of the first beat after it, for the judge's
   * `click`. `undefined` when nothing can sound.
   */
  readonly startMetronome: (
    settings: MetronomeSettings,
  ) => Promise<{ readonly firstBeat: Ms } | undefined>
  /**
   * From the next click on. Gives the time of the next beat, in the count-in that of the first beat after
   * it; `undefined` when no metronome sounds.
   */
  readonly changeTempo: (tempo: Tempo) => { readonly firstBeat: Ms } | undefined
  /** What clicks within the bars, from the next click on; the beats stay where they are. */
  readonly changePattern: (pattern: ClickPattern) => void
  readonly stopMetronome: () => void
  /** Each beat about a quarter of a second before it sounds, for a visual pulse. */
  readonly watchBeats: (see: (beat: Beat) => void) => Stop
  /** Fetches the samples for these keys ahead. */
  readonly prepare: (keys: readonly Key[]) => Promise<void>
  /** Plays the notes; resolves at the end, or when stopped. What was being heard before stops. */
  readonly hear: (notes: readonly HeardNote[]) => Promise<void>
  /** "Hear it": the chunk as written at a tempo. */
  readonly hearChunk: (chunk: Chunk, tempo: Tempo) => Promise<void>
  /** What was played, as it was played. */
  readonly hearTake: (take: Take) => Promise<void>
  /** Ends what is being heard, with a short release; the metronome goes on. */
  readonly quiet: () => void
  /** At once, where sound is on and awake: it wakes nothing. The answer fades it out. */
  readonly signal: (signal: Signal) => Stop
}
