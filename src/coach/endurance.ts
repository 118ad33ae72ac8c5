import { ms, type Ms } from '@/music/units'
import { limits } from './limits'

/** How long the person has practised without a rest; handed on from one drill to the next. */
export interface Endurance {
  /** The last moment of which the coach heard. */
  readonly last: Ms
  readonly practised: Ms
  readonly asked: 'nothing' | 'rest' | 'strongRest'
}

/** Minutes as milliseconds. */
export const minutes = (n: number): Ms => ms(n * 60_000)

export const beginEndurance = (at: Ms): Endurance => ({
  last: at,
  practised: ms(0),
  asked: 'nothing',
})

/** Time passes up to `at`. A gap as long as a rest is a rest. */
export const practiseUntil = (endurance: Endurance, at: Ms): Endurance => {
  const gap = Math.max(0, at - endurance.last)
  const last = ms(Math.max(at, endurance.last))
  return gap >= minutes(limits.rest.lengthMinutes)
    ? beginEndurance(last)
    : { ...endurance, last, practised: ms(endurance.practised + gap) }
}

/** What should be asked now and was not asked yet. */
export const restDue = ({ practised, asked }: Endurance): 'rest' | 'strongRest' | undefined => {
  if (practised >= minutes(limits.rest.strongMinutes))
    return asked === 'strongRest' ? undefined : 'strongRest'
  if (practised >= minutes(limits.rest.minutes)) return asked === 'nothing' ? 'rest' : undefined
  return undefined
}
