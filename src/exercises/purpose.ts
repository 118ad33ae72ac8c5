import type { Form } from '@/music/form'
import type { BuildUpText } from '@/text/buildUp'
import type { ExerciseKind } from './steps'

/** Why an exercise stands in the build-up: `buildUpText.purposes` says it. */
export type Purpose = keyof BuildUpText['purposes']

export const purposeOf = (
  what: ExerciseKind,
  {
    form,
    afterEachHand,
    isLast,
  }: { readonly form: Form; readonly afterEachHand: boolean; readonly isLast: boolean },
): Purpose => {
  if (form !== 'asWritten') return form
  if (what === 'whole') return isLast ? 'whole' : 'wholeOfOneHand'
  return afterEachHand ? together[what] : what
}

const together = {
  group: 'groupTogether',
  bridge: 'bridgeTogether',
  pair: 'pairTogether',
  section: 'sectionTogether',
} as const
