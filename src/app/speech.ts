import { explain, type Reason } from '@/coach/reasons'
import type { Remedy } from '@/coach/remedies'
import { describeRepetition } from '@/judge/describeFlaw'
import type { Repetition } from '@/judge/repetition'
import { formatBeats } from '@/music/beat'
import { nameKey } from '@/music/spelling'
import type { Key } from '@/music/units'
import { coachText } from '@/text/coach'
import type { Practising } from './practising'

/** How the practice speaks: keys as the notation spells them, tempi in the beat of the time signature. */
export interface Speech {
  readonly explain: (reason: Reason) => string
  readonly describe: (repetition: Pick<Repetition, 'verdict' | 'flaws'>) => string
}

export const speechFor = ({ time, signature }: Pick<Practising, 'time' | 'signature'>): Speech => {
  const name = (key: Key): string => nameKey(key, signature)
  return {
    explain: (reason) => explain(reason, (tempo) => formatBeats(tempo, time), name),
    describe: (repetition) => describeRepetition(repetition, name),
  }
}

/** What to do: 'The right hand alone, a little slower.' */
export const describeRemedy = ({ kind, hand }: Pick<Remedy, 'kind' | 'hand'>): string =>
  coachText.remedies[kind === 'oneHand' ? (hand === 'left' ? 'leftHand' : 'rightHand') : kind]
