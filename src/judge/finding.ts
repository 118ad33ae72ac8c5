import type { KeyEvent } from '@/music/keyEvent'
import type { Key, Ms } from '@/music/units'
import type { Mark, Standard } from './flaw'
import type { Repetition } from './repetition'

/** Time passes also when no key moves: silence breaks a repetition off, and the settling time ends it. */
export interface Clock {
  readonly kind: 'clock'
  readonly at: Ms
}

export type JudgeEvent = KeyEvent | Clock

export interface JudgeSettings {
  readonly standard: Standard
  /** A brushed key (very soft and very short) is shown and recorded, but not counted. */
  readonly forgiveBrushed: boolean
  /** The length of a quarter where a tempo is set; without it the player's own steady tempo counts. */
  readonly quarter?: Ms
  /** The time of one click of the metronome, where it sounds: early and late are against the grid. */
  readonly click?: Ms
}

export type Finding =
  | { readonly kind: 'began'; readonly repetition: number; readonly at: Ms }
  /** A later mark in the same slot replaces the earlier one. */
  | { readonly kind: 'mark'; readonly slot: string; readonly mark: Mark }
  | { readonly kind: 'unmark'; readonly slot: string }
  /** A key that begins nothing. */
  | { readonly kind: 'stray'; readonly key: Key; readonly at: Ms }
  | { readonly kind: 'ended'; readonly repetition: Repetition }
