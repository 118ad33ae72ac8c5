import { parseReason } from '@/difficulty/parseReason'
import { exerciseKinds } from '@/exercises/steps'
import {
  checkReasons,
  plainReasons,
  turnReasons,
  type ExerciseSize,
  type ItemReason,
} from '@/plan/itemReason'
import { fieldsOf, isCount } from './stored'

/** Why an item stands in a day that was kept. */
export const decodeReason = (stored: unknown): ItemReason | undefined => {
  const { kind, days, exercise: storedExercise } = fieldsOf(stored)
  const plain = plainReasons.find((each) => each === kind)
  if (plain) return { kind: plain }
  const check = checkReasons.find((each) => each === kind)
  if (check) return isCount(days) ? { kind: check, days } : undefined
  const exercise = decodeExercise(storedExercise)
  if (!exercise) return undefined
  if (kind === 'lowered') return { kind, exercise }
  const turn = turnReasons.find((each) => each === kind)
  return turn && decodeTurn(turn, exercise, fieldsOf(stored))
}

const decodeExercise = (stored: unknown): ExerciseSize | undefined => {
  const { what, size } = fieldsOf(stored)
  const known = exerciseKinds.find((each) => each === what)
  return known && isCount(size) ? { what: known, size } : undefined
}

const decodeTurn = (
  kind: (typeof turnReasons)[number],
  exercise: ExerciseSize,
  { wentWrong, isHardSpot, hard }: Readonly<Record<string, unknown>>,
): ItemReason | undefined => {
  if (typeof wentWrong !== 'boolean' || typeof isHardSpot !== 'boolean') return undefined
  const reason = parseReason(hard)
  return { kind, exercise, wentWrong, isHardSpot, ...(reason ? { hard: reason } : {}) }
}
