/** What the app needs of all that sounds (ports.ts has the rest). */
import type { Chunk } from '@/music/chunk'
import type { Take } from '@/music/keyEvent'
import type { TimeSignature } from '@/music/music'
import type { Ms, Tempo } from '@/music/units'

export type SoundState =
  | { readonly kind: 'asleep' | 'off' | 'ready' | 'blocked' }
  | { readonly kind: 'loading'; readonly loaded: number; readonly wanted: number }
  /** No sound at all, or no piano; the detail is the browser's own. */
  | { readonly kind: 'failed'; readonly what: 'none' | 'noPiano'; readonly detail: string }

/** A short sound that tells of the drill: streak met, tempo up, tempo down, exercise done, a problem. */
export type Signal = 'streak' | 'up' | 'down' | 'done' | 'problem'

/** What clicks within the bars; the beats that are judged are the same. */
export interface ClickPattern {
  /** Clicks to one beat; 1 when left out. */
  readonly perBeat?: 1 | 2 | 3 | 4
  /** So many bars sound and so many are silent, in turns. */
  readonly turns?: { readonly sounding: number; readonly silent: number }
}

export interface SoundPort {
  /** Browsers allow sound only from inside a click, tap or key of the person. */
  readonly unlock: () => Promise<void>
  readonly watch: (see: (state: SoundState) => void) => () => void
  readonly setOn: (on: boolean) => void
  /** 0 to 1. */
  readonly setVolume: (voice: 'metronome' | 'piano' | 'signals', volume: number) => void
  /** Begins the count-in; gives the time of the first beat after it, `undefined` when nothing can sound. */
  readonly startMetronome: (
    settings: ClickPattern & {
      readonly tempo: Tempo
      readonly time: TimeSignature
      readonly countInBars: number
      readonly barOffset: number
    },
  ) => Promise<{ readonly firstBeat: Ms } | undefined>
  readonly changeTempo: (tempo: Tempo) => { readonly firstBeat: Ms } | undefined
  readonly changePattern: (pattern: ClickPattern) => void
  readonly stopMetronome: () => void
  /** Tells each click of the metronome, shortly before it is heard at `at`. */
  readonly watchBeats: (see: (beat: { readonly at: Ms }) => void) => () => void
  /** Resolves at the end, or when stopped. */
  readonly hearChunk: (chunk: Chunk, tempo: Tempo) => Promise<void>
  /** What was played, as it was played; ends like `hearChunk`. */
  readonly hearTake: (take: Take) => Promise<void>
  readonly quiet: () => void
  /** Sounds at once, where sound is on and awake; the answer fades it out. */
  readonly signal: (signal: Signal) => () => void
}
