/** What can be asked of the engraver, and what it answers. */
import type { HandChoice, Score } from '@/music/music'
import type { Result } from '@/music/result'
import type { Tick } from '@/music/units'
import type { EngraverFault } from './fault'
import type { WeighedMark } from './pencilMark'
import type { Fingers } from './stretch'
import type { SystemPlaces } from './systemPlaces'

export interface EngravingRequest {
  readonly score: Score
  readonly start: Tick
  /** Notes that start before it are drawn, in their full length. */
  readonly end: Tick
  readonly hand: HandChoice
  /** The box to fill, in CSS pixels. A long stretch may become higher than the box, never wider. */
  readonly width: number
  readonly height: number
  /** Printed in place of the digits that the score has, by note id. */
  readonly fingers?: Fingers
  /** A new request of the same caller takes the place of the older one. */
  readonly caller?: string
}

/** Whole bars of both hands as one line of the piece. */
export interface SystemRequest {
  readonly score: Score
  /** Indices into the bars of the score; `toBar` is the last one. */
  readonly fromBar: number
  readonly toBar: number
  /** CSS pixels: the width of the line, and the staff space. */
  readonly width: number
  readonly space: number
  readonly fingers?: Fingers
  /** Pencilled into the drawing. */
  readonly marks?: readonly WeighedMark[]
  readonly caller?: string
}

export interface Engraving {
  /** An `<svg>` element as text: ink is `currentColor`, there is no background. */
  readonly svg: string
  /** CSS pixels, as wide as the request at most. */
  readonly width: number
  readonly height: number
  /** Of a line of the whole piece: where its bars and notes stand. */
  readonly places?: SystemPlaces
  /** Of a line with marks: how far down all ends that is printed, as a share of the height. */
  readonly lowest?: number
}

export type EngravingProblem =
  /** A newer request of the same caller came: nothing to show. */
  | { readonly kind: 'superseded' }
  /** Nothing stands there: no bar, or no room. */
  | { readonly kind: 'empty' }
  /** The engraver could not be loaded, crashed or hangs. */
  | { readonly kind: 'failed'; readonly fault: EngraverFault }

export type Answer = Result<Engraving, EngravingProblem>

export interface Engraver {
  /** Loads the engraver ahead of the first drawing. */
  readonly warm: () => void
  readonly engrave: (request: EngravingRequest) => Promise<Answer>
  /** With `places`: the picture itself does not name its notes. */
  readonly engraveSystem: (request: SystemRequest) => Promise<Answer>
  readonly dispose: () => void
}

export const unableToDraw = (fault: EngraverFault): EngravingProblem => ({ kind: 'failed', fault })
