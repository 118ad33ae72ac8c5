/**
 * Real staff notation of a stretch of a score, and pencil marks on it.
 *
 * A stretch is [start, end) of the score, for one hand or both. It is quantised for the eye
 * (quantise.ts), written out as MEI, an open standard for notation (mei.ts), and engraved by verovio
 * in a worker (engraver.worker.ts), which is loaded when the first drawing is asked for. Each note of
 * the score is one SVG element whose id is the note's id; pencil.ts puts marks on it without
 * engraving again.
 *
 * Example: `const engraver = createEngraver()`, then `await engraver.engrave({ score, start, end,
 * hand: 'right', width: 900, height: 300 })` gives `svg` to put on the page.
 */
import type { HandChoice, Score } from '@/music/music'
import { failed, type Result } from '@/music/result'
import type { Tick } from '@/music/units'

export interface EngravingRequest {
  readonly score: Score
  readonly start: Tick
  /** Notes that start before it are drawn, in their full length. */
  readonly end: Tick
  readonly hand: HandChoice
  /** The box to fill, in CSS pixels. A long stretch may become higher than the box, never wider. */
  readonly width: number
  readonly height: number
  /** A new request of the same caller takes the place of the older one. */
  readonly caller?: string
}

export interface Engraving {
  /** An `<svg>` element as text: ink is `currentColor`, there is no background. */
  readonly svg: string
  /** CSS pixels, as wide as the request at most. */
  readonly width: number
  readonly height: number
}

export type EngravingProblem =
  /** A newer request of the same caller came: nothing to show. */
  | { readonly kind: 'superseded' }
  /** The engraver could not be loaded, crashed or hangs. `message` is for the person. */
  | { readonly kind: 'failed'; readonly message: string }

export interface Engraver {
  /** Loads the engraver ahead of the first drawing. */
  readonly warm: () => void
  readonly engrave: (request: EngravingRequest) => Promise<Result<Engraving, EngravingProblem>>
  readonly dispose: () => void
}

export const createEngraver = (): Engraver => ({
  warm: () => {},
  engrave: () =>
    Promise.resolve(failed({ kind: 'failed', message: 'The engraver is being built.' })),
  dispose: () => {},
})
