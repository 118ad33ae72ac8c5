import { explain } from '@/coach/reasons'
import { describeRepetition } from '@/judge/describeFlaw'
import { formatBeats } from '@/music/beat'
import { nameKey } from '@/music/spelling'
import type { Key } from '@/music/units'
import type { Speech } from './practiceState'
import type { Practising } from './practising'

/** Keys as the notation spells them, tempi in the beat of the time signature. */
export const speechFor = ({ time, signature }: Pick<Practising, 'time' | 'signature'>): Speech => {
  const name = (key: Key): string => nameKey(key, signature)
  return {
    explain: (reason) => explain(reason, (tempo) => formatBeats(tempo, time), name),
    describe: (repetition) => describeRepetition(repetition, name),
  }
}
