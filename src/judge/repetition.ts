import type { Tempo, Ms } from '@/music/units'
import type { Flaw, Mark } from './flaw'

export const verdicts = ['clean', 'flawed', 'brokenOff'] as const
export type Verdict = (typeof verdicts)[number]

/** What was measured besides the verdict; `undefined` where there was too little to measure. */
export interface Figures {
  /** The player's own steady tempo, quarters a minute. */
  readonly tempo?: Tempo
  /** Standard deviation of the gaps between onsets against the written ones, at that tempo. */
  readonly gapSd?: Ms
  /** The same relative to the mean gap (0.05 = 5 %). */
  readonly gapCv?: number
  /** Largest spread of a chord. */
  readonly chordSpread?: Ms
  readonly velocityMean?: number
  readonly velocitySd?: number
  /** Mean overlap of a note with its successor in the same hand; negative is a gap. */
  readonly overlap?: Ms
  /** Mean time by which the left hand comes after the right at shared onsets. */
  readonly handLag?: Ms
}

/** One try at a chunk, from its first key to its last. */
export interface Repetition {
  /** Counts the repetitions of the drill from 0. */
  readonly number: number
  readonly start: Ms
  /** When the last onset that was played was complete. */
  readonly lastOnset: Ms
  readonly verdict: Verdict
  readonly flaws: readonly Flaw[]
  /** The final marks, right ones and flaws, in the order of the score. */
  readonly marks: readonly Mark[]
  readonly figures: Figures
}
