/** What the page and the worker say to each other. */
import type { Box, Drawing } from './draw'
import type { SystemBox } from './drawSystem'
import type { WeighedMark } from './pencilMark'
import type { Stretch } from './stretch'

export interface WorkerRequest {
  readonly number: number
  readonly stretch: Stretch
  /** With a staff space: as one line of the whole piece. */
  readonly box: Box | SystemBox
  /** On a line of the whole piece. */
  readonly marks?: readonly WeighedMark[]
}

export type WorkerAnswer =
  | { readonly kind: 'ready' }
  | { readonly kind: 'drawn'; readonly number: number; readonly drawing: Drawing }
  | { readonly kind: 'failed'; readonly number: number; readonly message: string }
  /** The engraver itself could not be loaded: nothing will be drawn. */
  | { readonly kind: 'unloadable'; readonly message: string }
