import type { Key, NoteId } from '@/music/units'

/** A mark as a pianist makes it with a pencil, or finds it in print; known by its shape alone. */
export type PencilMark = PencilShape & {
  /** Drawn thinner: shown, not counted. */
  readonly forgiven?: true
}

type PencilShape =
  /** A small tick under the note. */
  | { readonly shape: 'right'; readonly note: NoteId }
  /** A ring around the written note and a small hollow head where the played key would stand. */
  | { readonly shape: 'wrong'; readonly note: NoteId; readonly playedKey: Key }
  /** A dotted ring. */
  | { readonly shape: 'missing'; readonly note: NoteId }
  /** A small cross where the played key would stand, after the note at or before it. */
  | { readonly shape: 'extra'; readonly near: NoteId; readonly key: Key }
  /** The same key struck again: a small cross to the right of its head. */
  | { readonly shape: 'repeated'; readonly note: NoteId }
  /** Two onsets exchanged: the sign of exchange over the two notes. */
  | { readonly shape: 'order'; readonly notes: readonly [NoteId, NoteId] }
  /** A hook that leads back, at the note where the player went back. */
  | { readonly shape: 'restart'; readonly note: NoteId }
  /** The caesura strokes before the note. */
  | { readonly shape: 'hesitation'; readonly note: NoteId }
  /** An arrow against the direction of reading, longer for more. `ms` counts by its size. */
  | { readonly shape: 'early'; readonly note: NoteId; readonly ms: number }
  /** An arrow with the direction of reading, longer for more. */
  | { readonly shape: 'late'; readonly note: NoteId; readonly ms: number }
  /** A short wave under the note. */
  | { readonly shape: 'uneven'; readonly note: NoteId }
  /** The wavy line of a rolled chord, before the chord. */
  | { readonly shape: 'spread'; readonly notes: readonly NoteId[] }
  /** A long slanted line under the staff: rising where the tempo grew, falling where it sank. */
  | {
      readonly shape: 'drift'
      readonly from: NoteId
      readonly to: NoteId
      readonly faster: boolean
      /** So many staff spaces under all that is printed of its line; just under its own staff without. */
      readonly under?: number
    }

/** How much room these marks need under all that is printed of a line: staff spaces. */
export const roomUnder = (marks: readonly PencilMark[]): number =>
  Math.max(0, ...marks.map((mark) => (mark.shape === 'drift' ? (mark.under ?? 0) + 0.8 : 0)))

export const weights = ['light', 'middle', 'heavy'] as const
/** How hard the pencil was pressed: for what came seldom, more often, most often. */
export type Weight = (typeof weights)[number]

/** Against the usual width of a mark. Told apart at the smallest size at which notes are read. */
export const pressed: Readonly<Record<Weight, number>> = { light: 0.8, middle: 1.5, heavy: 2.4 }

/** From dot to dot in staff spaces; those of the usual pencil would touch when it is pressed. */
export const dotGap = (thick: number): number => 0.3 + thick

export interface WeighedMark {
  readonly mark: PencilMark
  readonly weight: Weight
}
