import type { ExpectedNote } from '@/music/chunk'
import type { Key, Ms } from '@/music/units'

export const standards = ['notes', 'flow', 'time'] as const
/** How strict: keys and order; and no stops; and a steady pulse with chords together. */
export type Standard = (typeof standards)[number]

export const flawKinds = [
  'wrong',
  'missing',
  'extra',
  'repeated',
  'order',
  'restart',
  'hesitation',
  'early',
  'late',
  'uneven',
  'spread',
  'drift',
] as const
export type FlawKind = (typeof flawKinds)[number]

/** A key that was struck. `index` counts the strikes of the repetition from 0. */
export interface PlayedNote {
  readonly index: number
  readonly key: Key
  readonly at: Ms
  readonly velocity: number
}

/** One thing that was not as written, at one place. */
export interface Flaw {
  readonly kind: FlawKind
  /** Index of the onset that it belongs to: of `expected`, or where the played note fell. */
  readonly onset: number
  readonly expected?: ExpectedNote
  readonly played?: PlayedNote
  /** How much, where the kind has a size: pause, deviation or spread in milliseconds; early is negative. */
  readonly ms?: Ms
  /** What was given up by going back: the strikes that are played again after a restart. */
  readonly again?: readonly PlayedNote[]
  /** A brushed key that the person chose to forgive: shown and recorded, not counted. */
  readonly forgiven?: true
}

/** What the page shows of one struck key or one lacking note. */
export type Mark =
  | {
      readonly kind: 'right'
      readonly onset: number
      readonly expected: ExpectedNote
      readonly played: PlayedNote
    }
  | Flaw
