import type { Form } from '@/music/form'
import type { ExerciseKind } from './steps'
import { purposes } from './variants'

/** 'group of 3', 'bridge', 'pair', 'section', 'whole'. */
export const formatKind = (what: ExerciseKind, size: number): string =>
  what === 'group' ? `group of ${size}` : what

/** Why an exercise stands in the build-up, in one sentence of few words (common practice, no source). */
export const reasonFor = (
  what: ExerciseKind,
  {
    form,
    afterEachHand,
    isLast,
  }: { readonly form: Form; readonly afterEachHand: boolean; readonly isLast: boolean },
): string => {
  if (form !== 'asWritten') return purposes[form]
  if (what === 'whole')
    return isLast
      ? 'The whole passage, up to the goal tempo.'
      : 'All of this hand, before the other joins it.'
  return (afterEachHand ? together : alone)[what]
}

type Reasons = Readonly<Record<Exclude<ExerciseKind, 'whole'>, string>>

const alone: Reasons = {
  group: 'So few notes can be right at once.',
  bridge: 'Crosses the join of two groups.',
  pair: 'Joins two groups that go alone.',
  section: 'Joins what goes in pairs.',
}

const together: Reasons = {
  group: 'Each hand knows it: now together.',
  bridge: 'Crosses the join with both hands.',
  pair: 'Joins two groups with both hands.',
  section: 'Joins the pairs with both hands.',
}
