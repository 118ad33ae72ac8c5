import type { Chunk } from '@/music/chunk'
import type { Form } from '@/music/form'
import { hands, type Hand, type HandChoice, type Score } from '@/music/music'
import type { Place } from '@/music/place'
import type { Tick } from '@/music/units'
import { demands, type Demand } from './demands'
import { draft, variantsOf, type Draft } from './draft'
import { laneOf, type Lane, type PositionChanges } from './lane'
import { notesIn } from './onsets'
import { positionChangesOf } from './positions'
import { inOrder, type Direction } from './order'
import { stepsOf, stepsOfOneHand, type ExerciseKind, type Step, type Thoroughness } from './steps'
import { purposeOf, type Purpose } from './purpose'

/** A chunk in one form, at its place in the build-up. */
export interface Exercise extends Demand {
  /** In the form; the name of the written chunk with the form is the exercise's own. */
  readonly chunk: Chunk
  readonly form: Form
  readonly what: ExerciseKind
  readonly hand: HandChoice
  /** Where the written chunk stands. With the form it is all that is needed to write it again. */
  readonly place: Place
  /** The first and the last onset of the written chunk in the score, and how many there are. */
  readonly from: Tick
  readonly to: Tick
  readonly size: number
  /** From 1; exercises of one stage are of one size, and each hand comes before both. */
  readonly stage: number
  readonly why: Purpose
}

export interface BuildUpOptions {
  readonly hand: HandChoice
  readonly thoroughness: Thoroughness
  /** Within a stage; forward is better kept (Ash & Holding 1990), the other way an option. */
  readonly direction: Direction
  /** Where the fingering moves the hand; else as the fingers of the score tell. */
  readonly positionChanges?: PositionChanges
  /** What the hand reaches, in semitones, for blocked chords. */
  readonly span?: number
}

/**
 * The ordered exercises that lead from small groups to the whole of what starts in [from, to). Stage
 * by stage the sizes grow; within a stage right hand, left hand, and both as soon as each hand has
 * been there. The last exercise is the whole passage. A passage without notes has none.
 */
export const buildUp = (
  score: Score,
  passage: { readonly from: Tick; readonly to: Tick },
  options: BuildUpOptions,
): readonly Exercise[] => {
  const small = { ...score, notes: notesIn(score, passage.from, passage.to, options.hand) }
  const lanes = lanesOf(small, passage, options)
  const isTogether = lanes.length > 1
  const drafts = lanes.flatMap((lane) => [
    ...stepsOfLane(small, lane, isTogether, options.thoroughness).flatMap(
      (step) => draft(small, lane, step) ?? [],
    ),
    ...(options.thoroughness === 'thorough' && !(isTogether && lane.hand === 'both')
      ? variantsOf(small, lane, options.span)
      : []),
  ])
  const ordered = inOrder(drafts, options.direction)
  const ranks = [...new Set(ordered.map(({ rank }) => rank))]
  return ordered.map(({ rank, ...exercise }, i) => {
    const isLast = i === ordered.length - 1
    const afterEachHand = isTogether && exercise.hand === 'both'
    return finished(exercise, { stage: ranks.indexOf(rank) + 1, isLast, afterEachHand })
  })
}

/** Each hand that has a step to practise, and what was asked for; one hand alone where the other rests throughout. */
const lanesOf = (
  score: Score,
  passage: { readonly from: Tick; readonly to: Tick },
  { hand, positionChanges = positionChangesOf(score) }: BuildUpOptions,
): readonly Lane[] => {
  const asked = laneOf(score, passage, hand, positionChanges)
  const plays = hands.filter((each) => score.notes.some((n) => n.hand === each && !n.grace))
  if (hand !== 'both' || plays.length < 2) return [asked]
  const each = (['right', 'left'] as const).map((one) =>
    laneOf(score, passage, one, positionChanges),
  )
  return [...each.filter(({ onsets }) => onsets.length > 1), asked]
}

/**
 * Where one hand rests, both have nothing to bring together. Brisk leaves the bridges of one hand to
 * both, unless the other rests at the join.
 */
const stepsOfLane = (
  score: Score,
  lane: Lane,
  isTogether: boolean,
  thoroughness: Thoroughness,
): readonly Step[] => {
  const { hand, onsets, groups } = lane
  if (!isTogether) return stepsOf(onsets.length, groups, thoroughness)
  if (hand === 'both')
    return stepsOf(onsets.length, groups, thoroughness).filter(
      ({ first, last }) =>
        plays(score, 'left', lane, first, last) && plays(score, 'right', lane, first, last),
    )
  const other = hand === 'right' ? 'left' : 'right'
  return stepsOfOneHand(onsets.length, groups, thoroughness).filter(
    ({ what, first, last }) =>
      thoroughness === 'thorough' ||
      what !== 'bridge' ||
      !plays(score, other, lane, first + 1, last - 1),
  )
}

/** Whether a hand has a note from one onset of a lane to another. */
const plays = (
  { notes }: Score,
  hand: Hand,
  { onsets }: Lane,
  first: number,
  last: number,
): boolean =>
  notes.some(
    (n) =>
      n.hand === hand &&
      !n.grace &&
      n.start >= (onsets[first] ?? 0) &&
      n.start <= (onsets[last] ?? 0),
  )

const finished = (
  exercise: Omit<Draft, 'rank'>,
  {
    stage,
    isLast,
    afterEachHand,
  }: { readonly stage: number; readonly isLast: boolean; readonly afterEachHand: boolean },
): Exercise => ({
  ...exercise,
  ...demandOf(exercise, isLast),
  stage,
  why: purposeOf(exercise.what, { form: exercise.form, afterEachHand, isLast }),
})

const demandOf = (
  { what, form }: { readonly what: ExerciseKind; readonly form: Form },
  isLast: boolean,
): Demand => {
  if (form !== 'asWritten') return demands.variant
  return what === 'whole' && !isLast ? demands.wholeOfOneHand : demands[what]
}
