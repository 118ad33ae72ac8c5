import type { Reason } from '@/difficulty/reasons'
import type { ExerciseKind } from '@/exercises/steps'
import { nameExercise } from '@/text/buildUp'
import { planText } from '@/text/plan'
import { tellReason } from '@/text/spots'

/** Why an item stands in the plan of a day: data, so that it is kept with the day and said in any language. */
export type ItemReason =
  | { readonly kind: (typeof plainReasons)[number] }
  /** So many days after the place was met last. */
  | { readonly kind: (typeof checkReasons)[number]; readonly days: number }
  | { readonly kind: 'lowered'; readonly exercise: ExerciseSize }
  | {
      readonly kind: (typeof turnReasons)[number]
      readonly exercise: ExerciseSize
      /** In the last run-through. */
      readonly wentWrong: boolean
      readonly isHardSpot: boolean
      /** Of a hard spot, where the analysis found it. */
      readonly hard?: Reason
    }

/** The exercise with which a turn begins. */
export interface ExerciseSize {
  readonly what: ExerciseKind
  readonly size: number
}

export const plainReasons = [
  'rest',
  'warmUpKnown',
  'warmUpEasy',
  'checkWrong',
  'slipped',
  'join',
  'runThrough',
] as const
export const checkReasons = ['checkSlipped', 'checkKept', 'checkSecure'] as const
export const turnReasons = ['next', 'fresh'] as const

/** One sentence; two where it went wrong in the run-through. */
export const sayReason = (reason: ItemReason): string => {
  const words = planText.reasons
  switch (reason.kind) {
    case 'rest':
      return planText.today.rest
    case 'warmUpKnown':
    case 'warmUpEasy':
    case 'checkWrong':
    case 'slipped':
    case 'join':
    case 'runThrough':
      return words[reason.kind]
    case 'checkSlipped':
    case 'checkKept':
    case 'checkSecure':
      return words[reason.kind](reason.days)
    case 'lowered':
      return words.lowered(exerciseWords(reason.exercise))
    case 'next':
    case 'fresh': {
      const at = words[reason.kind](exerciseWords(reason.exercise), hardWords(reason))
      return reason.wentWrong ? `${words.wentWrong} ${at}` : at
    }
  }
}

const exerciseWords = (exercise: ExerciseSize): string =>
  exercise.what === 'whole' ? planText.reasons.theWhole : nameExercise(exercise)

const hardWords = ({
  isHardSpot,
  hard,
}: Extract<ItemReason, { readonly isHardSpot: boolean }>): string | undefined =>
  isHardSpot ? (hard ? tellReason(hard) : planText.reasons.hardSpot) : undefined
