import type { Ms } from '@/music/units'
import { ms } from '@/music/units'

/** The pause after an exercise is done, before the next one is on the desk. */
export interface Breath {
  readonly since: Ms
  readonly until: Ms
  /** An item of today's plan is over. */
  readonly ofItem?: true
}

/** Long enough to breathe in and out once with the hands in the lap: four seconds, common practice. */
const breathMs = 4_000

export const takeBreath = (at: Ms): Breath => ({ since: at, until: ms(at + breathMs) })
