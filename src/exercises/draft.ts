import { cutChunk, type Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import type { HandChoice, Score } from '@/music/music'
import { placeOf, type Place } from '@/music/place'
import { tick, type Tick } from '@/music/units'
import type { Lane } from './lane'
import type { ExerciseKind, Step } from './steps'
import { writeVariant } from './variants'

/** An exercise before its place in the order is known. */
export interface Draft {
  readonly chunk: Chunk
  readonly form: Form
  readonly what: ExerciseKind
  readonly hand: HandChoice
  readonly place: Place
  readonly from: Tick
  readonly to: Tick
  readonly size: number
  readonly rank: number
}

/** A step as written. */
export const draft = (score: Score, lane: Lane, step: Step): Draft | undefined => {
  const from = lane.onsets[step.first]
  const to = lane.onsets[step.last]
  if (from === undefined || to === undefined) return undefined
  const chunk = cutChunk(score, from, tick(to + 1), lane.hand)
  return (
    chunk && {
      chunk,
      form: 'asWritten',
      what: step.what,
      hand: lane.hand,
      place: placeOf(chunk),
      from,
      to,
      size: step.last - step.first + 1,
      rank: step.rank,
    }
  )
}

/** The whole of a hand at once and in rhythms, before it is played as written. */
const formsBeforeTheWhole = ['blocked', 'longShort', 'shortLong'] as const
/** After all parts, before the whole. */
const rankOfVariants = 999

export const variantsOf = (
  score: Score,
  lane: Lane,
  span: number | undefined,
): readonly Draft[] => {
  const whole: Step = {
    first: 0,
    last: lane.onsets.length - 1,
    what: 'whole',
    rank: rankOfVariants,
  }
  const written = draft(score, lane, whole)
  if (!written) return []
  return formsBeforeTheWhole.flatMap((form) => {
    const variant = writeVariant(score, written.chunk, form, span)
    return variant ? [{ ...written, form, chunk: variant.chunk }] : []
  })
}
