import type { Remedy } from '@/coach/remedies'
import type { Exercise } from '@/exercises/buildUp'
import type { DrillId } from '@/journal/ids'
import type { RecordedPlace } from '@/journal/journal'
import type { Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import type { Bar, Score, TimeSignature } from '@/music/music'
import type { Signature } from '@/music/spelling'
import type { Key, Tempo, Tick } from '@/music/units'
import type { DayItem, PlanItem } from '@/plan/items'
import type { BuildUpPlan, Route } from './route'

/** A chunk in a form, and the score that it is cut from and engraved from. */
export interface Sheet {
  readonly score: Score
  readonly chunk: Chunk
}

/** What is being drilled. */
export interface Practising extends Sheet {
  readonly drill: DrillId
  /** The piece; `score` is another one where the form is. */
  readonly piece: Score
  /** The chunk as it stands in the piece. */
  readonly written: Chunk
  readonly form: Form
  readonly time: TimeSignature
  readonly bars: { readonly first: Bar; readonly last: Bar }
  /** The key signature where the chunk begins, for the names of its keys. */
  readonly signature: Signature
  readonly goalTempo: Tempo
  /** The tempo at which it is done: the goal tempo, or less on the way. */
  readonly reach: Tempo
  /** The keys of the chunk; in a build-up those of the whole passage, so that nothing moves meanwhile. */
  readonly keys: readonly Key[]
  readonly place?: PlaceInBuildUp | undefined
  /** It is played against a problem of another drill, which it leads back to. */
  readonly remedy?: Remedy | undefined
  /** What comes on the desk when this is done. */
  readonly next?: Upcoming | undefined
  /** It is played as an item of today's plan. */
  readonly item?: ItemOnDesk | undefined
}

/** An item of today's plan that is being played. */
export interface ItemOnDesk {
  readonly item: PlanItem
  /** Of its piece. */
  readonly goalTempo?: Tempo
  /** From 1, of so many, the rests included. */
  readonly number: number
  readonly of: number
  /** What comes when it is over. */
  readonly next: Upcoming
}

/** Which exercise of a build-up it is. */
export interface PlaceInBuildUp {
  readonly plan: BuildUpPlan
  readonly exercise: Exercise
  /** From 1. */
  readonly number: number
  readonly of: number
  readonly passage: RecordedPlace
  /** First and last onset of the passage in the piece. */
  readonly from: Tick
  readonly to: Tick
  readonly keys: readonly Key[]
}

/** What comes next: its address, and where it is a drill what will be on the desk. */
export interface Upcoming {
  readonly route: Route
  readonly sheet?: Sheet
  /** As it stands in the piece. */
  readonly written?: Chunk
  readonly form?: Form
  /** In a build-up. */
  readonly exercise?: Exercise
  /** Which item of today's plan it begins. */
  readonly item?: DayItem
}

/** The bars in which the chunk begins and ends; `undefined` for a chunk of another score. */
export const barsOf = (
  score: Score,
  chunk: Chunk,
): { readonly first: Bar; readonly last: Bar } | undefined => {
  const lastOnset = chunk.start + (chunk.onsets.at(-1)?.start ?? 0)
  const first = score.bars.findLast((bar) => bar.start <= chunk.start)
  const last = score.bars.findLast((bar) => bar.start <= lastOnset)
  return first && last ? { first, last } : undefined
}

/** The keys that a chunk demands or allows, each once. */
export const keysOf = ({ onsets }: Chunk): readonly Key[] => [
  ...new Set(
    onsets.flatMap(({ notes, auxiliaries }) => [...notes.map(({ key }) => key), ...auxiliaries]),
  ),
]
